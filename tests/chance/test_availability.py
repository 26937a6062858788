"""The rolls of a plan, and what they allow."""

from fractions import Fraction

import pytest

from paradestate.chance.availability import PlanRoll, plan_rolls
from paradestate.core.support.chances import Chances
from paradestate.core.support.entry import Availability, Band
from paradestate.core.support.offer import Offer
from tests.chance.plans import bought, rolled
from tests.support_terms import dice

GUNS = Offer(name="guns", cost={1: 4, 2: 7, 3: 10}, availability=rolled(9, sides=12, partly=3))
SURE = Offer(name="horse", cost={1: 1})
TANKS = Offer(name="tanks", cost={2: 9}, availability=rolled(5, shared="armour"))
CARS = Offer(name="cars", cost={1: 3}, availability=rolled(3, shared="armour"))


def test_two_guns_on_one_twelve_sided_die() -> None:
    """Section 3.10 of the computations, example 3: 1-2 none, 3-8 at most one, 9-12 both."""
    (roll,) = plan_rolls({"guns": GUNS}, bought(guns=2))
    chances = roll.chances_of(0)
    assert chances == Chances(counts={0: 1, 1: 3, 2: 2}, ways=6)
    assert (chances.of(2), chances.at_least(1)) == (Fraction(1, 3), Fraction(5, 6))


def test_two_purchases_of_one_entry_are_two_rolls() -> None:
    rolls = plan_rolls({"guns": GUNS, "horse": SURE}, bought(guns=2) + bought(horse=1, guns=1))
    assert [roll.places for roll in rolls] == [(0,), (2,)]


def test_entries_that_share_a_roll_have_one_between_them() -> None:
    (roll,) = plan_rolls({"tanks": TANKS, "cars": CARS}, bought(tanks=2, cars=1))
    assert roll == PlanRoll(places=(0, 1), allowed={(0, 0): 2, (0, 1): 2, (2, 1): 2}, ways=6)
    assert roll.chances_of(1) == Chances(counts={0: 1, 1: 2}, ways=3)


def test_those_that_do_not_agree_on_the_roll_have_one_each() -> None:
    larger = Offer(name="cars", cost={1: 3}, availability=rolled(3, sides=8, shared="armour"))
    rolls = plan_rolls({"tanks": TANKS, "cars": larger}, bought(tanks=2, cars=1))
    assert [(roll.places, roll.ways) for roll in rolls] == [((0,), 6), ((1,), 8)]


def test_no_more_is_allowed_than_was_asked() -> None:
    assert GUNS.availability is not None
    assert [GUNS.availability.allowed(total, asked=3) for total in (2, 3, 8, 9)] == [0, 1, 1, 3]


def test_a_roll_in_no_band_is_a_mistake_of_the_reader() -> None:
    hole = Availability(roll=dice(1, sides=6), allows=(Band(least=1, most=5, allows=1),))
    with pytest.raises(ValueError, match="no band holds a roll of 6"):
        hole.allowed(6, asked=1)
