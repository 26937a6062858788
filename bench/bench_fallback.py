"""How long the best play takes, beside the plain recursion that it is proved with.

Conditions: in one process; the terms of the game are there already. The lists are invented from a
seed: each rolled entry comes in one or two, is partly allowed, and has worths of its own; ten sure
ones stand beside them. Some need or bar others, and some share a group, as in the example;
or all that are rolled for share one, so that none can be gone through apart.
The plain recursion is fractions in a dictionary; it is only run where it ends within a minute.
"""

import random
from collections.abc import Callable, Iterable
from dataclasses import replace
from fractions import Fraction

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from paradestate.chance.fallback.best_play import fallback, level_choices
from paradestate.core.certainty import NotComputed
from paradestate.core.support.entry import Asking, Availability, Band, GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.policy import Fallback
from paradestate.core.support.terms import Terms
from tests.chance.fallback.plain_fallback import PlainFallback
from tests.chance.plans import terms_with
from tests.support_terms import attack, dice

SEED = 1943
POINTS = 24
SURE = 10


def drawn(rolled: int, *, sure: int = SURE, tangled: bool = False) -> Terms:
    """A list with so many rolled entries; tangled: with needs, bars and a group."""
    draw = random.Random(SEED)  # noqa: S311 - the same list each time is what is wanted
    offers = [_offer(f"rolled {number}", draw, roll=_roll(draw)) for number in range(rolled)]
    offers += [_offer(f"sure {number}", draw) for number in range(sure)]
    terms = terms_with(*offers)
    return _tangled(terms) if tangled else terms


def _offer(name: str, draw: random.Random, *, roll: Availability | None = None) -> Offer:
    points = draw.randint(2, 6)
    worth = draw.randint(2, 6)
    return Offer(
        name=name,
        cost={1: points, 2: 2 * points - 1},
        availability=roll,
        worths={"": {1: Fraction(worth), 2: Fraction(2 * worth + draw.randint(-1, 1))}},
    )


def _roll(draw: random.Random) -> Availability:
    """One twelve-sided die: none, then one, then both."""
    first = draw.randint(2, 6)
    second = draw.randint(first + 1, 11)
    return Availability(
        roll=dice(1, sides=12),
        allows=(
            Band(least=1, most=first, allows=0),
            Band(least=first + 1, most=second, allows=1),
            Band(least=second + 1, most=None, allows=None),
        ),
    )


def _tangled(terms: Terms) -> Terms:
    offers = dict(terms.offers)
    for name, words in (
        ("rolled 1", {"needs": {"rolled 0": 1}}),
        ("rolled 2", {"bars": frozenset({"sure 0"})}),
        ("rolled 3", {"needs": {"sure 1": 1}}),
        ("rolled 4", {"group": "armour"}),
        ("rolled 5", {"group": "armour"}),
        ("rolled 6", {"group": "armour"}),
    ):
        offers[name] = replace(offers[name], **words)
    return replace(terms, offers=offers, groups=(GroupLimit(group="armour", most=2),))


def in_one_group(rolled: int, *, limit: GroupLimit, in_a_chain: bool = False) -> Terms:
    """A list whose rolled entries all stand in one group; in a chain each needs the one before."""
    terms = drawn(rolled)
    offers = dict(terms.offers)
    for number in range(rolled):
        name = f"rolled {number}"
        needs = {f"rolled {number - 1}": 1} if in_a_chain and number else {}
        offers[name] = replace(offers[name], group=limit.group, needs=needs)
    return replace(terms, offers=offers, groups=(limit,))


def known(answer: object) -> None:
    """The answer must have been computed."""
    assert not isinstance(answer, NotComputed), answer


def thrice(benchmark: BenchmarkFixture, terms: Terms, *, points: Iterable[int]) -> object:
    """The best play at these points, worked out three times."""
    words = {"points": points}
    return benchmark.pedantic(level_choices, (terms,), words, rounds=3)  # type: ignore[no-untyped-call]


def bench_chart_of_the_example(benchmark: BenchmarkFixture) -> None:
    """Chart, first choices and what would change them, at 18 points."""
    terms = attack()
    answer = benchmark(fallback, terms, points=18)
    assert isinstance(answer, Fallback)
    assert answer.worth == Fraction(154, 9)


def bench_all_levels_of_the_example(benchmark: BenchmarkFixture) -> None:
    """The best play in short at every number of points of its allowance."""
    known(benchmark(level_choices, attack(), points=range(13, 24)))


@pytest.mark.parametrize("rolled", [4, 8, 12, 14, 16])
def bench_open_rolls(benchmark: BenchmarkFixture, rolled: int) -> None:
    """The best play at every number of points, with so many open rolls."""
    terms = drawn(rolled)
    known(thrice(benchmark, terms, points=range(POINTS + 1)))


def bench_twelve_tangled_open_rolls(benchmark: BenchmarkFixture) -> None:
    """Twelve with needs, bars and a group between them."""
    terms = drawn(12, tangled=True)
    known(thrice(benchmark, terms, points=range(POINTS + 1)))


@pytest.mark.parametrize("most", [2, 3, 4, 6])
def bench_twelve_in_one_group(benchmark: BenchmarkFixture, most: int) -> None:
    """Twelve that all have to do with one another, since the group takes so many purchases."""
    terms = in_one_group(12, limit=GroupLimit(group="armour", most=most))
    known(thrice(benchmark, terms, points=range(POINTS + 1)))


def bench_a_chain_of_twelve_in_one_group(benchmark: BenchmarkFixture) -> None:
    """Each needs the one before, and the group takes six of them."""
    terms = in_one_group(12, limit=GroupLimit(group="armour", most=6), in_a_chain=True)
    known(thrice(benchmark, terms, points=range(POINTS + 1)))


@pytest.mark.parametrize("share", [Fraction(1, 3), Fraction(1, 2)])
def bench_twelve_in_one_group_by_points(benchmark: BenchmarkFixture, share: Fraction) -> None:
    """The group takes a share of the points; at one number of points."""
    terms = in_one_group(12, limit=GroupLimit(group="armour", most_points=share))
    known(thrice(benchmark, terms, points=[POINTS]))


@pytest.mark.parametrize("rolled", [4, 6])
def bench_everything_named_first(benchmark: BenchmarkFixture, rolled: int) -> None:
    """The best set to name, of all sets of so many entries."""
    terms = replace(drawn(rolled), asking=Asking.ALL_DECLARED_FIRST)
    known(thrice(benchmark, terms, points=[POINTS]))


def _plainly(terms: Terms) -> Fraction:
    return PlainFallback(terms=terms, points=POINTS // 2).value()


def _quickly(terms: Terms) -> Fraction:
    answer = level_choices(terms, points=[POINTS // 2])
    assert not isinstance(answer, NotComputed)
    return answer[0].worth


@pytest.mark.parametrize("way", [_quickly, _plainly])
def bench_three_rolls_and_two_sure_entries(
    benchmark: BenchmarkFixture, way: Callable[[Terms], Fraction]
) -> None:
    """The same small game in both ways, which have to agree."""
    terms = drawn(3, sure=2)
    value = benchmark.pedantic(way, (terms,), rounds=1)  # type: ignore[no-untyped-call]
    assert value == _quickly(terms)
