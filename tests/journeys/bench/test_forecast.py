"""When the work at the bench will be done, from a folder and its journal."""

import datetime
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from uuid import uuid4

import pytest

from paradestate.chance.forecast.drawn_finish import Lottery
from paradestate.core.force import Force
from paradestate.core.journal_entry import EntryKind
from paradestate.core.work.forecast_value import AwaitedParcel, Goal
from paradestate.core.work.kept_forecast import calibration
from paradestate.journeys.bench.forecast import (
    Dates,
    Keeping,
    calendar,
    dates,
    keep,
    kept_today,
    work_logged,
)
from paradestate.journeys.check import checked
from paradestate.journeys.history import history
from tests.journeys.conftest import FERRY_GUARD, TOWN_WATCH, written
from tests.journeys.logging_to import NOW, TODAY, logged

BENCH = """\
bench:
  week: 4 h
  minutes: {foot: {assembled: 3, painted: 15}}
aim:
  deadline: 2026-05
  game nights: [every 2 weeks from 2026-03-12 until 2026-06-30]
"""
GOALS = (
    Goal(name="one section", minutes=Fraction(120)),
    Goal(name="all", minutes=Fraction(960)),
)
LOTTERY = Lottery(draws=400, seed=1)


@pytest.fixture
def bench(tmp_path: Path) -> Path:
    return written(tmp_path / "guard", FERRY_GUARD + BENCH)


def force_of(folder: Path) -> Force:
    return checked(folder, today=TODAY).force


def found(folder: Path, *, today: datetime.date = TODAY, goals: tuple[Goal, ...] = GOALS) -> Dates:
    force = force_of(folder)
    worked = work_logged(folder, force, today=today, patterns={})
    return dates(force, worked, today=today, goals=goals, lottery=LOTTERY)


def evenings(folder: Path, *, number: int) -> None:
    """So many evenings of two hours, a week between two of them."""
    for week in range(number):
        on = TODAY - datetime.timedelta(days=7 * week + 1)
        logged(folder, EntryKind.SESSION, minutes=120, on=on)


def test_without_a_log_the_dates_are_the_owners_word(bench: Path) -> None:
    answer = found(bench)
    assert answer.forecast is not None
    assert [each.goal.name for each in answer.forecast.goals] == ["one section", "all"]
    assert answer.forecast.evidence.logged == 0
    assert answer.findings == ()
    assert answer.forecast.evidence.is_thin
    assert answer.nights[:2] == (datetime.date(2026, 3, 12), datetime.date(2026, 3, 26))


def test_sessions_change_the_dates_and_the_minutes(bench: Path) -> None:
    before = found(bench).forecast
    evenings(bench, number=12)
    logged(
        bench,
        EntryKind.SESSION,
        figures={"rifleman": 2},
        to_stage="assembled",
        minutes=240,
        on=TODAY - datetime.timedelta(days=85),
    )
    answer = found(bench)
    assert before is not None
    assert answer.forecast is not None
    assert answer.findings == ()
    assert (answer.forecast.evidence.sessions, answer.forecast.evidence.weeks) == (13, 12)
    now, then = answer.forecast.goals[1].dates[1], before.goals[1].dates[1]
    assert now is not None
    assert then is not None
    assert now.day > then.day
    force = force_of(bench)
    (rate,) = work_logged(bench, force, today=TODAY, patterns={}).learned.rates
    assert (rate.what, rate.stage, rate.given, rate.logged) == (
        "foot",
        "assembled",
        Fraction(3),
        Fraction(1, 4),
    )
    assert rate.minutes == (120 + 3 * 3) / Fraction(4)


def test_what_is_struck_out_or_logged_for_a_later_day_does_not_count(bench: Path) -> None:
    entry = logged(bench, EntryKind.SESSION, minutes=90).entry
    assert entry is not None
    logged(bench, EntryKind.STRUCK_OUT, struck_out=entry.id, note="slip")
    logged(bench, EntryKind.SESSION, minutes=60)
    force = force_of(bench)
    assert work_logged(bench, force, today=TODAY, patterns={}).log.minutes == {TODAY: 60}
    yesterday = TODAY - datetime.timedelta(days=1)
    assert work_logged(bench, force, today=yesterday, patterns={}).log.minutes == {}


