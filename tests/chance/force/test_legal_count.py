"""How many forces are legal: check values, and plain counting."""

from dataclasses import replace
from fractions import Fraction
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.chance.force.legal_count import least_unspent, legal_forces
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.force_map import LevelForces
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import SMALL, A, B, drawn, listed
from tests.support_terms import attack, every_legal_plan, plain_points, small_terms


def counted(terms: Terms, points: range) -> tuple[LevelForces, ...]:
    return legal_forces(drawn(terms, greatest=points[-1]), points=points)


def plainly_counted(terms: Terms, points: range) -> tuple[LevelForces, ...]:
    found = []
    for number in points:
        plans = list(every_legal_plan(terms, points=number))
        spending = [plan for plan in plans if plain_points(terms, plan) == number]
        found.append(LevelForces(points=number, legal=len(plans), spending_all=len(spending)))
    return tuple(found)


def test_the_small_example() -> None:
    """Section 3.12 of the computations."""
    assert counted(listed(*SMALL), range(9))[-1].legal == 10


@pytest.mark.parametrize(("points", "legal", "spending"), [(5, 19, 8), (18, 3809, 977)])
def test_the_example_in_an_attack(points: int, legal: int, spending: int) -> None:
    """Section 3.12 of the computations."""
    level = counted(attack(), range(points + 1))[points]
    assert (level.legal, level.spending_all) == (legal, spending)


def test_counts_of_any_size() -> None:
    """Of 150 entries any half may be had: the binomial sum of half of two to the 150."""
    terms = listed(*(Offer(name=f"entry {number}", cost={1: 1}) for number in range(151)))
    assert counted(terms, range(76))[-1].legal == 2**150


def test_a_share_is_of_the_points_of_each_game() -> None:
    """With 6 points 3 may go to A: one of them with up to one B, or none with up to two."""
    half = GroupLimit(group="g", most_points=Fraction(1, 2))
    terms = listed(replace(A, group="g"), B, groups=[half])
    assert [level.legal for level in counted(terms, range(3, 9))] == [2, 3, 4, 5, 5, 8]
    assert counted(terms, range(3, 9)) == plainly_counted(terms, range(3, 9))


def test_the_fewest_points_that_a_force_leaves() -> None:
    """Of 2 and 3 points all but 1 are spent; without a legal force nothing is left or spent."""
    terms = listed(*SMALL)
    assert least_unspent(drawn(terms, greatest=13), points=range(-1, 5)) == (None, 0, 1, 0, 0, 0)
    assert least_unspent(drawn(terms, greatest=30), points=(17, 18, 30)) == (0, 1, 13)
    none = listed(replace(A, least=4))
    assert least_unspent(drawn(none, greatest=3), points=(3,)) == (None,)


def test_below_nought_nothing_may_be_taken_whatever_refunds_bring() -> None:
    terms = listed(replace(B, cost={1: -1}))
    assert [level.legal for level in counted(terms, range(-3, 1))] == [1, 1, 1, 3]
    assert counted(listed(replace(A, least=4)), range(1))[0].legal == 0


@settings(max_examples=30, deadline=None)
@given(small_terms(), st.integers(-1, 8))
def test_forces_are_as_many_as_plain_counting_finds(terms: Terms, greatest: int) -> None:
    points = range(-2, greatest + 1)
    assert counted(terms, points) == plainly_counted(terms, points)


def many_terms(lot: Random) -> Terms:
    """Five entries with two conditions and a shared limit, drawn by lot."""
    names = "abcde"
    offers = {}
    for name in names:
        one, other = lot.sample(names.replace(name, ""), 2)
        offers[name] = Offer(
            name=name,
            cost={1: lot.randint(1, 5)},
            most=lot.randint(1, 2),
            needs=lot.choice(({}, {}, {one: lot.randint(1, 2)})),
            needs_any_of=lot.choice(({}, {}, {one: 1, other: 1})),
            needs_for_each=lot.choice(({}, {}, {other: 1})),
            group=lot.choice(("", "g")),
        )
    barred, by = lot.sample(names, 2)
    offers[barred] = replace(offers[barred], bars=frozenset({by}))
    offers[by] = replace(offers[by], bars=frozenset({barred}))
    limit = lot.choice(
        (
            GroupLimit(group="g", most=2),
            GroupLimit(group="g", least=1),
            GroupLimit(group="g", most_points=Fraction(1, 2)),
        )
    )
    return listed(*offers.values(), groups=[limit])


@pytest.mark.unmeasured
def test_a_thousand_lists_drawn_by_lot_are_counted_as_plain_counting_does() -> None:
    lot = Random(11)  # noqa: S311 - the same lists each time
    legal = 0
    for _ in range(1000):
        terms, points = many_terms(lot), lot.randint(2, 7)
        found = counted(terms, range(points, points + 1))
        assert found == plainly_counted(terms, range(points, points + 1))
        legal += found[0].legal
    assert legal > 2000
