"""Dates and windows."""

import datetime

import pytest

from paradestate.core.span import ALWAYS, DateSpan, Hold, Window, day, month, year

FIRST = datetime.date(1943, 7, 10)


@pytest.mark.parametrize(
    ("span", "text"),
    [
        (year(1943), "1943"),
        (month(1944, 2), "1944-02"),
        (day(FIRST), "1943-07-10"),
        (DateSpan(first=FIRST, last=datetime.date(1943, 8, 1)), "1943-07-10 to 1943-08-01"),
    ],
)
def test_a_span_is_written_as_short_as_it_can_be(span: DateSpan, text: str) -> None:
    assert str(span) == text


def test_a_month_ends_on_its_last_day() -> None:
    assert month(1944, 2).last == datetime.date(1944, 2, 29)


@pytest.mark.parametrize(
    ("window", "hold"),
    [
        (ALWAYS, Hold.IN),
        (Window(begins=month(1942, 6)), Hold.IN),
        (Window(begins=month(1943, 6)), Hold.PARTLY),
        (Window(ends=month(1943, 6)), Hold.PARTLY),
        (Window(begins=year(1944)), Hold.OUT),
        (Window(ends=year(1942)), Hold.OUT),
        (Window(begins=year(1943), ends=year(1943)), Hold.IN),
    ],
)
def test_a_year_in_a_window(window: Window, hold: Hold) -> None:
    assert window.holds(year(1943)) is hold


def test_both_ends_of_a_window_are_in() -> None:
    window = Window(begins=month(1942, 6), ends=month(1943, 5))
    assert window.holds(day(datetime.date(1942, 6, 1))) is Hold.IN
    assert window.holds(day(datetime.date(1943, 5, 31))) is Hold.IN
    assert window.holds(day(datetime.date(1943, 6, 1))) is Hold.OUT
    assert not window.is_open
    assert ALWAYS.is_open
