"""How much work is done until a day on which something is wanted, at the usual pace. In minutes."""

import datetime
from collections.abc import Sequence
from fractions import Fraction

from paradestate.core.span import DateSpan
from paradestate.core.work.bench_time import BenchTime
from paradestate.core.work.habit import Habit

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
    if pace is None:
        return NONE_DONE
    time = BenchTime(begins=begins, week=pace, away=tuple(away))
    return time.a_day * time.days_before(day)
