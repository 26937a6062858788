"""What is to be said about a forecast."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Aim, Force
from paradestate.core.on_order import OnOrder
from paradestate.core.span import day, month
from paradestate.core.work.bench_log import BenchLog
from paradestate.core.work.forecast_finding import (
    deadline_past,
    no_habit,
    parcel_after_deadline,
    undated_orders,
    work_left_out,
)
from paradestate.core.work.forecast_value import AwaitedParcel, Evidence

FORCE = Force(title="Marenz", raise_=None, aim=Aim(deadline=month(2026, 3)))
APRIL = datetime.date(2026, 4, 1)
EVIDENCE = Evidence(
    sessions=2,
    weeks=0,
    left_out=0,
    logged=Fraction(0),
    usual=Fraction(90),
    block=3,
    prior_weeks=4,
)


def test_without_anything_no_date_is_given() -> None:
    found = no_habit(FORCE)
    assert (found.code, found.level) == ("week-unsaid", Level.WARN)


def codes(found: tuple[Finding, ...]) -> list[str]:
    return [each.code for each in found]


def test_a_deadline_is_past_on_the_day_after_it() -> None:
    assert codes(tuple(deadline_past(FORCE, today=datetime.date(2026, 3, 31)))) == []
    (found,) = deadline_past(FORCE, today=APRIL)
    assert (found.code, found.message) == ("deadline-past", "The deadline was March 2026.")
    assert codes(tuple(deadline_past(replace(FORCE, aim=None), today=APRIL))) == []
    no_deadline = replace(FORCE, aim=Aim(text="play"))
    assert codes(tuple(deadline_past(no_deadline, today=APRIL))) == []


def parcel(*arrivals: datetime.date) -> AwaitedParcel:
    share = Fraction(1, len(arrivals))
    return AwaitedParcel(name="North", arrivals=dict.fromkeys(arrivals, share))


def test_a_parcel_that_can_only_come_after_the_deadline_is_told() -> None:
    may = datetime.date(2026, 5, 2)
    today = datetime.date(2026, 3, 5)
    (found,) = parcel_after_deadline(FORCE, parcel(may), today=today)
    assert found.code == "parcel-after-deadline"
    assert found.message == (
        "The parcel from North comes on 2 May 2026 at the soonest; the deadline is March 2026."
    )
    in_time = parcel(may, datetime.date(2026, 3, 31))
    assert codes(tuple(parcel_after_deadline(FORCE, in_time, today=today))) == []
    assert codes(tuple(parcel_after_deadline(FORCE, parcel(may), today=APRIL))) == []
    own_pace = replace(FORCE, aim=Aim(deadline=day(may)))
    assert codes(tuple(parcel_after_deadline(own_pace, parcel(may), today=today))) == []
    assert (
        codes(tuple(parcel_after_deadline(Force(title="x", raise_=None), parcel(may), today=today)))
        == []
    )


def test_orders_for_which_no_date_can_wait_are_told() -> None:
    due = datetime.date(2026, 3, 20)
    order = OnOrder(
        entry="1f0c9b2e-6a52", source="North", day=due, expected=due, figures={"rifleman": 2}
    )
    assert codes(tuple(undated_orders(FORCE, [order], today=due))) == []
    march = "20 March 2026"
    (late,) = undated_orders(FORCE, [order], today=APRIL)
    assert (late.level, late.code, late.message) == (
        Level.WARN,
        "parcel-overdue",
        f"Expected on {march} and not received: 2 riflemen from North, ordered on {march}.",
    )
    (unsaid,) = undated_orders(FORCE, [replace(order, expected=None)], today=due)
    assert (unsaid.code, unsaid.message) == (
        "parcel-without-day",
        "Nobody says when these come: 2 riflemen from North, ordered on 20 March 2026.",
    )
    assert unsaid.hint.endswith("its id begins with 1f0c9b2e.")


def test_work_that_nothing_is_learned_from_is_told_once() -> None:
    assert list(work_left_out(FORCE, BenchLog())) == []
    (found,) = work_left_out(FORCE, BenchLog(left_out=90, unknown=frozenset({"primed", "based"})))
    assert found.level is Level.REMARK
    assert found.message == (
        "1 h 30 min of logged work brought something on at 'based' and 'primed', which the force "
        "doesn't have."
    )
