"""The proof of an order in a process of its own, which can be ended at any moment.

The solver looks at its clock too seldom where a price list is very large.
"""

import multiprocessing
import signal
from collections.abc import Iterator
from dataclasses import dataclass
from multiprocessing.connection import Connection
from types import TracebackType
from typing import Self, TypeAlias

from paradestate.core.order import Basket, OrderProblem, priced
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
        self._here.send(task)

    def news(self, *, seconds: float = 0.0) -> Iterator[News | None]:
        """What the process has said since, waiting so long for the first; None where it died."""
        try:
            while self._here.poll(seconds):
                yield self._here.recv()
                seconds = 0.0
        except (EOFError, OSError):
            yield None

    def end(self) -> None:
        """Tells the process to end with the best it has."""
        self._here.send(None)


def _prove(parent: Connection) -> None:
    """What runs in the process. Any word from the parent, or its end, stops the proof."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the parent hears it and says so
    try:
        parent.send(_proved(parent.recv(), parent=parent))
    except (EOFError, OSError):
        return  # nobody is there any more


def _proved(task: Task, *, parent: Connection) -> News:
    known = priced(task.problem, task.start).total if task.start else None
    try:
        return search(
            OrderProgram(task.problem, most_total=known),
            until=clock(task.seconds, stop=parent.poll),
            within=task.within,
            start=task.start,
            progress=parent.send,
        )
    except (TooGreatError, SolverError) as error:
        return error
