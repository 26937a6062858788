"""Slips that only a forecast can show: what is said, where, and the way out."""

import datetime
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.chance.forecast.drawn_finish import Lottery
from paradestate.core.finding import Finding
from paradestate.core.journal_entry import EntryKind
from paradestate.core.sentence.forecast import thin_sentence
from paradestate.core.work.forecast_value import AwaitedParcel, Evidence, Goal
from paradestate.journeys.bench.forecast import Dates, dates, work_logged
from paradestate.journeys.check import checked
from tests.journeys.conftest import FERRY_GUARD, written
from tests.journeys.logging_to import TODAY, logged
from tests.mistakes.test_mistakes import printed

GOAL = Goal(name="all", minutes=Fraction(600), waiting={"North": Fraction(60)})
LAST_LINE = FERRY_GUARD.count("\n") + 1


def findings_in(folder: Path, *, arrival: datetime.date) -> tuple[Finding, ...]:
    """What a forecast finds where a parcel comes on a day."""
    return forecast_of(folder, arrival=arrival).findings


def evidence_of(folder: Path) -> Evidence:
    """What a forecast rests on."""
    found = forecast_of(folder, arrival=TODAY).forecast
    assert found is not None
    return found.evidence


def forecast_of(folder: Path, *, arrival: datetime.date) -> Dates:
    """The dates of a force where a parcel comes on a day."""
    read = checked(folder, today=TODAY)
    assert read.findings == ()
    return dates(
        read.force,
        work_logged(folder, read.force, today=TODAY, patterns={}),
        today=TODAY,
        goals=[GOAL],
        parcels=[AwaitedParcel(name="North", arrivals={arrival: Fraction(1)})],
        lottery=Lottery(draws=100, seed=1),
    )


def guard(folder: Path, text: str, *, weeks: int) -> Path:
    """A force with two sessions, or one in each of so many weeks."""
    made = written(folder / "guard", FERRY_GUARD + text)
    days = [1, 2] if not weeks else [7 * week + 1 for week in range(weeks + 1)]
    for day in days:
        on = TODAY - datetime.timedelta(days=day)
        logged(made, EntryKind.SESSION, minutes=90, on=on)
    return made


LATE = (
    f"force.yaml:{LAST_LINE}:17: warn: The parcel from North comes on 2 May 2026 at the soonest; "
    "the deadline is 1 April 2026. [parcel-after-deadline]\n"
    "    What it brings isn't part of what is ready by then.\n"
    "    Look for its figures at a source that sends sooner, or play without them first.\n"
)
PAST = (
    f"force.yaml:{LAST_LINE}:17: warn: The deadline was 1 March 2026. [deadline-past]\n"
    "    Nothing can be ready by then; the dates are for the work as it stands.\n"
    "    Write a new `deadline` under `aim`, or take it out.\n"
)
CASES = {
    "34 lead time after the deadline": (
        "aim: {deadline: 2026-04-01}\n",
        datetime.date(2026, 5, 2),
        LATE,
        "aim: {deadline: 2026-05-02}\n",
    ),
    "36 deadline past": (
        "aim: {deadline: 2026-03-01}\n",
        TODAY,
        PAST,
        "aim: {deadline: 2026-05-01}\n",
    ),
}


@pytest.mark.parametrize("case", CASES.values(), ids=list(CASES))
def test_a_slip_is_said_with_a_way_out(
    case: tuple[str, datetime.date, str, str], tmp_path: Path
) -> None:
    slip, arrival, expected, mended = case
    wrong = guard(tmp_path / "wrong", slip, weeks=12)
    assert "".join(map(printed, findings_in(wrong, arrival=arrival))) == expected
    right = guard(tmp_path / "right", mended, weeks=12)
    assert findings_in(right, arrival=arrival) == ()


def test_37_a_forecast_from_two_sessions(tmp_path: Path) -> None:
    """That isn't a slip in the files, so it is said beside the dates and not of a place in them."""
    bench = "bench: {week: 1.5 h}\n"
    few = guard(tmp_path / "few", bench, weeks=0)
    assert findings_in(few, arrival=TODAY) == ()
    assert thin_sentence(evidence_of(few)) == (
        "So far they are a starting assumption: go on logging; a week in which nothing was done "
        "needs no entry."
    )
    many = guard(tmp_path / "many", bench, weeks=12)
    assert findings_in(many, arrival=TODAY) == ()
    assert thin_sentence(evidence_of(many)) == ""


def test_37_a_forecast_from_nothing(tmp_path: Path) -> None:
    bare = written(tmp_path / "bare", FERRY_GUARD)
    (found,) = findings_in(bare, arrival=TODAY)
    assert found.code == "week-unsaid"
    mended = written(tmp_path / "mended", FERRY_GUARD + "bench: {week: 4 h}\n")
    assert findings_in(mended, arrival=TODAY) == ()
