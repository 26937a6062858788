"""What is said of money and bench together."""

import datetime
from dataclasses import replace

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Level
from paradestate.core.force import Aim
from paradestate.core.span import day
from paradestate.core.work.bench_plan import best_plan
from paradestate.core.work.bench_plan_finding import pace_missing, plan_findings
from tests.core.work.test_bench_plan import SAVINGS, TERMS, parcel, troop
from tests.forces import marenz

SINGLE = parcel("North", 4850, rifleman=24, officer=4)
PLAN = best_plan(troop(), [SINGLE], terms=TERMS)
RICH = replace(TERMS, savings=replace(SAVINGS, a_month=4850))


def test_without_a_pace_there_is_no_plan() -> None:
    found = pace_missing(marenz())
    assert (found.level, found.code) == (Level.STOP, "pace-missing")
    assert found.place == marenz().places["bench", "week"]


def test_a_limit_that_moves_the_first_day_is_said_with_the_way_out() -> None:
    (found,) = plan_findings(marenz(), PLAN, place=None)
    assert (found.level, found.code, found.place) == (
        Level.WARN,
        "limit-moves-the-date",
        CHOSEN_HERE,
    )
    assert (
        "£48.50 for the parcel that the smallest legal force waits for is needed by "
        in found.message
    )
    assert found.message.endswith("; £30.00 a month allows it in April 2026.")
    assert found.hint == "With £48.50 a month, or with £18.50 carried, it could be as soon."
    assert not list(plan_findings(marenz(), best_plan(troop(), [SINGLE], terms=RICH), place=None))
    carried = replace(TERMS, savings=replace(SAVINGS, carried=500))
    (other,) = plan_findings(marenz(), best_plan(troop(), [SINGLE], terms=carried), place=None)
    assert "£30.00 a month with £5.00 carried allows it in April 2026" in other.message


def test_a_parcel_after_the_deadline_and_one_that_nobody_knows_the_way_of() -> None:
    force = marenz()
    deadline = datetime.date(2026, 3, 8)
    aim = replace(force, aim=Aim(deadline=day(deadline)))
    plan = best_plan(troop(), [SINGLE], terms=RICH)
    (late,) = plan_findings(aim, plan, place=None)
    assert (late.code, late.level) == ("parcel-after-deadline", Level.WARN)
    assert late.message == (
        "The parcel from North comes on 9 March 2026 at the soonest; the deadline is 8 March 2026."
    )
    unknown = replace(SINGLE, parcel=replace(SINGLE.parcel, lead_days=None))
    halves = [replace(unknown, figures={"rifleman": 24}), replace(unknown, figures={"officer": 4})]
    halves[1] = replace(halves[1], parcel=replace(unknown.parcel, name="North 2", cost=0))
    (said,) = plan_findings(aim, best_plan(troop(), halves, terms=RICH), place=None)
    assert (said.code, said.level) == ("lead-time-unknown", Level.REMARK)
