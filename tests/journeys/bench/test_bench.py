"""The order of work for a folder: milestones, what was logged, and what stops it."""

import datetime
from fractions import Fraction
from pathlib import Path
from uuid import uuid4

import pytest

from paradestate.core.choice import Choice
from paradestate.core.journal_entry import EntryKind
from paradestate.core.work.forecast_value import FinishDate
from paradestate.journeys.bench.bench import (
    BenchAnswer,
    OrderOfWork,
    Outcome,
    keep_dates,
    order_of_work,
)
from paradestate.journeys.bench.bench_days import days_of_batches
from paradestate.journeys.bench.forecast import Keeping
from tests.cli.calling import call
from tests.forces import EXAMPLES
from tests.journeys.conftest import FERRY_GUARD, written
from tests.journeys.logging_to import NOW, logged

ON = datetime.date(2026, 3, 5)
MINUTES = "bench: {minutes: {foot: {painted: 15}, vehicle: {painted: 40}}, week: 1 h}\n"


@pytest.fixture
def ferry(tmp_path: Path) -> Path:
    """Two sections of which two riflemen are painted, and a boat that nobody owns."""
    return written(tmp_path / "ferry", FERRY_GUARD + MINUTES)


def order(folder: Path, choice: Choice | None = None) -> OrderOfWork:
    answer = order_of_work(folder, today=ON, choice=choice or Choice())
    assert answer.order is not None
    return answer.order


def test_the_example_is_legal_in_week_five_and_kind_by_kind_in_week_nine() -> None:
    """Story 1: 19 hours against 34.5, at four hours a week."""
    found = order(EXAMPLES / "marenz")
    assert found.week == 4 * 60
    assert [each.ends for each in found.ladder.reached] == [19 * 60, 2070]
    assert [each.ends for each in found.by_kind.reached] == [2070, 2070]


def test_a_logged_session_shortens_the_ladder(ferry: Path) -> None:
    before = order(ferry).ladder.minutes
    assert before == 6 * 15 + 40
    logged = call(
        "log",
        ferry,
        "session",
        "rifleman=3",
        "--from",
        "in packet",
        "--to",
        "painted",
        "--minutes",
        45,
    )
    assert logged.status == 0
    assert order(ferry).ladder.minutes == before - 45


def test_what_is_lent_needs_no_work(ferry: Path) -> None:
    moved = ("moved", "rifleman=6", "--from", "in packet", "--to", "painted")
    assert call("log", ferry, *moved).status == 0
    assert call("log", ferry, "lent", "rifleman=4", "--from", "painted").status == 0
    assert order(ferry).ladder.minutes == 40


def test_a_choice_changes_what_is_raised() -> None:
    found = order(EXAMPLES / "marenz", Choice(numbers={"company": 3}))
    assert found.ladder.minutes == 2070 - (6 * 60 + 45 + 60)


def test_a_folder_that_cannot_be_counted_has_no_order_of_work(tmp_path: Path) -> None:
    broken = written(tmp_path / "broken", FERRY_GUARD.replace("guard}", "gaurd}"))
    answer = order_of_work(broken, today=ON, choice=Choice())
    assert answer.order is None
    assert answer.checked.is_stopped


def test_a_force_without_minutes_has_none_either(guard: Path) -> None:
    answer = order_of_work(guard, today=ON, choice=Choice())
    assert answer.order is None
    assert [found.code for found in answer.checked.findings] == ["bench-minutes-missing"]


def test_a_milestone_waits_for_the_parcel_that_it_needs(ferry: Path) -> None:
    """All but the boat takes half as long as until the parcel comes."""
    before = order(ferry)
    due = ON + datetime.timedelta(days=70)
    ordered = logged(
        ferry, EntryKind.ORDERED, figures={"boat": 1}, source="North", expected=due, on=ON
    )
    assert ordered.entry is not None
    after = order(ferry)
    assert [(each.source, each.expected) for each in after.orders] == [("North", due)]
    assert after.ladder.minutes == before.ladder.minutes
    (goal,) = {tuple(each.goal.waiting.items()) for each in after.forecast_of.values()}
    assert dict(goal) == {"North": 40}
    assert half_chance(before).day < due < half_chance(after).day
    assert before.week_alone == 60
    assert after.week_alone is None
    batches = days_of_batches(after.dates.beside)
    assert batches[1] < due < batches[2]
    assert before.ladder.held_up == ()
    day = due + datetime.timedelta(days=1)
    assert [(rung.number, rung.held_until) for rung in after.ladder.held_up] == [(2, day)]
    assert (before.ladder.is_proved, after.ladder.is_proved) == (True, False)
    logged(ferry, EntryKind.STRUCK_OUT, struck_out=ordered.entry.id, note="sold out", on=ON)
    assert half_chance(order(ferry)) == half_chance(before)


