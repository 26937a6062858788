"""How long ten thousand what-ifs take: two workers beside one, and how soon a sweep has ended.

Conditions: the list of the example in a whole-day attack with 10 points left; every combination of
100 worths of light tanks and 100 prices of anti-tank guns, which are 10,000 questions; each round
starts its processes anew. Compare the two times of one run.
"""

from collections.abc import Generator
from fractions import Fraction

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from paradestate.chance.proof.sweeping import Sweeper
from paradestate.chance.proof.what_if import list_forces
from paradestate.core.support.amendment import PriceAmendment, WorthAmendment
from paradestate.core.support.comparison import ListForces
from paradestate.core.support.sweep import SweepQuestion
from paradestate.workers.crew import answers
from paradestate.workers.here import Here
from tests.support_terms import attack

QUESTIONS = [
    SweepQuestion(
        game=0,
        amendments=(
            PriceAmendment(entry="anti-tank guns", points=points),
            WorthAmendment(entry="light tanks", worth=Fraction(worth)),
        ),
    )
    for points in range(1, 101)
    for worth in range(100)
]


MIDST = 500
"""The sweep is ended when this question is answered."""


def sweeper() -> Sweeper:
    """Who knows the list as it is."""
    forces = list_forces(attack(), points=(10,), at=10)
    assert isinstance(forces, ListForces)
    return Sweeper(games=(forces,))


@pytest.mark.parametrize("number", [1, 2])
@pytest.mark.benchmark(group="sweep of 10,000 what-ifs")
def bench_sweep(benchmark: BenchmarkFixture, *, number: int) -> None:
    """All questions, by so many workers."""

    def swept() -> int:
        return sum(1 for _ in answers(Here(sweeper(), number=number), QUESTIONS))

    number_answered = benchmark.pedantic(swept, rounds=1)  # type: ignore[no-untyped-call]
    assert number_answered == len(QUESTIONS)


@pytest.mark.benchmark(group="end of a sweep")
def bench_end_of_a_sweep(benchmark: BenchmarkFixture) -> None:
    """From the word that it is over to the end of all processes."""

    def begun() -> tuple[tuple[Generator[object, None, None]], dict[str, object]]:
        listening = answers(Here(sweeper(), number=2), QUESTIONS)
        for placed in listening:
            if placed.place > MIDST:
                break
        return (listening,), {}

    def ended(listening: Generator[object, None, None]) -> None:
        listening.close()

    benchmark.pedantic(ended, setup=begun, rounds=5)  # type: ignore[no-untyped-call]
