"""The proof of an order in a process of its own, which can be ended at any moment.

The solver looks at its clock too seldom where a price list is very large.
"""

import contextlib
import multiprocessing
import signal
from collections.abc import Iterator
from dataclasses import dataclass
from multiprocessing.connection import Connection
from types import TracebackType
from typing import Self, TypeAlias

from paradestate.core.order import Basket, OrderProblem, priced
from paradestate.process import unheard_interrupts
from paradestate.solve.clock import clock
from paradestate.solve.error import SolverError, TooGreatError
from paradestate.solve.order_program import OrderProgram
from paradestate.solve.order_search import Found, search
from paradestate.solve.program import Advance, Ending

GRACE = 0.4
"""Seconds in which the process has to answer once it is told to end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """What is to be proved, and how long that may take."""

    problem: OrderProblem
    start: Basket
    """An order that is known already; empty if none is."""
    seconds: float
    within: int


News: TypeAlias = Advance | Found | Ending | TooGreatError | SolverError
"""An advance, or how the proof ended."""


class ProofProcess:
    """A process that waits for one task, tells of its advances, and then how it ended.

    It is there for as long as the `with` statement.
    """

    def __init__(self) -> None:
        context = multiprocessing.get_context("spawn")
        self._here, there = context.Pipe()
        self._process = context.Process(target=_prove, args=(there,), daemon=True)
        with unheard_interrupts():
            self._process.start()
        there.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        self._here.close()
        self._process.kill()
        self._process.join()
        self._process.close()

    def begin(self, task: Task) -> None:
        """Hands the task over; to be called once."""
        self._say(task)

    def news(self, *, seconds: float = 0.0) -> Iterator[News | None]:
        """What the process has said since, waiting so long for the first; None where it died."""
        try:
            while self._here.poll(seconds):
                yield self._here.recv()
                seconds = 0.0
        except (EOFError, OSError):
            yield None

    def offer(self, packs: Basket) -> None:
        """Tells the process of a better order than any it was told of."""
        self._say(packs)

    def end(self) -> None:
        """Tells the process to end with the best it has."""
        self._say(None)

    def _say(self, word: Task | Basket | None) -> None:
        with contextlib.suppress(OSError):  # where it died, its news say so
            self._here.send(word)


class _Parent:
    """What the process hears from its parent. Its end is a word to stop as well."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection
        self._offered: Basket | None = None
        self._is_over = False

    def is_over(self) -> bool:
        """Whether to stop with the best so far."""
        self._listen()
        return self._is_over

    def offered(self) -> Basket | None:
        """The last order told of, once."""
        self._listen()
        offered, self._offered = self._offered, None
        return offered

    def _listen(self) -> None:
        try:
            while not self._is_over and self._connection.poll():
                word = self._connection.recv()
                self._offered, self._is_over = word, word is None
        except (EOFError, OSError):
            self._is_over = True


def _prove(connection: Connection) -> None:
    """What runs in the process."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    # where the parent is gone nobody needs an answer
    with contextlib.suppress(EOFError, OSError):
        connection.send(_proved(connection.recv(), connection=connection))


def _proved(task: Task, *, connection: Connection) -> News:
    known = priced(task.problem, task.start).total if task.start else None
    parent = _Parent(connection)
    try:
        return search(
            OrderProgram(task.problem, most_total=known),
            until=clock(task.seconds, stop=parent.is_over),
            within=task.within,
            start=task.start,
            offer=parent.offered,
            progress=connection.send,
        )
    except (TooGreatError, SolverError) as error:
        return error
