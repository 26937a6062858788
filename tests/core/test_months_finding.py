"""What is said about spreading orders over months."""

import datetime
from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.months_finding import (
    bought_too_late,
    lead_time_unknown,
    limit_missing,
    never_covered,
    rate_breaks_the_limit,
    too_many_months,
    too_many_orders,
)
from paradestate.core.parcel import Parcel, RateBand
from paradestate.core.savings import Savings
from paradestate.core.span import day, month
from tests.forces import marenz, partial_force_from
from tests.orders import GBP

SAVINGS = Savings(a_month=3000, carried=0, currency=GBP, begins=datetime.date(2026, 11, 25))
NORTH = Parcel(name="North", cost=4850, source="North", needed=month(2026, 12))


def late(
    parcel: Parcel = NORTH, *, others: tuple[Parcel, ...] = (), savings: Savings = SAVINGS
) -> Finding:
    """The warning for a parcel that is bought in January 2027."""
    return bought_too_late(
        parcel,
        month=3,
        savings=savings,
        planned=tuple(each.planned(savings) for each in (parcel, *others)),
        place=CHOSEN_HERE,
    )


OTHER = Parcel(name="main", cost=1200, needed=month(2026, 12))


def test_a_parcel_that_is_bought_too_late() -> None:
    found = late(others=(OTHER,))
    assert (found.level, found.code) == (Level.WARN, "bought-too-late")
    assert found.message == (
        "£48.50 from North is needed by December 2026; £30.00 a month allows it in January 2027."
    )
    assert found.effect == "It is there on 1 January 2027 at the soonest, 1 day late."
    assert found.hint == ("With £30.25 a month, or with £0.50 carried, it would be there in time.")


def test_a_parcel_that_takes_its_time_and_money_that_was_carried() -> None:
    slow = replace(NORTH, lead_days=14, needed=day(datetime.date(2026, 12, 20)))
    found = late(slow, others=(OTHER,), savings=replace(SAVINGS, carried=10))
    assert found.message == (
        "£48.50 from North is needed by 20 December 2026 and takes 14 days to come; "
        "£30.00 a month with £0.10 carried allows it in January 2027."
    )
    assert found.effect == "It is there on 15 January 2027 at the soonest, 26 days late."
    assert found.hint == ("With £30.20 a month, or with £0.50 carried, it would be there in time.")


def test_money_does_not_mend_what_had_to_be_bought_before_the_plan_begins() -> None:
    found = late(replace(OTHER, needed=month(2026, 10)))
    assert found.message.startswith("£12.00 for main is needed by October 2026; ")
    assert found.hint == (
        "It had to be bought by 31 October 2026, so money doesn't mend that: "
        "need it later, or find it where it comes sooner."
    )


def test_what_is_needed_by_no_day_is_never_late() -> None:
    with pytest.raises(ValueError, match="North isn't needed"):
        late(replace(NORTH, needed=None))


def test_nothing_says_what_may_be_spent() -> None:
    found = limit_missing(partial_force_from("aim: {text: fun}"))
    assert (found.level, found.code) == (Level.STOP, "limit-missing")
    assert found.place.path == ("aim",)
    assert "--limit" in found.hint


def test_nothing_is_put_aside() -> None:
    found = never_covered(4850, replace(SAVINGS, a_month=0, carried=1000))
    assert (found.level, found.code) == (Level.STOP, "limit-never-covers")
    assert found.message == "£48.50 can't be paid from £10.00 with nothing put aside a month."
    assert "carry £38.50 more" in found.hint


def test_a_plan_of_more_than_fifty_years() -> None:
    found = too_many_months(61_000, replace(SAVINGS, a_month=10, carried=10), months=6099)
    assert (found.level, found.code) == (Level.STOP, "too-many-months")
    assert found.message == (
        "At £0.10 a month £610.00 takes 6,099 months; at most 600 are worked out."
    )
    assert "£1.02 a month or more" in found.hint


def test_more_orders_than_all_sequences_can_be_weighed_of() -> None:
    found = too_many_orders(15)
    assert (found.level, found.code) == (Level.STOP, "too-many-orders")
    assert found.message.startswith("There are 15 orders; of more than 14 ")


def test_a_lead_time_that_is_not_known() -> None:
    found = lead_time_unknown(marenz(), NORTH)
    assert (found.level, found.code) == (Level.REMARK, "lead-time-unknown")
    assert found.message == "How long the parcel from North takes isn't known."
    assert found.place.path == ("sources", "North")


def test_a_rate_that_rises_breaks_the_limit() -> None:
    east = replace(NORTH, name="East", source="East", band=RateBand(least=2860, most=3161))
    west = replace(east, name="West", source="West")
    short = ((1, 161), (2, 322))
    found = rate_breaks_the_limit(
        marenz(), (NORTH, east), share=Fraction(1, 20), overspent=short, savings=SAVINGS
    )
    assert (found.level, found.code) == (Level.WARN, "rate-breaks-the-limit")
    assert found.message == (
        "With the rate of East 5% higher, November 2026 is overspent by £1.61."
    )
    assert found.hint == "Carry £3.22 more at the start, or buy later than the plan says."
    both = rate_breaks_the_limit(
        marenz(), (east, west), share=Fraction(1, 40), overspent=short, savings=SAVINGS
    )
    assert both.message.startswith("With the rates of East and West 2.5% higher, ")
