"""No workers: this process answers by itself the few questions that aren't worth starting one."""

from collections.abc import Callable, Sequence
from typing import Generic

from paradestate.workers.crew import Answer, Answered, Bundle, Question, answer_bundle


class Alone(Generic[Question, Answer]):
    """Answers a bundle whenever it is asked what was answered."""

    def __init__(self, answer: Callable[[Question], Answer]) -> None:
        self._answer = answer
        self._waiting: list[Bundle[Question]] = []

    @property
    def room(self) -> int:
        """One bundle at a time, so that it may be ended after each."""
        return 1

    def send(self, bundle: Bundle[Question]) -> None:
        """Puts a bundle by until it is asked for."""
        self._waiting.append(bundle)

    def answered(self, *, seconds: float) -> Sequence[Answered[Answer]]:  # noqa: ARG002 - of Crew
        """The answers to what was put by, made here and now."""
        waiting, self._waiting = self._waiting, []
        return [answer_bundle(self._answer, bundle) for bundle in waiting]

    def end(self) -> None:
        """Lets go of what was put by."""
        self._waiting = []
