"""How long it takes to count, weigh and draw legal forces, beside listing or weighing one by one.

Conditions: in one process; every round begins with the terms of the game; at least five rounds. The
lists are invented from a seed (see `force_lists`). Beside each stands the plain way with as many
entries as it can bear: lists of 5, force by force.
"""

from collections.abc import Sequence
from fractions import Fraction
from itertools import islice
from random import Random

import numpy
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from bench.force_lists import force_list
from paradestate.chance.force.best_force import best_forces
from paradestate.chance.force.diagram import Diagram, diagram
from paradestate.chance.force.force_draw import force_draw
from paradestate.chance.force.legal_count import legal_forces
from paradestate.chance.force.pattern import Patterns, greatest_weights
from paradestate.chance.force.searched_force import searched_force
from paradestate.chance.force.weighing import weighing
from paradestate.core.support.force_map import LevelForces, SearchedForce
from paradestate.core.support.plan import plan_worth
from paradestate.core.support.terms import Terms
from tests.authority.test_knapsacks import EVERY, items, ties
from tests.support_terms import every_legal_plan

SEEDS = (1, 2, 3)
PLAIN_SEEDS = (2, 3)
"""The lists that listing force by force is done with in less than a second."""
SIZES = ((40, 60), (60, 100), (100, 200))
"""Entries and points."""
TANGLED = (
    (60, 100, (Fraction(1, 10),) * 8),
    (100, 200, (Fraction(1, 20), Fraction(1, 12), Fraction(1, 15), Fraction(1, 30)) * 3),
)
"""Entries, points, and the shares of groups, which no diagram is drawn of."""


def drawn(terms: Terms, *, points: int) -> Diagram:
    """The diagram, which must not be refused."""
    found = diagram(terms, greatest=points)
    assert isinstance(found, Diagram)
    return found


def counted(terms: Terms, points: int) -> tuple[LevelForces, ...]:
    """How many forces are legal with each number of points."""
    return legal_forces(drawn(terms, points=points), points=range(points + 1))


def weighed(terms: Terms, points: int) -> Sequence[Fraction | None]:
    """The worth of the best force with each number of points."""
    return best_forces(drawn(terms, points=points)).worths(range(points + 1))


def both(terms: Terms, points: int) -> tuple[int, Fraction | None]:
    """Number and greatest worth from one diagram."""
    found = drawn(terms, points=points)
    levels = legal_forces(found, points=range(points + 1))
    return levels[-1].legal, best_forces(found).worths(range(points + 1))[-1]


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize(("entries", "points"), SIZES)
def bench_counting_all_forces(
    benchmark: BenchmarkFixture, entries: int, points: int, seed: int
) -> None:
    """For every number of points."""
    assert benchmark(counted, force_list(entries, seed=seed), points)[-1].legal > 10**12


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize(("entries", "points"), SIZES)
def bench_the_best_at_every_number_of_points(
    benchmark: BenchmarkFixture, entries: int, points: int, seed: int
) -> None:
    """Its worth; the force itself is one walk more."""
    assert benchmark(weighed, force_list(entries, seed=seed), points)[-1]


@pytest.mark.parametrize("seed", SEEDS)
def bench_count_and_best_together(benchmark: BenchmarkFixture, seed: int) -> None:
    """40 entries and 60 points."""
    assert benchmark(both, force_list(40, seed=seed), 60)[1]


@pytest.mark.parametrize("seed", PLAIN_SEEDS)
def bench_plain_counting_of_five_entries(benchmark: BenchmarkFixture, seed: int) -> None:
    """The same by listing every force and judging it: 10 points."""
    terms = force_list(5, seed=seed)
    number = benchmark(lambda: sum(1 for _ in every_legal_plan(terms, points=10)))
    assert number == counted(terms, 10)[-1].legal


@pytest.mark.parametrize("seed", PLAIN_SEEDS)
def bench_counting_of_five_entries(benchmark: BenchmarkFixture, seed: int) -> None:
    """Beside plain counting of the same lists."""
    assert benchmark(counted, force_list(5, seed=seed), 10)[-1].legal


