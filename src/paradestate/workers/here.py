"""Workers on this machine, each a process of its own."""

import contextlib
import multiprocessing
import os
import signal
from collections.abc import Callable, Sequence
from multiprocessing.connection import Connection, wait
from typing import Generic

from paradestate.process import unheard_interrupts
from paradestate.workers.crew import Answer, Answered, Bundle, Question, answer_bundle
from paradestate.workers.error import WorkersError

MOST_LOST = 3
"""A bundle that has lost so many workers isn't given to another one."""


class Here(Generic[Question, Answer]):
    """As many processes as are asked for; a lost one is replaced.

    Ctrl-C reaches only the process that started them.
    """

    def __init__(self, answer: Callable[[Question], Answer], *, number: int) -> None:
        self._answer = answer
        self._waiting: list[Bundle[Question]] = []
        self._lost: dict[int, int] = {}
        self._workers = [_Worker(answer) for _ in range(number)]

    @property
    def room(self) -> int:
        """One bundle at hand for each worker, and one more so that nobody waits for us."""
        return 2 * len(self._workers)

    def send(self, bundle: Bundle[Question]) -> None:
        """Has a bundle answered, by whoever is free first."""
        self._waiting.append(bundle)
        self._hand_out()

    def answered(self, *, seconds: float) -> Sequence[Answered[Answer]]:
        """What was answered since, waiting at most so long for the first.

        Raises:
            WorkersError: One bundle has lost several workers.
        """
        found: list[Answered[Answer]] = []
        for heard in wait([worker.connection for worker in self._workers], timeout=seconds):
            worker = next(each for each in self._workers if each.connection is heard)
            answered = worker.taken()
            if answered is None:
                self._replace(worker)
            else:
                found.append(answered)
        self._hand_out()
        return found

    def end(self) -> None:
        """Ends all processes at once."""
        for worker in self._workers:
            worker.end()
        self._workers = []

    def _hand_out(self) -> None:
        for worker in self._workers:
            if self._waiting and worker.bundle is None:
                worker.give(self._waiting.pop(0))

    def _replace(self, worker: "_Worker[Question, Answer]") -> None:
        bundle = worker.bundle
        worker.end()
        self._workers.remove(worker)
        if bundle is None:
            raise WorkersError("a process that answers questions can't be started")
        self._lost[bundle.first] = self._lost.get(bundle.first, 0) + 1
        if self._lost[bundle.first] >= MOST_LOST:
            numbers = f"{bundle.first + 1} to {bundle.first + len(bundle.questions)}"
            raise WorkersError(f"{MOST_LOST} processes died over the questions {numbers}")
        self._waiting.insert(0, bundle)
        self._workers.append(_Worker(self._answer))


def processors() -> int:
    """How many processors this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


class _Worker(Generic[Question, Answer]):
    """One process with what it is at."""

    def __init__(self, answer: Callable[[Question], Answer]) -> None:
        context = multiprocessing.get_context("spawn")
        self.connection, there = context.Pipe()
        self.bundle: Bundle[Question] | None = None
        self._process = context.Process(target=_work, args=(answer, there), daemon=True)
        with unheard_interrupts():
            self._process.start()
        there.close()

    def give(self, bundle: Bundle[Question]) -> None:
        """Gives it a bundle. If it has died meanwhile, that is heard when it should answer."""
        self.bundle = bundle
        with contextlib.suppress(OSError):
            self.connection.send(bundle)

    def taken(self) -> Answered[Answer] | None:
        """Its answers; None where it has died.

        Raises:
            Exception: What answering a question has raised: a mistake of ours.
        """
        try:
            said: Answered[Answer] | Exception = self.connection.recv()
        except (EOFError, OSError):
            return None
        if isinstance(said, Exception):
            raise said
        self.bundle = None
        return said

    def end(self) -> None:
        """Ends the process."""
        self.connection.close()
        self._process.kill()
        self._process.join()
        self._process.close()


def _work(answer: Callable[[Question], Answer], there: Connection) -> None:
    """What runs in a process."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    # where the parent is gone nobody needs an answer
    with contextlib.suppress(EOFError, OSError):
        while True:
            bundle = there.recv()
            try:
                there.send(answer_bundle(answer, bundle))
            except Exception as mistake:  # noqa: BLE001 - it is raised again where it is heard
                there.send(mistake)
