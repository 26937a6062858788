"""Handing out questions: a window of bundles, and how large they are."""

from collections.abc import Sequence

from hypothesis import given
from hypothesis import strategies as st

from paradestate.workers.crew import (
    BUNDLE_SECONDS,
    MOST_IN_A_BUNDLE,
    Answered,
    Bundle,
    answers,
    bundle_size,
)


class _Patient:
    """A crew that answers one bundle whenever it is asked, the last one first."""

    def __init__(self, *, seconds_each: float) -> None:
        self.waiting: list[Bundle[int]] = []
        self.most_waiting = 0
        self.is_home = False
        self._seconds = seconds_each

    @property
    def room(self) -> int:
        return 3

    def send(self, bundle: Bundle[int]) -> None:
        self.waiting.append(bundle)
        self.most_waiting = max(self.most_waiting, len(self.waiting))

    def answered(self, *, seconds: float) -> Sequence[Answered[int]]:
        assert seconds > 0
        bundle = self.waiting.pop()
        return [
            Answered(
                first=bundle.first,
                answers=tuple(-question for question in bundle.questions),
                seconds=self._seconds * len(bundle.questions),
            )
        ]

    def end(self) -> None:
        self.is_home = True


@given(number=st.integers(0, 300), seconds_each=st.sampled_from([0.0, 0.001, 0.05, 3.0]))
def test_each_question_is_answered_once_and_has_its_place(number: int, seconds_each: float) -> None:
    patient = _Patient(seconds_each=seconds_each)
    found = sorted(answers(patient, range(number)))
    assert found == [(place, -place) for place in range(number)]
    assert patient.is_home


def test_only_so_many_bundles_are_out_at_once() -> None:
    patient = _Patient(seconds_each=1.0)
    list(answers(patient, range(50)))
    assert patient.most_waiting == 3


def test_when_it_is_over_nothing_more_is_sent() -> None:
    patient = _Patient(seconds_each=1.0)
    asked = iter(range(1000))
    list(
        answers(patient, asked, is_over=lambda: len(patient.waiting) < 3 and bool(patient.waiting))
    )
    assert next(asked) == 3
    assert patient.is_home


def test_who_stops_listening_sends_the_workers_home() -> None:
    patient = _Patient(seconds_each=1.0)
    listening = answers(patient, range(1000))
    next(listening)
    listening.close()
    assert patient.is_home


def test_bundles_grow_until_they_take_their_time() -> None:
    assert bundle_size(1, seconds=0.0) == MOST_IN_A_BUNDLE
    assert bundle_size(1, seconds=2 * BUNDLE_SECONDS) == 1
    assert bundle_size(10, seconds=BUNDLE_SECONDS / 2) == 20
