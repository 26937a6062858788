"""How much work is done until a day on which something is wanted, at the usual pace. In minutes."""

import datetime
from collections.abc import Sequence
from fractions import Fraction

from paradestate.core.span import DateSpan
from paradestate.core.work.habit import DAYS, Habit

NONE_DONE = Fraction(0)


def pace_of(habit: Habit) -> Fraction | None:
    """Minutes of a week: the mean of the whole weeks logged, else the owner's own; None: unknown.

    Weeks in which nothing was done count as all others.
    """
    if any(habit.weeks):
        return Fraction(sum(habit.weeks), len(habit.weeks))
    return habit.usual


def minutes_until(
    day: datetime.date,
    *,
    begins: datetime.date,
    away: Sequence[DateSpan],
    pace: Fraction | None,
) -> Fraction:
    """Minutes of work up to the evening before a day, days away left out.

    Nought where the day is past, or no pace is known: what is wanted is then wanted at once.
    """
    days = (day - begins).days
    if days <= 0 or pace is None:
        return NONE_DONE
    absent = _days_away(away, span=DateSpan(first=begins, last=day - datetime.timedelta(days=1)))
    return pace * (days - absent) / DAYS


def _days_away(away: Sequence[DateSpan], *, span: DateSpan) -> int:
    """Days of a span on which the owner is away, each once."""
    absent, after = 0, span.first.toordinal()
    for each in sorted(away, key=lambda each: each.first):
        first = max(after, each.first.toordinal())
        last = min(span.last, each.last).toordinal()
        absent += max(0, last - first + 1)
        after = max(after, last + 1)
    return absent
