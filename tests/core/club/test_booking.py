"""Hours of a day."""

import datetime
from dataclasses import replace

from paradestate.core.club.booking import HOUR, full_hours
from tests.core.club.bookings import BOX_THREE, DAY, hours, lent


def test_a_game_may_begin_as_another_ends() -> None:
    assert not hours(18, 20).overlaps(hours(20, 22))
    assert hours(18, 21).overlaps(hours(20, 22))
    assert not hours(20, 22).overlaps(hours(20, 22, on=datetime.date(2026, 12, 4)))


def test_hours_as_they_are_written_and_moved() -> None:
    assert str(hours(9, 24)) == "2026-12-03 09:00-24:00"
    assert hours(20, 22).moved_to(18 * 60) == hours(18, 20)


def test_full_hours_are_around_all_that_is_played() -> None:
    early = replace(hours(9, 11), start=9 * HOUR + 15)
    late = replace(hours(20, 22), end=22 * HOUR + 1)
    assert full_hours([late, early]) == (9 * HOUR, 23 * HOUR)
    assert full_hours([hours(20, 24)]) == (20 * HOUR, 24 * HOUR)
    assert full_hours([]) == (0, 0)


def test_a_box_goes_from_keeper_to_keeper_on_its_days() -> None:
    handed = replace(
        BOX_THREE,
        handed_over={DAY.replace(day=20): "treasurer", DAY.replace(day=10): "steward"},
    )
    days = [DAY.replace(day=each) for each in (9, 10, 19, 20, 31)]
    assert [handed.keeper_on(day) for day in days] == [
        "secretary",
        "steward",
        "steward",
        "treasurer",
        "treasurer",
    ]


def test_a_loan_is_away_from_its_first_day_to_its_last_and_late_after_it() -> None:
    ends = lent("box 3", since=2, until=4)
    away = [ends.is_away(DAY.replace(day=each)) for each in (1, 2, 4, 5)]
    assert away == [False, True, True, False]
    assert [ends.is_late(DAY.replace(day=each)) for each in (4, 5)] == [False, True]
    open_ended = lent("box 3", since=2)
    assert open_ended.is_away(DAY.replace(day=31))
    assert not open_ended.is_late(DAY.replace(day=31))
