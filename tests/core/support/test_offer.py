"""An entry as it stands in a game."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.support.entry import Availability
from paradestate.core.support.offer import Offer
from tests.support_terms import dice


def test_a_choice_costs_for_each_one_taken() -> None:
    offer = Offer(name="pioneers", cost={1: 3, 2: 6}, choices={"flame": 2, "bridging": 0})
    assert offer.price(2, choice="flame") == 10
    assert offer.price(2, choice="bridging") == 6


def test_a_refused_refund_brings_nothing_and_what_needs_no_roll_is_never_refused() -> None:
    roll = Availability(roll=dice(1, sides=6), allows=())
    cost = {1: -3, 2: 5}
    offer = Offer(name="guns", cost=cost, choices={"tow": -3}, availability=roll, loses_points=True)
    assert offer.is_prepaid(2, choice="tow") is False
    offer = replace(offer, choices={"tow": -2})
    assert offer.is_prepaid(2, choice="tow") is True
    assert offer.is_prepaid(1, choice="tow") is False
    assert replace(offer, loses_points=False).is_prepaid(2, choice="tow") is False
    assert replace(offer, availability=None).is_prepaid(2, choice="tow") is False


@pytest.mark.parametrize(("allowed", "number"), [(0, 0), (1, 0), (2, 2), (3, 2), (4, 4), (9, 4)])
def test_no_more_comes_than_is_allowed_and_sold(allowed: int, number: int) -> None:
    assert Offer(name="tanks", cost={4: 15, 2: 9}).greatest_number(allowed=allowed) == number


@pytest.mark.parametrize(("purchases", "more"), [(0, 0), (1, 0), (2, 1), (3, 4), (5, 10)])
def test_repeats_cost_more_and_the_last_step_holds_on(purchases: int, more: int) -> None:
    offer = Offer(name="guns", cost={1: 3}, repeats_cost_more=(1, 3))
    assert offer.surcharge(purchases) == more


def test_without_steps_repeats_cost_the_same() -> None:
    assert Offer(name="guns", cost={1: 3}).surcharge(4) == 0


@pytest.mark.parametrize(("total", "worth"), [(0, 0), (1, 0), (2, 10), (3, 12), (9, 12)])
def test_a_total_has_the_worth_of_the_greatest_listed_below(total: int, worth: int) -> None:
    offer = Offer(name="tanks", cost={1: 1}, worths={"": {2: Fraction(10), 3: Fraction(12)}})
    assert offer.worth({"": total}) == worth


def test_worths_by_choice_are_added() -> None:
    offer = Offer(
        name="pioneers",
        cost={1: 3},
        choices={"flame": 0, "bridging": 0},
        worths={"flame": {1: Fraction(4)}, "": {2: Fraction(1)}},
    )
    assert offer.worth({"flame": 1, "bridging": 1}) == 5
    assert offer.worth({"bridging": 1}) == 0
