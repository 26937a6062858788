"""Dates and durations from text."""

import datetime
import re
from dataclasses import replace
from fractions import Fraction

from paradestate.core.outline import decimal_text
from paradestate.core.span import MONTH_NAMES, DateSpan, day, month, year
from paradestate.text.number import read_measure
from paradestate.text.slip import Slip

_ISO = re.compile(r"(\d{4})(?:-(\d{2})(?:-(\d{2}))?)?", re.ASCII)
_SLASHED = re.compile(r"(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})", re.ASCII)
_DURATION = re.compile(r"(.+?) ?(min|h)")
MOST_DAYS = 31
LONGEST = 100_000
"""Minutes or hours; no job is longer."""
HOURS_OF_A_WEEK = 168

_HINT = "Write the year, or year-month, or year-month-day: 1943, 1943-07, 1943-07-10."
_DAY_HINT = "Write year, month and day: 2026-12-03."


def read_date(text: str) -> DateSpan | Slip:
    """The days of an ISO 8601 date: a year, a month or a day."""
    found = _ISO.fullmatch(text)
    if found is None:
        return _ambiguous(text) or Slip(
            code="not-a-date", message=f"'{text}' isn't a date.", hint=_HINT
        )
    written_year, written_month, written_day = found.groups()
    try:
        if written_day is not None:
            return day(datetime.date.fromisoformat(text))
        if written_month is not None:
            return month(int(written_year), int(written_month))
        return year(int(written_year))
    except ValueError:  # such as 1943-13 or 1943-02-30
        return Slip(code="not-a-date", message=f"There is no day {text}.", hint=_HINT)


def read_single_day(text: str) -> datetime.date | Slip:
    """A single day of the calendar: `2026-12-03`."""
    read = read_date(text)
    if isinstance(read, Slip):
        return replace(read, hint=_DAY_HINT) if read.code == "not-a-date" else read
    if read.first != read.last:
        return Slip(code="not-a-date", message=f"{text} isn't a single day.", hint=_DAY_HINT)
    return read.first


def _ambiguous(text: str) -> Slip | None:
    """The slip for a date in figures whose order of day and month nobody can know."""
    found = _SLASHED.fullmatch(text)
    if found is None:
        return None
    first, second, written_year = (int(part) for part in found.groups())
    readings = [
        (number_of_day, number_of_month)
        for number_of_day, number_of_month in dict.fromkeys(((first, second), (second, first)))
        if 1 <= number_of_month <= len(MONTH_NAMES) and 1 <= number_of_day <= MOST_DAYS
    ]
    if not readings:
        return None
    spoken = " or ".join(f"{days} {MONTH_NAMES[months - 1]}" for days, months in readings)
    written = " or ".join(
        f"{written_year:04d}-{months:02d}-{days:02d}" for days, months in readings
    )
    doubt = f"{text}: {spoken}?" if len(readings) > 1 else f"{text} isn't written as a date here."
    return Slip(code="date-ambiguous", message=doubt, hint=f"Write {written}.")


def read_days(text: str) -> DateSpan | Slip:
    """A date, or two with `to` between them: `2026-12-20 to 2027-01-05`."""
    first_text, to, last_text = text.partition(" to ")
    first = read_date(first_text)
    last = read_date(last_text) if to else first
    if isinstance(first, Slip):
        return first
    if isinstance(last, Slip):
        return last
    if last.last < first.first:
        return Slip(
            code="window-backwards",
            message=f"{text} ends before it begins.",
            hint=f"Did you mean {last_text} to {first_text}?",
        )
    return DateSpan(first=first.first, last=last.last)


def read_duration(text: str) -> Fraction | Slip:
    """Minutes from `20 min` or `4 h`."""
    found = _DURATION.fullmatch(text)
    number = read_measure(found.group(1)) if found else None
    if found is None or not isinstance(number, Fraction) or not 0 <= number <= LONGEST:
        return Slip(
            code="not-a-duration",
            message=f"'{text}' isn't a length of time.",
            hint="Write minutes or hours: 20 min, 4 h.",
        )
    return number * (60 if found.group(2) == "h" else 1)


def read_week(text: str) -> Fraction | Slip:
    """Minutes of a week that are spent on something: above nought, and no more than it has."""
    minutes = read_duration(text)
    if isinstance(minutes, Slip):
        return minutes
    if not minutes:
        return Slip(
            code="not-above-nought",
            message=f"{text} isn't above nought.",
            hint="Write how long you usually work in a week, or take the line out.",
        )
    if minutes > HOURS_OF_A_WEEK * 60:
        return Slip(
            code="week-too-long",
            message=f"{text} is more than a week has.",
            hint=f"A week has {HOURS_OF_A_WEEK} h; write how many of them you usually work: 4 h.",
        )
    return minutes


def duration_text(minutes: Fraction) -> str:
    """A length of time as the owner writes it."""
    if minutes and (minutes / 60).denominator == 1:
        return f"{decimal_text(minutes / 60)} h"
    return f"{decimal_text(minutes)} min"
