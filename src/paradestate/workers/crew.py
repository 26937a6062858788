"""A crew: workers that each answer a few questions at a time.

Questions go out in bundles that take a fraction of a second, and only so many bundles as keep
everybody busy: what was never sent needn't be called back, so that a sweep can be ended at once.
"""

import time
from collections.abc import Callable, Generator, Iterable, Sequence
from dataclasses import dataclass
from itertools import count, islice
from typing import Generic, NamedTuple, Protocol, TypeVar

Question = TypeVar("Question")
Answer = TypeVar("Answer")

BUNDLE_SECONDS = 0.2
"""So long a worker should be at one bundle: short beside a person's patience, long beside the way
there and back."""
MOST_IN_A_BUNDLE = 1_000
LISTEN_SECONDS = 0.1
"""So often it is asked whether to stop while nobody answers."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bundle(Generic[Question]):
    """Questions that one worker answers without a pause."""

    first: int
    """The place of the first of them among all questions."""
    questions: tuple[Question, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered(Generic[Answer]):
    """The answers to a bundle, in the order of its questions."""

    first: int
    answers: tuple[Answer, ...]
    seconds: float
    """How long the worker was at it."""


class Crew(Protocol[Question, Answer]):
    """Workers who all know the same one thing: how to answer a question."""

    @property
    def room(self) -> int:
        """How many bundles keep everybody busy."""
        ...

    def send(self, bundle: Bundle[Question]) -> None:
        """Has a bundle answered, by whoever is free first."""
        ...

    def answered(self, *, seconds: float) -> Sequence[Answered[Answer]]:
        """What was answered since, waiting at most so long for the first.

        A worker that is lost costs nothing but time: its bundle is answered by another one.

        Raises:
            WorkersError: Nobody can be reached, or one bundle has lost several workers.
        """
        ...

    def end(self) -> None:
        """Sends everybody home at once, whatever they are at."""
        ...


class Placed(NamedTuple, Generic[Answer]):
    """An answer with the place of its question among all of them."""

    place: int
    answer: Answer


def answers(
    crew: Crew[Question, Answer],
    questions: Iterable[Question],
    *,
    is_over: Callable[[], bool] = lambda: False,
) -> Generator[Placed[Answer], None, None]:
    """Every answer as it comes, in no order. Ends early, within a second, once `is_over` says so.

    Raises:
        WorkersError: See `Crew.answered`.
    """
    waiting = iter(questions)
    size, sent, out = 1, 0, 0
    try:
        while not is_over():
            while out < crew.room and (asked := tuple(islice(waiting, size))):
                crew.send(Bundle(first=sent, questions=asked))
                sent, out = sent + len(asked), out + 1
            if not out:
                return
            for bundle in crew.answered(seconds=LISTEN_SECONDS):
                out -= 1
                size = bundle_size(len(bundle.answers), seconds=bundle.seconds)
                yield from map(Placed, count(bundle.first), bundle.answers)
    finally:
        crew.end()


def bundle_size(number: int, *, seconds: float) -> int:
    """How many questions take a bundle's time where so many took so long."""
    if seconds * MOST_IN_A_BUNDLE <= number * BUNDLE_SECONDS:
        return MOST_IN_A_BUNDLE
    return max(1, int(number * BUNDLE_SECONDS / seconds))


def answer_bundle(
    answer: Callable[[Question], Answer], bundle: Bundle[Question]
) -> Answered[Answer]:
    """What a worker does with a bundle."""
    begun = time.perf_counter()
    found = tuple(answer(question) for question in bundle.questions)
    return Answered(first=bundle.first, answers=found, seconds=time.perf_counter() - begun)