def test_of_a_collection_only_the_work_on_its_own_counts(tmp_path: Path) -> None:
    club = tmp_path / "club"
    guard = written(club / "guard", FERRY_GUARD + BENCH)
    watch = written(club / "watch", TOWN_WATCH)
    logged(club, EntryKind.NOTED, note="the club's boxes")
    logged(guard, EntryKind.SESSION, minutes=60)
    logged(watch, EntryKind.SESSION, minutes=30)
    assert work_logged(guard, force_of(guard), today=TODAY, patterns={}).log.minutes == {TODAY: 60}


def test_where_nothing_says_how_much_is_done_there_is_no_date(guard: Path) -> None:
    answer = found(guard)
    assert (answer.forecast, [each.code for each in answer.findings]) == (None, ["week-unsaid"])
    done = found(guard, goals=(Goal(name="all", minutes=Fraction(0)),))
    assert done.forecast is not None
    assert done.forecast.goals[0].is_reached
    assert done.findings == ()


def test_a_deadline_that_is_past_and_a_parcel_after_it_are_told(bench: Path) -> None:
    june = datetime.date(2026, 6, 1)
    assert [each.code for each in found(bench, today=june).findings] == ["deadline-past"]
    force = force_of(bench)
    parcel = AwaitedParcel(name="North", arrivals={june: Fraction(1)})
    goals = [replace(GOALS[1], waiting={"North": Fraction(60)})]
    late = dates(
        force,
        work_logged(bench, force, today=TODAY, patterns={}),
        today=TODAY,
        goals=goals,
        parcels=[parcel],
        lottery=LOTTERY,
    )
    assert [each.code for each in late.findings] == ["parcel-after-deadline"]
    assert late.forecast is not None
    half = late.forecast.goals[0].dates[0]
    assert half is not None
    assert half.day > june


def keeping(today: datetime.date) -> Keeping:
    return Keeping(today=today, written=NOW, id=str(uuid4()))


def test_a_forecast_that_is_kept_is_judged_when_its_date_is_past(bench: Path) -> None:
    force = force_of(bench)
    kept = found(bench).forecast
    assert kept is not None
    assert not kept_today(work_logged(bench, force, today=TODAY, patterns={}), today=TODAY)
    answer = keep(bench, kept, keeping=keeping(TODAY))
    assert answer.entry is not None
    assert [each.milestone for each in answer.entry.forecasts] == ["one section", "all"]
    assert answer.entry.forecasts[1].four_in_five == kept.goals[1].dates[1].day  # type: ignore[union-attr]
    worked = work_logged(bench, force, today=TODAY, patterns={})
    assert kept_today(worked, today=TODAY)
    later = TODAY + datetime.timedelta(days=10)
    done = found(bench, today=later, goals=(replace(GOALS[0], minutes=Fraction(0)), GOALS[1]))
    assert done.forecast is not None
    assert keep(bench, done.forecast, keeping=keeping(later)).entry is not None
    worked = work_logged(bench, force, today=later, patterns={})
    out = calibration(worked.kept, today=datetime.date(2026, 12, 1))
    assert (out.met, out.missed, out.milestones) == (1, 2, 2)


def test_a_kept_forecast_is_an_entry_like_any_other(bench: Path) -> None:
    kept = found(bench).forecast
    assert kept is not None
    entry = keep(bench, kept, keeping=keeping(TODAY)).entry
    assert entry is not None
    logged(bench, EntryKind.STRUCK_OUT, struck_out=entry.id, note="wrong minutes")
    assert work_logged(bench, force_of(bench), today=TODAY, patterns={}).kept == ()
    assert history(bench, today=TODAY, last=5).number == 2


def test_without_a_milestone_nothing_is_kept(bench: Path) -> None:
    none = found(bench, goals=()).forecast
    assert none is not None
    answer = keep(bench, none, keeping=keeping(TODAY))
    assert answer.entry is None
    assert [each.code for each in answer.findings] == ["log-incomplete"]


def test_the_calendar_has_milestones_and_game_nights(bench: Path, tmp_path: Path) -> None:
    text = calendar(found(bench), force="Ferry guard", made=NOW)
    assert text.count("SUMMARY:One section: half chance\r\n") == 1
    assert text.count("SUMMARY:All: four in five\r\n") == 1
    assert text.count("SUMMARY:Game night: Ferry guard\r\n") == 8
    bare = written(tmp_path / "bare", FERRY_GUARD)
    assert calendar(found(bare), force="Ferry guard", made=NOW).count("BEGIN:VEVENT") == 0
