"""The press: papers are set beside the page, one after the other, and never two at once.

question -> the setting of its papers -> a search of that folder, which ends the one before

A setting goes on while a page looks on and asks again; what was set stays. What may be handed over
lies on a shelf of its own, and nothing else ever does.
"""

import time
from collections import OrderedDict
from collections.abc import Callable, Hashable, Iterable, Mapping
from threading import Condition, Lock
from typing import TypeAlias

from paradestate.journeys.order import Search
from paradestate.journeys.paper.one_paper import HandedOver, OnePaper
from paradestate.journeys.paper.paper_kind import PaperKind
from paradestate.web.search import RunningSearch, Searches

SECONDS = 120.0
"""After so long no other paper is begun until somebody asks again."""
MOST_SETTINGS = 4
MOST_ON_SHELF = 24

Make: TypeAlias = Callable[[PaperKind], OnePaper]


class Setting:
    """The papers of one question as far as they are set; several threads may look."""

    def __init__(self, kinds: Iterable[PaperKind], make: Make) -> None:
        self._left = {kind.name: kind for kind in kinds}
        self.number = len(self._left)
        self._make = make
        self._changed = Condition()
        self._set: dict[str, OnePaper] = {}
        self._next = ""

    @property
    def done(self) -> Mapping[str, OnePaper]:
        """What is set by now, by the names of papers."""
        with self._changed:
            return dict(self._set)

    @property
    def is_whole(self) -> bool:
        """Whether none is left to be set."""
        with self._changed:
            return len(self._set) == self.number

    @property
    def at(self) -> str:
        """The title of the paper that is set now, or next; empty at the end."""
        with self._changed:
            kind = self._first()
            return "" if kind is None else kind.title

    def waited_for(self, name: str, *, seconds: float) -> OnePaper | None:
        """A paper, set before the others, if it comes within so many seconds."""
        with self._changed:
            self._next = name
            self._changed.wait_for(lambda: name in self._set, seconds)
            return self._set.get(name)

    def wait(self, seconds: float) -> bool:
        """Waits so long for the last of them; whether it has come."""
        with self._changed:
            return self._changed.wait_for(lambda: len(self._set) == self.number, seconds)

    def run(self, search: Search, *, one_at_a_time: Lock, shelf: "Shelf") -> bool:
        """Sets what is left until it is told to stop or its time is over; whether all is set."""
        until = time.monotonic() + search.seconds
        while not search.stop() and time.monotonic() < until:
            with self._changed:
                kind = self._first()
            if kind is None:
                return True
            with one_at_a_time:
                made = self._make(kind)
            if made.sheet is not None and kind.may_be_handed_over:
                shelf.put(HandedOver(of=made))
            with self._changed:
                self._set[kind.name] = made
                self._left.pop(kind.name, None)
                self._changed.notify_all()
        return self.is_whole

    def _first(self) -> PaperKind | None:
        return self._left.get(self._next) or next(iter(self._left.values()), None)


class Shelf:
    """What may be handed over, by its digest; what was put there first goes first."""

    def __init__(self) -> None:
        self._lock = Lock()
        self._papers: OrderedDict[str, HandedOver] = OrderedDict()

    def put(self, paper: HandedOver) -> None:
        """Lays a paper there."""
        with self._lock:
            self._papers[paper.digest] = paper
            self._papers.move_to_end(paper.digest)
            while len(self._papers) > MOST_ON_SHELF:
                self._papers.popitem(last=False)

    def found(self, digest: str) -> HandedOver | None:
        """The paper of that digest, if it lies there."""
        with self._lock:
            return self._papers.get(digest)


class Press:
    """Sets the papers of all forces that are served, one at a time."""

    def __init__(self) -> None:
        self.shelf = Shelf()
        self._lock = Lock()
        self._one_at_a_time = Lock()
        self._settings: OrderedDict[Hashable, tuple[object, Setting]] = OrderedDict()

    def setting(
        self, key: Hashable, *, kinds: Iterable[PaperKind], make: Make, rests_on: object
    ) -> Setting:
        """The setting of a question while it rests on that very thing, else a new one."""
        with self._lock:
            kept = self._settings.get(key)
            if kept is None or kept[0] is not rests_on:
                kept = (rests_on, Setting(kinds, make))
                self._settings[key] = kept
            self._settings.move_to_end(key)
            while len(self._settings) > MOST_SETTINGS:
                self._settings.popitem(last=False)
            return kept[1]

    def set_on(self, setting: Setting, *, key: Hashable, searches: Searches) -> None:
        """Has it go on beside the page; what is set for the same key otherwise ends.

        Raises what setting has raised, and TooManySearchesError where no other search may begin.
        """
        search = self._begun(setting, key=key, searches=searches)
        if search.is_ended and not setting.is_whole:
            searches.forget(search.id)
            search.answer()
            self._begun(setting, key=key, searches=searches)

    def _begun(self, setting: Setting, *, key: Hashable, searches: Searches) -> RunningSearch[bool]:
        def run(search: Search) -> bool:
            return setting.run(search, one_at_a_time=self._one_at_a_time, shelf=self.shelf)

        return searches.begun(key, run, seconds=SECONDS, rests_on=setting)
