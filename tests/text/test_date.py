"""Dates and durations from text."""

import datetime
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.span import DateSpan, day, month, year
from paradestate.text.date import (
    duration_text,
    read_date,
    read_days,
    read_duration,
    read_single_day,
)
from paradestate.text.slip import Slip
from tests.text.slips import code_of, value_of

DAY = datetime.date(1943, 7, 10)


@pytest.mark.parametrize(
    ("text", "span"), [("1943", year(1943)), ("1943-07", month(1943, 7)), ("1943-07-10", day(DAY))]
)
def test_a_date_is_the_span_of_its_days(text: str, span: DateSpan) -> None:
    assert value_of(read_date(text)) == span


@pytest.mark.parametrize(
    "text",
    [
        "43",
        "1943-7",
        "1943-13",
        "1943-02-30",
        "0000",
        "July 1943",
        "31/31/1943",
        "\uff11\uff19\uff14\uff13",
    ],
)
def test_what_is_no_date_is_refused(text: str) -> None:
    assert code_of(read_date(text)) == "not-a-date"


@pytest.mark.parametrize(
    ("text", "message", "hint"),
    [
        ("03/04/2026", "03/04/2026: 3 April or 4 March?", "2026-04-03 or 2026-03-04"),
        ("13.4.2026", "13.4.2026 isn't written as a date here.", "2026-04-13"),
        ("5-5-2026", "5-5-2026 isn't written as a date here.", "2026-05-05"),
    ],
)
def test_a_date_in_figures_is_ambiguous(text: str, message: str, hint: str) -> None:
    read = read_date(text)
    assert isinstance(read, Slip)
    assert (read.code, read.message, read.hint) == ("date-ambiguous", message, f"Write {hint}.")


def test_days_joined_by_to() -> None:
    read = value_of(read_days("2026-12-20 to 2027-01"))
    assert read == DateSpan(first=datetime.date(2026, 12, 20), last=datetime.date(2027, 1, 31))
    assert value_of(read_days("1943")) == year(1943)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("x to 1943", "not-a-date"),
        ("1943 to x", "not-a-date"),
        ("1944 to 1943", "window-backwards"),
    ],
)
def test_odd_days(text: str, code: str) -> None:
    assert code_of(read_days(text)) == code


DATES = st.dates(min_value=datetime.date(1, 1, 1))


@given(DATES, DATES)
def test_days_read_as_they_are_written(one: datetime.date, other: datetime.date) -> None:
    span = DateSpan(first=min(one, other), last=max(one, other))
    assert value_of(read_days(str(span))) == span


@pytest.mark.parametrize(("minutes", "text"), [(0, "0 min"), (90, "90 min"), (240, "4 h")])
def test_a_duration_is_written_in_whole_hours_or_in_minutes(minutes: int, text: str) -> None:
    assert duration_text(Fraction(minutes)) == text


@given(st.fractions(min_value=0, max_value=5000, max_denominator=60))
def test_a_duration_reads_as_it_is_written(minutes: Fraction) -> None:
    assert value_of(read_duration(duration_text(minutes))) == minutes


@pytest.mark.parametrize("text", ["4", "x h", "-1 h", "4 days", "100001 min"])
def test_odd_durations(text: str) -> None:
    assert code_of(read_duration(text)) == "not-a-duration"


def test_a_single_day_that_isnt_read_says_how_a_day_is_written() -> None:
    for text in ("2027-02-30", "2027-02", "soon"):
        slip = read_single_day(text)
        assert isinstance(slip, Slip)
        assert slip.hint == "Write year, month and day: 2026-12-03."
    either = read_single_day("03/12/2026")
    assert isinstance(either, Slip)
    assert either.code == "date-ambiguous"


def test_a_single_day_is_no_month_and_no_word() -> None:
    assert read_single_day("2026-12-03") == datetime.date(2026, 12, 3)
    month_of_it, word = read_single_day("2026-12"), read_single_day("soon")
    assert isinstance(month_of_it, Slip)
    assert isinstance(word, Slip)
    assert month_of_it.message == "2026-12 isn't a single day."
    assert (month_of_it.code, word.code) == ("not-a-date", "not-a-date")
