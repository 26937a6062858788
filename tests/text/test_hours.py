"""Hours of a day from text."""

import pytest

from paradestate.text.hours import read_hours
from paradestate.text.slip import Slip
from tests.core.club.bookings import hours


@pytest.mark.parametrize("text", ["2026-12-03 20:00-22:00", "2026-12-03 20:00 - 22:00"])
def test_a_day_and_two_times(text: str) -> None:
    assert read_hours(text) == hours(20, 22)


def test_the_end_of_the_day_is_the_last_time() -> None:
    assert read_hours("2026-12-03 9:00-24:00") == hours(9, 24)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("evening", "'evening' isn't a day with hours."),
        ("2026-12 20:00-22:00", "2026-12 isn't a single day."),
        ("2026-12-03 20:60-22:00", "There is no such time of day."),
        ("2026-12-03 20:00-24:01", "There is no such time of day."),
        ("2026-12-03 22:00-22:00", "It ends as it begins."),
        (
            "2026-12-03 22:00-20:00",
            "It ends before it begins; a game past midnight is two bookings.",
        ),
    ],
)
def test_what_are_no_hours(text: str, message: str) -> None:
    slip = read_hours(text)
    assert isinstance(slip, Slip)
    assert (slip.code, slip.message) == ("not-hours", message)


def test_a_day_that_isnt_there() -> None:
    slip = read_hours("2026-02-30 20:00-22:00")
    assert isinstance(slip, Slip)
    assert (slip.message, "20:00-22:00" in slip.hint) == ("There is no day 2026-02-30.", True)
    either = read_hours("03/12/2026 20:00-22:00")
    assert isinstance(either, Slip)
    assert either.hint == "Write 2026-12-03 or 2026-03-12."
