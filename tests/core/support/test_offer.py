"""An entry as it stands in a game."""

from fractions import Fraction

import pytest

from paradestate.core.support.offer import Offer


def test_a_choice_costs_for_each_one_taken() -> None:
    offer = Offer(name="pioneers", cost={1: 3, 2: 6}, choices={"flame": 2, "bridging": 0})
    assert offer.price(2, choice="flame") == 10
    assert offer.price(2, choice="bridging") == 6


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
