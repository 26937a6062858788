"""Legal forces one by one: all of them, or some at random."""

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.chance.force.force_draw import force_draw
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import SMALL, A, B, C, drawn, in_order, listed, names
from tests.support_terms import attack, every_legal_plan, small_terms

CHI_SQUARE_9 = 27.88
"""Above this in one of a thousand samples, with nine degrees of freedom (any table of it)."""


def test_all_of_the_small_example() -> None:
    walk = force_draw(drawn(listed(*SMALL), greatest=8), points=8)
    assert walk.number == 10
    assert sorted(map(names, walk.every())) == [
        "",
        "A",
        "A A",
        "A A A",
        "A A B",
        "A B",
        "A B B",
        "B",
        "B B",
        "B C",
    ]


def test_the_list_of_the_example_is_as_long_as_its_count() -> None:
    """Section 3.12 of the computations: 19 with 5 points."""
    walk = force_draw(drawn(attack(), greatest=18), points=5)
    assert walk.number == len(set(walk.every())) == 19


@pytest.mark.unmeasured
def test_each_force_is_as_likely_as_any_other() -> None:
    walk = force_draw(drawn(listed(*SMALL), greatest=8), points=8)
    lot = Random(7)  # noqa: S311 - the same draws each time
    draws = Counter(names(walk.at_random(lot)) for _ in range(5000))
    assert len(draws) == 10
    assert sum((number - 500) ** 2 / 500 for number in draws.values()) < CHI_SQUARE_9


def test_the_same_number_draws_the_same_force() -> None:
    walk = force_draw(drawn(attack(), greatest=18), points=18)
    one, other = (walk.at_random(Random(3)) for _ in range(2))  # noqa: S311
    assert one == other


def test_where_nothing_is_legal_there_is_nothing_to_draw() -> None:
    half = GroupLimit(group="g", least_points=Fraction(1))
    for terms in (listed(replace(A, least=4)), listed(replace(A, group="g"), groups=[half])):
        walk = force_draw(drawn(terms, greatest=8), points=1)
        assert walk.number == 0
        assert list(walk.every()) == []


def test_with_less_than_no_points_nothing_is_taken() -> None:
    walk = force_draw(drawn(listed(*SMALL), greatest=8), points=-1)
    assert walk.number == 1
    assert list(walk.every()) == [()]
    assert walk.at_random(Random(1)) == ()  # noqa: S311
    must = force_draw(drawn(listed(replace(A, least=1)), greatest=8), points=-1)
    assert (must.number, list(must.every())) == (0, [])


def test_a_share_is_judged_on_the_way() -> None:
    half = GroupLimit(group="g", least_points=Fraction(1, 2))
    terms = listed(A, replace(B, group="g"), replace(C, group="g"), groups=[half])
    walk = force_draw(drawn(terms, greatest=9), points=9)
    assert sorted(map(names, walk.every())) == ["A B B", "B B", "B C"]
    lot = Random(1)  # noqa: S311
    assert {names(walk.at_random(lot)) for _ in range(60)} == {"A B B", "B B", "B C"}


@settings(max_examples=30, deadline=None)
@given(small_terms(), st.integers(-1, 7))
def test_the_list_is_that_of_plain_listing(terms: Terms, points: int) -> None:
    walk = force_draw(drawn(terms, greatest=points), points=points)
    every = [in_order(plan) for plan in walk.every()]
    plainly = {in_order(plan) for plan in every_legal_plan(terms, points=points)}
    assert len(every) == walk.number == len(plainly)
    assert set(every) == plainly
    if plainly:
        assert in_order(walk.at_random(Random(points))) in plainly  # noqa: S311
