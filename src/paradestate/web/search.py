"""Searches that run while a page looks on or waits: for orders, and for what to get next.

No page looks for an order without them.

A question that is asked again while it is searched for joins that search, and one that was answered
lately and rests on the same things has its answer at once. A search ends at its own limit of time,
whether anybody looks on or not.
"""

import secrets
import time
from collections import OrderedDict
from collections.abc import Callable, Hashable
from dataclasses import dataclass
from threading import Event, Lock, Thread
from typing import Any, Generic, TypeAlias, TypeVar, cast

from paradestate.core.money import Currency
from paradestate.journeys.order import Search
from paradestate.solve.program import Advance

MOST_RUNNING = 4
MOST_KEPT = 32
KEPT_SECONDS = 600.0
"""How long the answer of a search that has ended is kept."""

ENDED_WITHIN = 5.0
"""Seconds that searches told to stop are waited for when the program ends."""

T = TypeVar("T")
Answer = TypeVar("Answer", covariant=True)  # noqa: PLC0105 - the name is read as a word

Run: TypeAlias = Callable[[Search], T]
"""Looks for an order, tells of advances, and stops where it is told to."""


class TooManySearchesError(Exception):
    """As many searches run as may run at once; says how many."""


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """How far a search has come. Amounts in minor units."""

    best: int | None
    bound: int | None
    currency: Currency | None
    """None before anything was told."""
    seconds: float
    """Since it began."""
    ended: bool
    stopping: bool
    """Whether it was told to stop."""


class RunningSearch(Generic[Answer]):
    """One search in its thread; its answer once it has ended."""

    def __init__(self, run: Run[Answer], *, seconds: float, rests_on: object) -> None:
        self.id = secrets.token_urlsafe(12)
        self.seconds = seconds
        """The limit of time."""
        self.rests_on = rests_on
        self.ended_at: float | None = None
        self._run = run
        self._begun = time.monotonic()
        self._stop = Event()
        self._ended = Event()
        self._told: tuple[Advance, Currency] | None = None
        self._found: Answer | None = None
        self._error: BaseException | None = None

    def begin(self) -> None:
        """Starts the thread."""
        Thread(target=self._search, name=f"search {self.id}", daemon=True).start()

    def _search(self) -> None:
        try:
            self._found = self._run(
                Search(seconds=self.seconds, stop=self._stop.is_set, progress=self._hear)
            )
        except BaseException as error:  # noqa: BLE001 - it is raised where the answer is asked for
            self._error = error
        finally:
            self.ended_at = time.monotonic()
            self._ended.set()

    def _hear(self, advance: Advance, currency: Currency) -> None:
        self._told = (advance, currency)

    @property
    def is_ended(self) -> bool:
        """Whether there is an answer."""
        return self._ended.is_set()

    @property
    def state(self) -> State:
        """How far it has come by now."""
        advance, currency = self._told or (None, None)
        until = time.monotonic() if self.ended_at is None else self.ended_at
        return State(
            best=advance.best if advance else None,
            bound=advance.bound if advance else None,
            currency=currency,
            seconds=until - self._begun,
            ended=self.is_ended,
            stopping=self._stop.is_set(),
        )

    def wait(self, seconds: float | None = None) -> bool:
        """Waits so long for the end, or until it comes; whether it has come."""
        return self._ended.wait(seconds)

    def stop(self) -> None:
        """Has it end soon, with the best so far."""
        self._stop.set()

    def answer(self) -> Answer:
        """What was found. Raises what the search has raised, and ValueError before its end."""
        if self._error is not None:
            raise self._error
        if self._found is None:
            raise ValueError("the search hasn't ended")
        return self._found


class Searches:
    """All searches of a site, so many at once and no more."""

    def __init__(
        self,
        *,
        most_running: int = MOST_RUNNING,
        most_kept: int = MOST_KEPT,
        kept_seconds: float = KEPT_SECONDS,
    ) -> None:
        self._most_running = most_running
        self._most_kept = most_kept
        self._kept_seconds = kept_seconds
        self._lock = Lock()
        self._searches: OrderedDict[Hashable, RunningSearch[Any]] = OrderedDict()
        self._alive: list[RunningSearch[Any]] = []
        """Those whose threads may run, told to stop or not."""

    def begun(
        self, key: Hashable, run: Run[T], *, seconds: float, rests_on: object
    ) -> RunningSearch[T]:
        """The search of a question: the one that runs or has its answer, else a new one.

        A key is of one kind of answer. Raises TooManySearchesError where no other may begin.
        """
        with self._lock:
            self._clear()
            known = self._searches.get(key)
            if known is not None and known.rests_on is rests_on:
                self._searches.move_to_end(key)
                return cast("RunningSearch[T]", known)
            if known is not None:
                known.stop()  # what it looks for isn't wanted any more
            self._alive = [each for each in self._alive if not each.is_ended]
            wanted = sum(not each.state.stopping for each in self._alive)
            if wanted >= self._most_running or len(self._alive) >= 2 * self._most_running:
                raise TooManySearchesError(wanted)
            search = RunningSearch(run, seconds=seconds, rests_on=rests_on)
            self._alive.append(search)
            self._searches[key] = search
            self._searches.move_to_end(key)
            search.begin()
            return search

    def found(self, id_: str) -> RunningSearch[object] | None:
        """The search of that id, if it is kept."""
        with self._lock:
            self._clear()
            return next((each for each in self._searches.values() if each.id == id_), None)

    def forget(self, id_: str) -> None:
        """Ends a search and keeps no answer of it, so that the question is searched anew."""
        with self._lock:
            for key, search in list(self._searches.items()):
                if search.id == id_:
                    search.stop()
                    del self._searches[key]

    def end(self, *, within: float = ENDED_WITHIN) -> bool:
        """Has every search end, and waits so long for that; whether all have.

        No program may end while a solver is at work in it.
        """
        with self._lock:
            alive = list(self._alive)
        for search in alive:
            search.stop()
        until = time.monotonic() + within
        return all(search.wait(max(0.0, until - time.monotonic())) for search in alive)

    def _clear(self) -> None:
        """Lets go of answers that are old, or more than are kept; never of a search that runs."""
        now = time.monotonic()
        ended = [
            (key, search.ended_at)
            for key, search in self._searches.items()
            if search.ended_at is not None and search.is_ended
        ]
        for number, (key, ended_at) in enumerate(reversed(ended), start=1):
            if number > self._most_kept or now - ended_at > self._kept_seconds:
                del self._searches[key]
