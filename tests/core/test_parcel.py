"""Parcels: what they cost, who waits for them, and by when to buy them."""

import datetime
from fractions import Fraction

import pytest

from paradestate.core.money import Currency
from paradestate.core.months import PlannedOrder
from paradestate.core.order import priced
from paradestate.core.parcel import Parcel, RateBand, parcels_of, rate_band
from paradestate.core.savings import Savings
from paradestate.core.span import day, month
from tests.orders import GBP, marenz_problem, pack, problem, source

SAVINGS = Savings(a_month=3000, carried=0, currency=GBP, begins=datetime.date(2026, 11, 25))


def test_the_parcels_of_the_examples_order() -> None:
    asked = marenz_problem()
    order = priced(asked, {("North", "N1"): 1, ("South", "S1"): 3, ("South", "S3"): 1})
    assert parcels_of(asked, order, band=Fraction(1, 20)) == (
        Parcel(name="North", cost=2500, source="North", figures=36),
        Parcel(name="South", cost=4850, source="South", figures=78),
    )


def test_35_euros_at_86_pence_are_28_60_to_31_61_when_the_rate_moves_by_5_per_cent() -> None:
    """By hand: 35 x 0.86 = 30.10; x 0.95 = 28.595, up; x 1.05 = 31.605, up."""
    east = source(
        "East", pack("E1", 3500, pioneer=8), currency=Currency("EUR"), rate=Fraction(86, 100)
    )
    asked = problem(east, pioneer=8)
    order = priced(asked, {("East", "E1"): 1})
    (parcel,) = parcels_of(asked, order, band=Fraction(1, 20))
    assert parcel.cost == 3010
    assert parcel.band == RateBand(least=2860, most=3161)
    (plain,) = parcels_of(asked, order)
    assert plain.band is None


def test_no_movement_leaves_the_amount_as_it_is() -> None:
    rate = Fraction(86, 100)
    assert rate_band(3500, rate=rate, share=Fraction(0)) == RateBand(least=3010, most=3010)
    assert rate_band(3500, rate=rate, share=Fraction(1)) == RateBand(least=0, most=6020)


def test_a_parcel_is_bought_so_many_days_before_it_is_needed() -> None:
    parcel = Parcel(
        name="South", cost=4850, figures=78, lead_days=14, needed=day(datetime.date(2026, 12, 20))
    )
    assert parcel.buy_by == datetime.date(2026, 12, 6)
    assert parcel.planned(SAVINGS) == PlannedOrder(name="South", cost=4850, weight=78, due=2)
    assert parcel.arrival(datetime.date(2026, 12, 1)) == datetime.date(2026, 12, 15)


def test_unknown_lead_days_count_as_none() -> None:
    parcel = Parcel(name="South", cost=4850, needed=month(2026, 12))
    assert parcel.buy_by == datetime.date(2026, 12, 31)
    assert parcel.arrival(datetime.date(2026, 12, 1)) is None


def test_what_is_needed_by_no_day_is_due_in_no_month() -> None:
    parcel = Parcel(name="South", cost=4850)
    assert parcel.buy_by is None
    assert parcel.planned(SAVINGS) == PlannedOrder(name="South", cost=4850)


@pytest.mark.parametrize("days", [999_999_999, 10_000_000])
def test_absurd_lead_days_end_with_the_calendar(days: int) -> None:
    parcel = Parcel(name="South", cost=4850, lead_days=days, needed=month(2026, 12))
    assert parcel.buy_by == datetime.date.min
    assert parcel.arrival(datetime.date(2026, 12, 1)) == datetime.date.max
