"""How much work an owner does in a week: what was logged, and what is assumed beside it.

A past week is seven days in a row, counted back from the day before the forecast begins, so that
no week is there in part; the days before the oldest whole one are left out. Weeks in which nothing
was done count. No week is looked at that is more than ten years ago, so that a year that was
mistyped makes no thousands of idle weeks. Weeks with a day away are left out, since days away to
come are reckoned apart.

Beside the log stands the owner's own `week`, as an assumption: at one of five levels, all equally
likely and the same for all weeks, and on each week one of five shares of that. Minutes are whole.
"""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.money import half_up
from paradestate.core.span import DateSpan

DAYS = 7
"""Days of a week."""

MOST_WEEKS = 520
"""Weeks of the log that are looked at, counted back from the newest."""

LEVELS = (Fraction(1, 2), Fraction(3, 4), Fraction(1), Fraction(5, 4), Fraction(3, 2))
"""How far the owner's `week` may be off (common practice, no source)."""

SHARES = (Fraction(0), Fraction(1, 2), Fraction(1), Fraction(3, 2), Fraction(2))
"""How far one week may differ from the usual one (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Habit:
    """What is known of the weeks of an owner."""

    weeks: tuple[int, ...] = ()
    """Minutes of past weeks, oldest first."""
    usual: Fraction | None = None
    """Minutes of a week by the owner's own word."""
    sessions: int = 0
    """Sessions that were logged; several of a day are several."""
    left_out: int = 0
    """Past weeks that don't count, because the owner was away on a day of them."""
    by_day: tuple[int, ...] = (0,) * DAYS
    """Minutes of those weeks by the day of the week, counted from the first of a week to come."""

    @property
    def assumed(self) -> tuple[tuple[int, ...], ...]:
        """For each level the minutes of a week, all equally likely; nothing without `week`."""
        if self.usual is None:
            return ()
        return tuple(
            tuple(half_up(self.usual * level * each) for each in SHARES) for level in LEVELS
        )

    @property
    def is_idle(self) -> bool:
        """Whether no week brings anything, as far as is known."""
        return not any(self.weeks) and not self.usual


def first_day(minutes: Mapping[datetime.date, int], *, today: datetime.date) -> datetime.date:
    """The first day of the weeks to come: today, until a session of today is logged."""
    return today + datetime.timedelta(days=1) if minutes.get(today) else today


def habit_of(
    minutes: Mapping[datetime.date, int],
    *,
    since: datetime.date | None,
    begins: datetime.date,
    away: Sequence[DateSpan] = (),
    usual: Fraction | None = None,
    sessions: int = 0,
) -> Habit:
    """The weeks between the first day of a log and the beginning of a forecast.

    `since` is the day from which on sessions were logged; None where none was.
    """
    first = begins if since is None else min(since, begins)
    if (begins - first).days > DAYS * MOST_WEEKS:
        oldest = begins - datetime.timedelta(days=DAYS * MOST_WEEKS)
        first = min((on for on in minutes if oldest <= on < begins), default=begins)
    number = (begins - first).days // DAYS
    every = [_days(begins - datetime.timedelta(days=DAYS * week)) for week in range(number, 0, -1)]
    whole = [days for days in every if free_days(days, away=away) == DAYS]
    spent = [[minutes.get(day, 0) for day in days] for days in whole]
    return Habit(
        weeks=tuple(sum(days) for days in spent),
        usual=usual,
        sessions=sessions,
        left_out=number - len(whole),
        by_day=tuple(sum(days[at] for days in spent) for at in range(DAYS)),
    )


def days_of_week(begins: datetime.date, week: int) -> tuple[datetime.date, ...]:
    """The days of a week to come; the first is week 1. Days past the calendar's end are none."""
    return _days(later(begins, DAYS * (week - 1)))


def week_of(begins: datetime.date, day: datetime.date) -> int:
    """The week to come in which a day lies; nought where it is before all of them."""
    return max(0, (day - begins).days // DAYS + 1)


def free_days(days: Sequence[datetime.date], *, away: Sequence[DateSpan]) -> int:
    """How many of some days the owner is there."""
    return sum(not any(span.first <= day <= span.last for span in away) for day in days)


def _days(first: datetime.date) -> tuple[datetime.date, ...]:
    return tuple(_on(first))


def _on(first: datetime.date) -> Iterator[datetime.date]:
    for number in range(DAYS):
        if first.toordinal() + number <= datetime.date.max.toordinal():
            yield first + datetime.timedelta(days=number)


def later(day: datetime.date, days: int) -> datetime.date:
    """So many days later, or the last day that the calendar has."""
    return datetime.date.fromordinal(min(day.toordinal() + days, datetime.date.max.toordinal()))
