"""Jobs on one machine: the order by minutes over weight, and published least tardiness above it.

Milestones that share no stands, without set-ups, are such jobs. Their best order is that by minutes
over weight (W. E. Smith, "Various optimizers for single-stage production", Naval Research Logistics
Quarterly 3, 1956). The problems and their source stand in `weighted_jobs/SOURCE.txt`.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.core.work.waiting import Share, Waiting, best_order

FOLDER = Path(__file__).parent / "weighted_jobs"
JOBS = 40
FIRST = 21


@dataclass(frozen=True, slots=True, kw_only=True)
class Jobs:
    """One published problem."""

    minutes: tuple[int, ...]
    weights: tuple[int, ...]
    due: tuple[int, ...]
    least_tardiness: int


def problems() -> Iterator[Jobs]:
    numbers = iter((FOLDER / "wt40_21_to_25.txt").read_text(encoding="utf-8").split())
    for least in (FOLDER / "least_tardiness.txt").read_text(encoding="utf-8").split():
        minutes, weights, due = (tuple(int(next(numbers)) for _ in range(JOBS)) for _ in range(3))
        yield Jobs(minutes=minutes, weights=weights, due=due, least_tardiness=int(least))


EVERY = tuple(problems())


def in_waiting(jobs: Jobs) -> Waiting:
    shares = (
        Share(kind=str(number), of=frozenset({number}), minutes=Fraction(minutes))
        for number, minutes in enumerate(jobs.minutes)
    )
    return Waiting(shares=tuple(shares), weights=tuple(map(Fraction, jobs.weights)))


@pytest.mark.parametrize("jobs", EVERY, ids=range(FIRST, FIRST + len(EVERY)))
def test_the_order_by_minutes_over_weight_is_found_and_proved(jobs: Jobs) -> None:
    found = best_order(in_waiting(jobs))
    clock = waiting = 0
    for job in sorted(range(JOBS), key=lambda job: Fraction(jobs.minutes[job], jobs.weights[job])):
        clock += jobs.minutes[job]
        waiting += clock * jobs.weights[job]
    assert found.waiting == waiting
    assert found.is_proved


@pytest.mark.parametrize("jobs", EVERY, ids=range(FIRST, FIRST + len(EVERY)))
def test_the_least_waiting_lies_just_below_the_published_tardiness(jobs: Jobs) -> None:
    """Within a fiftieth, and never above."""
    owed = sum(weight * due for weight, due in zip(jobs.weights, jobs.due, strict=True))
    below = best_order(in_waiting(jobs)).waiting - owed
    assert Fraction(49, 50) * jobs.least_tardiness <= below <= jobs.least_tardiness
