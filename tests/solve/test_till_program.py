"""The tiers of a source's till."""

from fractions import Fraction

from paradestate.solve.till_program import Tier, tiers
from tests.orders import source

TENTH = Fraction(1, 10)


def test_tiers_merge_the_steps_of_carriage_and_discount() -> None:
    seller = source("North", carriage={0: 5, 40: 0}, discount={50: TENTH})
    assert list(tiers(seller, greatest=90, unit=1)) == [
        Tier(least=0, most=39, carriage=5, discount=Fraction(0)),
        Tier(least=40, most=49, carriage=0, discount=Fraction(0)),
        Tier(least=50, most=90, carriage=0, discount=TENTH),
    ]


def test_tiers_begin_at_the_least_order_and_end_at_the_greatest_goods() -> None:
    seller = source("North", carriage={0: 5, 40: 0}, discount={50: TENTH}, least_order=20)
    assert list(tiers(seller, greatest=45, unit=1)) == [
        Tier(least=20, most=39, carriage=5, discount=Fraction(0)),
        Tier(least=40, most=45, carriage=0, discount=Fraction(0)),
    ]
    assert list(tiers(seller, greatest=19, unit=1)) == []


def test_before_the_first_step_carriage_is_free() -> None:
    assert next(iter(tiers(source("North", carriage={40: 3}), greatest=90, unit=1))).carriage == 0


def test_tiers_hold_whole_units_only_and_those_without_any_are_left_out() -> None:
    seller = source("North", carriage={0: 5, 41: 3, 44: 0}, discount={52: TENTH})
    assert list(tiers(seller, greatest=99, unit=5)) == [
        Tier(least=0, most=40, carriage=5, discount=Fraction(0)),
        Tier(least=45, most=50, carriage=0, discount=Fraction(0)),
        Tier(least=55, most=95, carriage=0, discount=TENTH),
    ]
