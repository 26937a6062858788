"""How much work is done until something is wanted."""

import datetime
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.span import DateSpan
from paradestate.core.work.due_work import minutes_until, pace_of
from paradestate.core.work.habit import Habit

BEGINS = datetime.date(2026, 12, 1)
DAY = datetime.timedelta(days=1)


def test_the_log_says_the_pace_and_else_the_owner() -> None:
    usual = Fraction(240)
    assert pace_of(Habit(weeks=(120, 0, 60), usual=usual)) == 60
    assert pace_of(Habit(weeks=(0, 0), usual=usual)) == usual
    assert pace_of(Habit()) is None


def test_what_is_wanted_in_a_fortnight_has_two_weeks_of_work_before_it() -> None:
    day = BEGINS + 14 * DAY
    pace = Fraction(240)
    assert minutes_until(day, begins=BEGINS, away=(), pace=pace) == 480
    week = DateSpan(first=BEGINS + DAY, last=BEGINS + 7 * DAY)
    assert minutes_until(day, begins=BEGINS, away=(week,), pace=pace) == 240


def test_what_is_overdue_or_has_no_pace_is_wanted_at_once() -> None:
    assert minutes_until(BEGINS, begins=BEGINS, away=(), pace=Fraction(9)) == 0
    assert minutes_until(BEGINS + 14 * DAY, begins=BEGINS, away=(), pace=None) == 0


@given(
    st.lists(st.tuples(st.integers(-3, 12), st.integers(0, 5)), max_size=3),
    st.integers(1, 10),
)
def test_days_away_are_left_out_each_once(spans: list[tuple[int, int]], days: int) -> None:
    away = [
        DateSpan(first=BEGINS + first * DAY, last=BEGINS + (first + more) * DAY)
        for first, more in spans
    ]
    free = sum(
        not any(each.first <= BEGINS + at * DAY <= each.last for each in away) for at in range(days)
    )
    until = minutes_until(BEGINS + days * DAY, begins=BEGINS, away=away, pace=Fraction(7))
    assert until == free
