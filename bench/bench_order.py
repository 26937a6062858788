"""How long the cheapest order takes, with its proof, and its steps and next best orders.

Conditions: in one process with the solver imported; one thread, fixed seed, at least five rounds.
The catalogues are invented from a seed: 40 kinds in 4 price lists of 16 packs each, that hold one
to three kinds, some with multi-buys, all with steps of carriage and most with one of discount.
"""

import random
from fractions import Fraction

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from paradestate.core.certainty import Exact
from paradestate.core.order import OrderProblem
from paradestate.core.order_outcome import OrderAnswer
from paradestate.core.source import Pack
from paradestate.solve.order import cheapest_order
from paradestate.solve.order_alternative import with_alternatives
from tests.orders import marenz_problem, pack, problem, source

KINDS = 40
SOURCES = 4
PACKS = 16
SEEDS = (1, 4, 6)


def catalogue(seed: int) -> OrderProblem:
    """A want of some of each kind from the catalogue of this seed."""
    draw = random.Random(seed)  # noqa: S311 - the same catalogue each time is what is wanted
    worth = {f"kind {number}": draw.randint(30, 120) for number in range(KINDS)}
    sources = [
        source(
            f"Source {letter}",
            *(priced_pack(f"P{number}", worth, draw=draw) for number in range(PACKS)),
            carriage={0: draw.choice((350, 500, 750)), draw.choice((4000, 6000, 10000)): 0},
            discount={draw.choice((5000, 10000)): Fraction(draw.choice((0, 5, 10)), 100)},
        )
        for letter in "ABCD"[:SOURCES]
    ]
    sold = {kind for seller in sources for each in seller.packs.values() for kind in each.holds}
    return problem(*sources, **{kind: draw.randint(3, 40) for kind in sorted(sold)})


def priced_pack(name: str, worth: dict[str, int], *, draw: random.Random) -> Pack:
    """A pack of one to three kinds at about what they are worth, in steps of 25."""
    inside = draw.sample(sorted(worth), draw.choice((1, 1, 2, 3)))
    holds = {kind: draw.randint(2, 12) for kind in inside}
    value = sum(worth[kind] * number for kind, number in holds.items())
    price = max(25, value * draw.randint(70, 110) // 2500 * 25)
    multibuy = {3: price * 27 // 10} if draw.randint(1, 5) == 1 else {}
    return pack(name, price, multibuy=multibuy, **holds)


def proved(asked: OrderProblem) -> OrderAnswer:
    """The cheapest order, which has to be proved."""
    outcome = cheapest_order(asked)
    assert isinstance(outcome, OrderAnswer)
    assert outcome.certainty == Exact()
    return outcome


def bench_order_of_the_example(benchmark: BenchmarkFixture) -> None:
    """50 riflemen, 9 mortar crew and 4 officers, proved."""
    assert benchmark(proved, marenz_problem()).order.total == 4850


def bench_alternatives_of_the_example(benchmark: BenchmarkFixture) -> None:
    """Its three steps and three next best orders."""
    asked = marenz_problem()
    answer = benchmark(with_alternatives, asked, proved(asked))
    assert len(answer.steps) == len(answer.next_best) == 3


@pytest.mark.parametrize("seed", SEEDS)
def bench_order_of_forty_kinds(benchmark: BenchmarkFixture, seed: int) -> None:
    """Some of each kind of a catalogue, proved."""
    benchmark(proved, catalogue(seed))
