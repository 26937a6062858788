"""Dates as spans of days, and the windows in which things are in force.

A written date such as `1943` or `1943-07` is the span of all its days. Imports nothing of the
project.
"""

import datetime
from calendar import monthrange
from dataclasses import dataclass
from enum import Enum

MONTH_NAMES = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class DateSpan:
    """The days from `first` to `last`, both in."""

    first: datetime.date
    last: datetime.date

    def __str__(self) -> str:
        """ISO 8601, as short as it can be: `1943`, `1943-07`, `1943-07-10`, or two days joined."""
        first, last = self.first, self.last
        if first == last:
            return first.isoformat()
        if (first, last) == (datetime.date(first.year, 1, 1), datetime.date(first.year, 12, 31)):
            return f"{first.year:04d}"
        if self == month(first.year, first.month):
            return f"{first.year:04d}-{first.month:02d}"
        return f"{first.isoformat()} to {last.isoformat()}"


def year(number: int) -> DateSpan:
    """All days of a year."""
    return DateSpan(first=datetime.date(number, 1, 1), last=datetime.date(number, 12, 31))


def month(year_number: int, month_number: int) -> DateSpan:
    """All days of a month."""
    days = monthrange(year_number, month_number)[1]
    return DateSpan(
        first=datetime.date(year_number, month_number, 1),
        last=datetime.date(year_number, month_number, days),
    )


def day(date: datetime.date) -> DateSpan:
    """A single day."""
    return DateSpan(first=date, last=date)


class Hold(Enum):
    """How a chosen span lies to a window."""

    IN = "in force on every day of the span"
    OUT = "in force on no day of the span"
    PARTLY = "in force on some days only"


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """When a part or entry is in force: from the first day of one date until the last of another.

    A side left out is open. Both ends are in.
    """

    begins: DateSpan | None = None
    ends: DateSpan | None = None

    @property
    def is_open(self) -> bool:
        """Whether it is in force on every day there is."""
        return self.begins is None and self.ends is None

    @property
    def first(self) -> datetime.date:
        """The first day in force."""
        return self.begins.first if self.begins else datetime.date.min

    @property
    def last(self) -> datetime.date:
        """The last day in force."""
        return self.ends.last if self.ends else datetime.date.max

    def holds(self, span: DateSpan) -> Hold:
        """How `span` lies to this window."""
        if self.first <= span.first and span.last <= self.last:
            return Hold.IN
        if span.last < self.first or self.last < span.first:
            return Hold.OUT
        return Hold.PARTLY


ALWAYS = Window()