@pytest.mark.parametrize("seed", PLAIN_SEEDS)
def bench_the_plain_best_of_five_entries(benchmark: BenchmarkFixture, seed: int) -> None:
    """The best by listing every force and weighing it."""
    terms = force_list(5, seed=seed)

    def plainly() -> Fraction:
        plans = every_legal_plan(terms, points=10)
        return max(plan_worth(terms.offers, plan) for plan in plans)

    assert benchmark(plainly) == weighed(terms, 10)[-1]


@pytest.mark.parametrize("rolled", [8, 10, 12, 14, 16])
def bench_the_best_for_every_pattern_of_availability(
    benchmark: BenchmarkFixture, rolled: int
) -> None:
    """40 entries of which so many are rolled for, at 60 points: 256 to 65,536 patterns."""
    terms = force_list(40, seed=2, rolled=rolled)
    names = frozenset(name for name, offer in terms.offers.items() if offer.availability)

    def found() -> Fraction | None:
        of = weighing(drawn(terms, points=60))
        every = {row.entry: of.takings(at) for at, row in enumerate(of.drawn.rows)}
        number = numpy.arange(2**rolled)
        patterns = Patterns(
            number=2**rolled,
            classes={
                name: (frozenset(t for t in every[name] if not t.purchases), every[name])
                for name in names
            },
            chosen={name: number >> place & 1 for place, name in enumerate(sorted(names))},
        )
        weights = greatest_weights(of, patterns, points=[60])
        assert len(weights) == 2**rolled
        return of.worth(int(weights[-1, 0]))

    assert benchmark(found) == weighed(terms, 60)[-1]


@pytest.mark.parametrize("shares", [(Fraction(1, 3),), (Fraction(1, 3), Fraction(1, 2))])
def bench_counting_with_shares_of_the_points(
    benchmark: BenchmarkFixture, shares: tuple[Fraction, ...]
) -> None:
    """40 entries and 60 points, and groups with a share of them."""
    assert benchmark(counted, force_list(40, seed=2, shares=shares), 60)[-1].legal


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize(("entries", "points", "shares"), TANGLED)
def bench_the_best_of_lists_of_which_no_diagram_is_drawn(
    benchmark: BenchmarkFixture, entries: int, points: int, shares: tuple[Fraction, ...], seed: int
) -> None:
    """By search: several groups with a share of the points each."""
    terms = force_list(entries, seed=seed, shares=shares)
    assert not isinstance(diagram(terms, greatest=points), Diagram)
    found = benchmark(lambda: searched_force(terms, points=points))
    assert isinstance(found, SearchedForce)
    assert found.is_proved


@pytest.mark.parametrize("seed", SEEDS)
def bench_the_best_by_search(benchmark: BenchmarkFixture, seed: int) -> None:
    """40 entries and 60 points, beside the diagram, which finds it for every number of points."""
    terms = force_list(40, seed=seed)
    found = benchmark(lambda: searched_force(terms, points=60))
    assert isinstance(found, SearchedForce)
    assert found.bound == weighed(terms, 60)[-1]


@pytest.mark.parametrize("number", [6, 7])
def bench_published_knapsacks(benchmark: BenchmarkFixture, number: int) -> None:
    """Petersen's problems of 39 and 50 items under five limits, by search."""
    knapsack = EVERY[number - 1]
    terms = items(knapsack, points=knapsack.weights[0])
    found = benchmark(
        lambda: searched_force(terms, points=knapsack.limits[0], more=lambda _: ties(knapsack))
    )
    assert isinstance(found, SearchedForce)
    assert found.is_proved
    assert found.bound == knapsack.best


def bench_ten_best_forces(benchmark: BenchmarkFixture) -> None:
    """40 entries and 60 points; by falling worth, each worth once."""
    found = best_forces(drawn(force_list(40, seed=2), points=60))
    assert len(benchmark(lambda: list(islice(found.steps(points=60), 10)))) == 10


def bench_a_hundred_forces_at_random(benchmark: BenchmarkFixture) -> None:
    """40 entries and 60 points; each force as likely as any other."""
    walk = force_draw(drawn(force_list(40, seed=2), points=60), points=60)

    def found() -> int:
        lot = Random(1)  # noqa: S311 - the same forces each time
        return sum(len(walk.at_random(lot)) for _ in range(100))

    assert benchmark(found) > 0
