"""When games are played."""

import datetime

import pytest

from paradestate.core.game_night import GameNights, nights_within
from paradestate.core.span import DateSpan, month

MARCH = month(2026, 3)


def march(*days: int) -> tuple[datetime.date, ...]:
    return tuple(datetime.date(2026, 3, day) for day in days)


@pytest.mark.parametrize(
    ("nights", "found"),
    [
        (GameNights(first=datetime.date(2026, 3, 5)), march(5)),
        (GameNights(first=datetime.date(2026, 4, 5)), ()),
        (GameNights(first=datetime.date(2026, 3, 5), weeks=2), march(5, 19)),
        (GameNights(first=datetime.date(2026, 2, 26), weeks=1), march(5, 12, 19, 26)),
        (GameNights(first=datetime.date(2025, 3, 1), weeks=52), ()),
        (GameNights(first=datetime.date(2025, 3, 2), weeks=52), march(1)),
        (
            GameNights(first=datetime.date(2026, 2, 26), weeks=1, until=datetime.date(2026, 3, 12)),
            march(5, 12),
        ),
    ],
)
def test_nights_fall_into_a_span_from_the_first_on(
    nights: GameNights, found: tuple[datetime.date, ...]
) -> None:
    assert nights.within(MARCH) == found


def test_nights_are_told_in_order_and_each_once() -> None:
    every = (
        GameNights(first=datetime.date(2026, 3, 19)),
        GameNights(first=datetime.date(2026, 3, 5), weeks=2),
    )
    assert nights_within(every, span=MARCH) == march(5, 19)


def test_a_span_may_begin_before_the_first_night() -> None:
    weekly = GameNights(first=datetime.date(2026, 3, 5), weeks=1)
    span = DateSpan(first=datetime.date.min, last=datetime.date(2026, 3, 12))
    assert weekly.within(span) == march(5, 12)


@pytest.mark.parametrize(
    ("weeks", "until", "text"),
    [
        (0, None, "2026-03-05"),
        (1, None, "every week from 2026-03-05"),
        (2, datetime.date(2026, 8, 31), "every 2 weeks from 2026-03-05 until 2026-08-31"),
    ],
)
def test_nights_are_written_as_the_owner_writes_them(
    weeks: int, until: datetime.date | None, text: str
) -> None:
    assert str(GameNights(first=datetime.date(2026, 3, 5), weeks=weeks, until=until)) == text
