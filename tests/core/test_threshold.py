"""The values of goods from which a source charges otherwise."""

from fractions import Fraction

from paradestate.core.receipt import charge
from paradestate.core.threshold import Threshold, standing, thresholds
from tests.forces import marenz
from tests.orders import source

NORTH, SOUTH = marenz().sources["North"], marenz().sources["South"]


def told(*thresholds_: Threshold) -> list[tuple[int, int | None, Fraction | None, bool]]:
    return [(each.at, each.carriage, each.discount_rate, each.sends) for each in thresholds_]


def test_each_value_says_what_holds_from_there_on() -> None:
    assert told(*thresholds(NORTH)) == [(4000, 0, None, False)]
    assert told(*thresholds(SOUTH)) == [(5000, None, Fraction(1, 10), False)]


def test_a_value_at_which_nothing_changes_is_none() -> None:
    even = source("Even", carriage={0: 300, 2000: 300}, discount={0: Fraction(0)})
    assert thresholds(even) == ()


def test_below_the_least_order_nothing_is_sent() -> None:
    seller = source("Seller", carriage={0: 300, 1000: 0}, least_order=1000)
    assert told(*thresholds(seller)) == [(1000, 0, None, True)]
    assert standing(seller, goods=1000).just_below is None


def test_goods_on_the_line_cost_less_than_goods_just_below_it() -> None:
    """Checked by hand: 50.00 less a tenth and 3.50, against 49.99 and 3.50."""
    found = standing(SOUTH, goods=5000)
    assert (found.above, found.short) == (0, None)
    assert found.just_below is not None
    assert (charge(SOUTH, goods=5000).total, found.just_below.total) == (4850, 5349)
    assert charge(SOUTH, goods=4900).total == 5250


def test_goods_between_two_lines_know_both() -> None:
    seller = source("Seller", carriage={0: 500, 2000: 300, 4000: 0})
    found = standing(seller, goods=3000)
    assert (found.above, found.short) == (1000, 1000)
    assert found.following is not None
    assert found.following.charge.total == 4000


def test_goods_below_every_line_are_above_none() -> None:
    found = standing(NORTH, goods=3800)
    assert (found.reached, found.above, found.just_below) == (None, None, None)
    assert found.short == 200
