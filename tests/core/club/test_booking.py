"""Hours of a day."""

import datetime

from tests.core.club.bookings import hours


def test_a_game_may_begin_as_another_ends() -> None:
    assert not hours(18, 20).overlaps(hours(20, 22))
    assert hours(18, 21).overlaps(hours(20, 22))
    assert not hours(20, 22).overlaps(hours(20, 22, on=datetime.date(2026, 12, 4)))


def test_hours_as_they_are_written_and_moved() -> None:
    assert str(hours(9, 24)) == "2026-12-03 09:00-24:00"
    assert hours(20, 22).moved_to(18 * 60) == hours(18, 20)
