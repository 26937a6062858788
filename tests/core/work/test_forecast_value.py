"""Forecasts as values."""

import datetime
from fractions import Fraction

import pytest

from paradestate.core.certainty import Exact
from paradestate.core.span import day
from paradestate.core.work.forecast_value import (
    HALF,
    Ahead,
    AwaitedParcel,
    FinishDate,
    Goal,
    GoalForecast,
    finish_date,
    first_reached,
)

MONDAY = datetime.date(2026, 3, 2)
BY_DAY = tuple(Fraction(each, 4) for each in (0, 0, 0, 0, 0, 0, 0, 1, 3))


def found(minutes: int = 60) -> GoalForecast:
    return GoalForecast(
        goal=Goal(name="small force", minutes=Fraction(minutes)),
        begins=MONDAY,
        by_day=BY_DAY,
        certainty=Exact(),
        dates=(None, None, None),
    )


def test_a_parcel_surely_comes() -> None:
    with pytest.raises(ValueError, match="add up to 9/10"):
        AwaitedParcel(name="North", arrivals={MONDAY: Fraction(9, 10)})


def test_a_week_to_come_has_as_many_free_days_as_are_not_away() -> None:
    ahead = Ahead(begins=MONDAY, away=(day(datetime.date(2026, 3, 11)),))
    assert [ahead.free_days(week) for week in (1, 2, 3)] == [7, 6, 7]


def test_what_is_ready_for_a_game_was_finished_the_evening_before() -> None:
    assert found().before(MONDAY - datetime.timedelta(days=1)) == 0
    assert found().before(datetime.date(2026, 3, 8)) == 0
    assert found().before(datetime.date(2026, 3, 9)) == Fraction(1, 4)
    assert found().before(datetime.date(2027, 1, 1)) == Fraction(3, 4)


def test_a_week_is_over_on_its_last_day() -> None:
    assert [found().by_week(week) for week in (0, 1, 2)] == [0, Fraction(1, 4), Fraction(3, 4)]


def test_nothing_left_is_reached() -> None:
    assert found(0).is_reached
    assert not found().is_reached


def test_the_first_day_with_a_chance_is_the_one() -> None:
    assert first_reached(BY_DAY, Fraction(1, 4)) == 7
    assert first_reached(BY_DAY, Fraction(1, 2)) == 8
    assert first_reached(BY_DAY, Fraction(4, 5)) is None


def test_a_date_is_the_last_of_its_days() -> None:
    assert finish_date(8, chance=HALF, begins=MONDAY) == FinishDate(
        chance=HALF,
        day=datetime.date(2026, 3, 9),
        week=2,
        earliest=datetime.date(2026, 3, 9),
        latest=datetime.date(2026, 3, 9),
    )
    sampled = finish_date(7, chance=HALF, begins=MONDAY, between=(6, None))
    assert (sampled.week, sampled.earliest, sampled.latest) == (1, datetime.date(2026, 3, 7), None)
