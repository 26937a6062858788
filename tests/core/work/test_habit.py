"""How much work an owner does in a week."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.core.span import DateSpan, day
from paradestate.core.work.habit import (
    Habit,
    days_of_week,
    first_day,
    free_days,
    habit_of,
    later,
    week_of,
)

MONDAY = datetime.date(2026, 3, 2)


def ago(days: int) -> datetime.date:
    return MONDAY - datetime.timedelta(days=days)


def test_today_is_a_day_to_come_until_a_session_of_it_is_logged() -> None:
    assert first_day({ago(1): 60}, today=MONDAY) == MONDAY
    assert first_day({MONDAY: 60}, today=MONDAY) == datetime.date(2026, 3, 3)


def test_weeks_are_counted_back_and_those_with_nothing_done_are_among_them() -> None:
    minutes = {ago(22): 500, ago(21): 10, ago(15): 20, ago(7): 40, ago(1): 80}
    habit = habit_of(minutes, since=ago(22), begins=MONDAY)
    assert habit == Habit(weeks=(30, 0, 120), by_day=(50, 0, 0, 0, 0, 0, 100))
    told = habit_of(minutes, since=ago(22), begins=MONDAY, sessions=9)
    assert told == replace(habit, sessions=9)


def test_the_days_before_the_oldest_whole_week_are_left_out() -> None:
    assert habit_of({ago(6): 60}, since=ago(6), begins=MONDAY).weeks == ()
    assert habit_of({ago(7): 60}, since=ago(7), begins=MONDAY).weeks == (60,)
    assert habit_of({}, since=None, begins=MONDAY).weeks == ()


def test_no_week_is_looked_at_that_is_more_than_ten_years_ago() -> None:
    slip = datetime.date.min
    minutes = {slip: 90, ago(21): 60, ago(7): 40}
    assert habit_of(minutes, since=slip, begins=MONDAY).weeks == (60, 0, 40)
    assert habit_of({slip: 90}, since=slip, begins=MONDAY).weeks == ()
    edge = {ago(7 * 520): 30}
    assert habit_of(edge, since=ago(7 * 520), begins=MONDAY).weeks == (30, *[0] * 519)
    assert habit_of(edge, since=ago(7 * 520 + 1), begins=MONDAY).weeks == (30, *[0] * 519)


def test_a_session_of_a_day_to_come_makes_no_week() -> None:
    assert habit_of({MONDAY: 60}, since=MONDAY, begins=ago(1)).weeks == ()


def test_a_week_with_a_day_away_does_not_count_and_is_told() -> None:
    minutes = {ago(21): 10, ago(14): 20, ago(7): 40}
    habit = habit_of(minutes, since=ago(21), begins=MONDAY, away=(day(ago(9)),))
    assert (habit.weeks, habit.left_out) == ((10, 40), 1)


def test_what_is_assumed_has_five_levels_of_five_shares_in_whole_minutes() -> None:
    assert Habit().assumed == ()
    assert Habit(usual=Fraction(240)).assumed == (
        (0, 60, 120, 180, 240),
        (0, 90, 180, 270, 360),
        (0, 120, 240, 360, 480),
        (0, 150, 300, 450, 600),
        (0, 180, 360, 540, 720),
    )
    assert Habit(usual=Fraction(1)).assumed[0] == (0, 0, 1, 1, 1)


def test_nobody_who_works_is_idle() -> None:
    assert Habit(weeks=(0, 0)).is_idle
    assert not Habit(weeks=(0, 1)).is_idle
    assert not Habit(usual=Fraction(240)).is_idle


def test_weeks_to_come_are_numbered_from_one() -> None:
    assert days_of_week(MONDAY, 1) == tuple(MONDAY + datetime.timedelta(n) for n in range(7))
    assert week_of(MONDAY, ago(1)) == 0
    assert week_of(MONDAY, MONDAY) == 1
    assert week_of(MONDAY, later(MONDAY, 6)) == 1
    assert week_of(MONDAY, later(MONDAY, 7)) == 2


def test_the_calendar_ends() -> None:
    end = datetime.date.max
    assert later(end, 3) == end
    assert days_of_week(end, 1) == (end,)


def test_days_away_are_not_free() -> None:
    away = (DateSpan(first=MONDAY, last=later(MONDAY, 1)), day(later(MONDAY, 8)))
    assert free_days(days_of_week(MONDAY, 1), away=away) == 5
    assert free_days(days_of_week(MONDAY, 2), away=away) == 6
    assert free_days(days_of_week(MONDAY, 3), away=away) == 7
