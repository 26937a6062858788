"""How long the exact odds of a plan take, beside a hundred thousand rolls of the same dice.

Conditions: in one process; the terms of the game are there already; the rolls are drawn from one
seed, all at once in arrays, which is the fastest way to roll that we know. Rolling gives the three
chances and how often each of the same ways to turn up was seen, to about a third of a hundredth.
"""

from collections.abc import Mapping, Sequence

import numpy
import pytest
from numpy.typing import NDArray
from pytest_benchmark.fixture import BenchmarkFixture

from paradestate.chance.dice import allowance_chances, dice_chances
from paradestate.chance.plan.plan_odds import plan_odds
from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_points
from paradestate.core.support.remainder import remaining
from paradestate.core.support.terms import Terms
from paradestate.core.support.turnout import PlanOdds
from paradestate.text.dice import read_dice
from tests.chance.plans import bought, rolled, terms_with
from tests.support_terms import attack

ROLLS = 100_000
SEED = 1943
MARENZ = (
    Purchase(entry="light tanks", number=2),
    Purchase(entry="tank squadron commander", number=1),
    Purchase(entry="machine-gun platoon", number=2),
)


def six_rolls() -> tuple[Terms, tuple[Purchase, ...]]:
    """Six entries that are rolled for, each of them needed by one that isn't."""
    names = [f"troop {number}" for number in range(6)]
    troops = [
        Offer(name=name, cost={1: 2, 2: 4}, availability=rolled(3 + at % 3, partly=2))
        for at, name in enumerate(names)
    ]
    staffs = [Offer(name=f"staff of {name}", cost={1: 1}, needs={name: 1}) for name in names]
    plan = bought(**dict.fromkeys(names, 2), **{staff.name: 1 for staff in staffs})
    return terms_with(*troops, *staffs), plan


CASES = {"the example": (attack(), MARENZ), "six rolls": six_rolls()}


def exact(terms: Terms, plan: Sequence[Purchase]) -> PlanOdds:
    """The odds, every way counted."""
    left = allowance_chances(terms.game.allowance).moved(-terms.taken_off)
    return plan_odds(terms, plan, allowance=left)


def by_rolling(terms: Terms, plan: Sequence[Purchase]) -> tuple[float, Mapping[object, int]]:
    """The chance of points and all of the plan, and how often each remainder was seen."""
    draw = numpy.random.default_rng(SEED)
    points = _rolls(draw, str(terms.game.allowance)) - terms.taken_off
    taken = numpy.zeros((len(plan), ROLLS), dtype=numpy.int64)
    for place, purchase in enumerate(plan):
        availability = terms.offers[purchase.entry].availability
        if availability is None:
            taken[place] = purchase.number
            continue
        totals = numpy.arange(max(availability.roll.totals()) + 1)
        comes = numpy.zeros_like(totals)
        for total in availability.roll.totals():
            allowed = availability.allowed(total, asked=purchase.number)
            comes[total] = terms.offers[purchase.entry].greatest_number(allowed=allowed)
        taken[place] = comes[_rolls(draw, str(availability.roll))]
    asked = numpy.array([purchase.number for purchase in plan])
    whole = (taken == asked[:, None]).all(axis=0)
    paid = points >= plan_points(terms.offers, plan)
    seen: dict[object, int] = {}
    codes = numpy.zeros(ROLLS, dtype=numpy.int64)
    for each, most in zip(taken, asked, strict=True):
        codes = codes * (most + 1) + each
    _, firsts, numbers = numpy.unique(codes, return_index=True, return_counts=True)
    for pattern, number in zip(taken.T[firsts].tolist(), numbers.tolist(), strict=True):
        gone = {place for place, each in enumerate(pattern) if not each}
        stays = remaining(terms.offers, plan, gone=gone)
        come = tuple((place, pattern[place]) for place in sorted(stays))
        seen[come] = seen.get(come, 0) + number
    return float((paid & whole).mean()), seen


def _rolls(draw: numpy.random.Generator, text: str) -> NDArray[numpy.int64]:
    """As many totals of plain dice with a number as are rolled."""
    dice = read_dice(text)
    assert not hasattr(dice, "message")
    total = numpy.zeros(ROLLS, dtype=numpy.int64)
    for piece in text.split(" + "):
        number, _, sides = piece.partition("d")
        if sides:
            total += draw.integers(1, int(sides) + 1, size=(int(number), ROLLS)).sum(axis=0)
        else:
            total += int(number)
    return total


@pytest.mark.parametrize("case", CASES)
def bench_exact_odds(benchmark: BenchmarkFixture, case: str) -> None:
    """Everything exactly."""
    terms, plan = CASES[case]
    assert benchmark(exact, terms, plan).turnouts


@pytest.mark.parametrize("case", CASES)
def bench_odds_by_rolling(benchmark: BenchmarkFixture, case: str) -> None:
    """The same to about a third of a hundredth."""
    terms, plan = CASES[case]
    share, seen = benchmark(by_rolling, terms, plan)
    answer = exact(terms, plan)
    assert abs(share - float(answer.together)) < 0.01
    assert len(seen) <= len(answer.turnouts)


@pytest.mark.parametrize("text", ["18 + 2d6", "best 10 of 20d6", "20d100"])
def bench_dice(benchmark: BenchmarkFixture, text: str) -> None:
    """The chance of every total of some dice."""
    dice = read_dice(text)
    assert not hasattr(dice, "message")
    assert benchmark(dice_chances, dice).ways