def test_a_parcel_that_is_overdue_is_told_and_not_waited_for(ferry: Path) -> None:
    before = order(ferry)
    logged(
        ferry,
        EntryKind.ORDERED,
        figures={"boat": 1},
        source="North",
        expected=ON - datetime.timedelta(days=2),
        on=ON - datetime.timedelta(days=9),
    )
    answer = order_of_work(ferry, today=ON, choice=Choice())
    assert answer.order is not None
    assert half_chance(answer.order) == half_chance(before)
    assert "parcel-overdue" in {found.code for found in answer.checked.findings}


def half_chance(found: OrderOfWork) -> FinishDate:
    """The first date of the last milestone."""
    at = found.forecast_of[found.ladder.reached[-1].milestone.name].dates[0]
    assert at is not None
    return at


def test_a_logged_session_moves_the_ladder_and_the_dates(ferry: Path) -> None:
    before = order(ferry)
    assert before.week_alone == 60
    logged(
        ferry,
        EntryKind.SESSION,
        figures={"rifleman": 4},
        from_stage="in packet",
        to_stage="painted",
        minutes=120,
        on=ON,
    )
    after = order(ferry)
    rates = {rate.stage: rate.minutes for rate in after.worked.learned.rates}
    assert rates == {
        "assembled": Fraction(15, 2),
        "undercoated": Fraction(15, 2),
        "painted": Fraction(15),
    }
    assert after.ladder.minutes == 2 * sum(rates.values()) + 40
    assert after.ladder.minutes < before.ladder.minutes
    assert half_chance(after).day < half_chance(before).day
    assert after.week_alone is None
    assert after.dates.forecast is not None
    assert after.dates.forecast.begins == ON + datetime.timedelta(days=1)


def test_the_dates_are_those_of_all_work_up_to_each_milestone() -> None:
    found = order(EXAMPLES / "marenz")
    assert found.dates.forecast is not None
    goals = [(each.goal.name, each.goal.minutes) for each in found.dates.forecast.goals]
    assert goals == [
        ("smallest legal force", Fraction(1140)),
        ("whole battalion", Fraction(2070)),
    ]
    assert all(not each.goal.waiting for each in found.dates.forecast.goals)


def keeping(today: datetime.date) -> Keeping:
    return Keeping(today=today, written=NOW, id=str(uuid4()))


def test_dates_are_kept_once_a_day_and_judged_when_past(ferry: Path) -> None:
    def answered(today: datetime.date) -> BenchAnswer:
        return order_of_work(ferry, today=today, choice=Choice())

    first = keep_dates(ferry, answered(ON), keeping=keeping(ON))
    assert (first.outcome, first.logged.entry is None) == (Outcome.WRITTEN, False)
    again = keep_dates(ferry, answered(ON), keeping=keeping(ON))
    assert (again.outcome, again.logged.entry) == (Outcome.KEPT_ALREADY, None)
    late = answered(datetime.date(2026, 12, 1)).order
    assert late is not None
    assert (late.calibration.met, late.calibration.missed) == (0, 2)


def test_an_entry_that_the_journal_refuses_is_no_kept_forecast(ferry: Path) -> None:
    answer = order_of_work(ferry, today=ON, choice=Choice())
    same = keeping(ON)
    logged(ferry, EntryKind.NOTED, note="taken", id=same.id)
    refused = keep_dates(ferry, answer, keeping=same)
    assert (refused.outcome, refused.logged.entry) == (Outcome.REFUSED, None)


def test_without_a_week_there_are_no_dates_to_keep(tmp_path: Path) -> None:
    bare = written(tmp_path / "bare", FERRY_GUARD + MINUTES.replace(", week: 1 h", ""))
    answer = order_of_work(bare, today=ON, choice=Choice())
    assert answer.order is not None
    assert (answer.order.forecast_of, answer.order.week_alone) == ({}, None)
    assert [found.code for found in answer.checked.findings] == ["week-unsaid"]
    assert keep_dates(bare, answer, keeping=keeping(ON)).outcome is Outcome.NO_DATES
