"""A plan added up."""

from fractions import Fraction

from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_points, plan_worth, purchases_of

OFFERS = {
    "guns": Offer(
        name="guns", cost={1: 3, 2: 5}, repeats_cost_more=(2,), worths={"": {3: Fraction(9)}}
    ),
    "horse": Offer(name="horse", cost={1: 4}, worths={"": {1: Fraction(1, 2)}}),
}
PLAN = (
    Purchase(entry="guns", number=2),
    Purchase(entry="horse", number=1),
    Purchase(entry="guns", number=1),
)


def test_purchases_are_counted_by_entry() -> None:
    assert purchases_of(PLAN) == {"guns": 2, "horse": 1}


def test_points_are_prices_and_what_repeats_cost_more() -> None:
    assert plan_points(OFFERS, PLAN) == 5 + 4 + 3 + 2


def test_worth_belongs_to_the_total_of_an_entry() -> None:
    assert plan_worth(OFFERS, PLAN) == Fraction(19, 2)
    assert plan_worth(OFFERS, PLAN[:1]) == 0
