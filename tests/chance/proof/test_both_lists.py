"""How many forces two lists hold legal, beside plain listing of both."""

from collections import Counter
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings

from paradestate.chance.proof import both_lists
from paradestate.chance.proof.both_lists import legal_in_both
from paradestate.core.certainty import NotComputed
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import SMALL, A, B, C, listed
from tests.support_terms import attack, every_legal_plan, small_terms


def plainly(old: Terms, new: Terms, *, points: range) -> tuple[int, ...]:
    return tuple(len(_forces(old, number) & _forces(new, number)) for number in points)


def _forces(terms: Terms, points: int) -> set[frozenset[tuple[object, int]]]:
    plans = every_legal_plan(terms, points=points)
    return {frozenset(Counter(plan).items()) for plan in plans}


def with_offer(terms: Terms, offer: Offer) -> Terms:
    return replace(terms, offers={**terms.offers, offer.name: offer})


def test_a_list_with_itself_has_all_its_forces() -> None:
    """Section 3.12 of the computations: 10 forces; of the example 19 with 5 points, 3,809."""
    terms = listed(*SMALL)
    assert legal_in_both(terms, terms, points=range(8, 9)) == (10,)
    assert legal_in_both(attack(), attack(), points=(5, 18)) == (19, 3809)


@pytest.mark.parametrize("price", [1, 2, 5, 9])
def test_a_changed_price_keeps_what_both_can_pay(price: int) -> None:
    old = listed(*SMALL)
    new = with_offer(old, replace(B, cost={1: price}))
    points = range(10)
    assert legal_in_both(old, new, points=points) == plainly(old, new, points=points)


def test_an_entry_that_one_lacks_is_in_no_force_of_both() -> None:
    old, new = listed(A, B, C), listed(A, B)
    points = range(9)
    assert legal_in_both(old, new, points=points) == plainly(old, new, points=points)
    must = listed(A, replace(C, least=1, needs={}))
    assert legal_in_both(must, new, points=points) == (0,) * 9


def test_each_list_keeps_its_own_shares_limits_and_needs() -> None:
    half = GroupLimit(group="g", most_points=Fraction(1, 2))
    third = GroupLimit(group="g", most_points=Fraction(1, 3), least=1)
    old = listed(replace(A, group="g"), B, C, groups=[half])
    new = listed(replace(A, group="g", most=2, cost={1: 1}), replace(B, group="g"), groups=[third])
    points = range(12)
    assert legal_in_both(old, new, points=points) == plainly(old, new, points=points)


def test_a_group_that_needs_what_nobody_offers_leaves_no_force() -> None:
    old = listed(A)
    new = listed(A, groups=[GroupLimit(group="lost", least=1)])
    assert legal_in_both(old, new, points=range(3)) == (0, 0, 0)


def test_a_purchase_priced_by_one_list_alone_is_left_out() -> None:
    old, new = listed(replace(A, cost={2: 3})), listed(A)
    assert legal_in_both(old, new, points=(0, 9)) == (1, 1)


def test_any_number_of_an_entry_is_bounded_by_the_points() -> None:
    old = listed(replace(A, most=None))
    new = listed(replace(A, most=None, cost={1: 3}))
    assert legal_in_both(old, new, points=(2, 3, 9)) == (1, 2, 4)


def test_too_many_cases_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(both_lists, "MOST_CASES", 0)
    assert isinstance(legal_in_both(listed(A), listed(A), points=(3,)), NotComputed)
    monkeypatch.setattr(both_lists, "MOST_WAYS", 1)
    found = legal_in_both(listed(A), listed(A), points=(3,))
    assert isinstance(found, NotComputed)
    assert found.reason == "there are more than 1 ways to take 'A' alone"


@settings(max_examples=40, deadline=None)
@given(small_terms(most_entries=3), small_terms(most_entries=3))
def test_two_lists_drawn_at_random(old: Terms, new: Terms) -> None:
    points = range(6)
    assert legal_in_both(old, new, points=points) == plainly(old, new, points=points)
