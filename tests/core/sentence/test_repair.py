"""Repairs in sentences."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.core.sentence.repair import repair_sentences, wanted_words
from paradestate.core.sentence.work import batch_details, certainty_words
from paradestate.core.work.ladder import Ladder, Reached
from paradestate.core.work.order_of_work import ladder
from tests.core.work.test_calendar_days import found
from tests.core.work.works import MINUTES, in_repair, sound_load

DAY = datetime.date(2026, 12, 10)
TODAY = DAY - datetime.timedelta(days=7)
SECTION = "3 Company / 2 Section"
HEAD = f"Repairs for 10 December 2026: {SECTION} (bayonet snapped); "


def made(*, due: Fraction | int) -> Ladder:
    repairs = (in_repair(SECTION, wanted=DAY, note="bayonet snapped"),)
    return ladder(sound_load(MINUTES, repairs=repairs), {DAY: Fraction(due)})


def said(*, due: Fraction | int, today: datetime.date = TODAY, by: int | None = None) -> str:
    forecast = found("repairs for 10 December 2026", minutes=20, days=by)
    forecasts = {} if by is None else {forecast.goal.name: forecast}
    (sentence,) = repair_sentences(made(due=due).repairs, forecasts=forecasts, today=today)
    return sentence.removeprefix(HEAD)


def test_a_repair_is_in_time_or_it_is_said_to_be_late() -> None:
    assert said(due=60) == "done after 20 min, of 1 h before it at your pace."
    assert said(due=60, by=7) == (
        "done after 20 min, of 1 h before it at your pace; four in five by 8 March 2026."
    )
    assert said(due=15) == (
        "LATE by 5 min of work: done after 20 min, of 15 min before it at your pace."
    )
    assert said(due=Fraction(31, 2)).startswith(
        "LATE by 5 min of work: done after 20 min, of 15 min"
    )
    assert said(due=0) == "done after 20 min."
    assert said(due=0, today=DAY) == "OVERDUE, done after 20 min."


def test_what_takes_no_minutes_and_what_is_no_repair() -> None:
    (repair,) = made(due=60).repairs
    idle = replace(repair, ends=Fraction(0))
    (sentence,) = repair_sentences([idle], forecasts={}, today=TODAY)
    assert "no minutes left, of 1 h before it" in sentence
    force: Reached = made(due=60).reached[0]
    assert list(repair_sentences([force], forecasts={}, today=TODAY)) == []


def test_its_batch_says_so_and_how_sure_the_order_is() -> None:
    first, other, *_ = made(due=60).rungs
    words = f"in repair, wanted on 10 December 2026: {SECTION} (bayonet snapped)"
    assert list(wanted_words(first)) == [words]
    assert words in list(batch_details(first))
    assert list(wanted_words(other)) == []
    assert certainty_words(made(due=60)) == (
        "Exact: no order of work no later for the repairs has less weighted waiting for these "
        "milestones."
    )
    doubtful = replace(made(due=60), least=Fraction(0))
    assert certainty_words(doubtful) == (
        "Not proven: another order may have its repairs less late."
    )
    plain = in_repair(SECTION, wanted=DAY)
    (repair,) = ladder(sound_load(MINUTES, repairs=(plain,))).repairs
    (sentence,) = repair_sentences([repair], forecasts={}, today=TODAY)
    assert sentence.startswith(f"Repairs for 10 December 2026: {SECTION}; ")
