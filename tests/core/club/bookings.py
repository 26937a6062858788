"""Bookings, boxes and clubs for tests."""

import datetime
from collections.abc import Mapping

from paradestate.core.club.booking import HOUR, Booking, Box, Club, Hours

DAY = datetime.date(2026, 12, 3)
TRUCK = "truck"


def hours(start: int, end: int, *, on: datetime.date = DAY) -> Hours:
    """From one full hour to another."""
    return Hours(on=on, start=start * HOUR, end=end * HOUR)


def booking(
    name: str, when: Hours, *, needs: Mapping[str, int], borrows: tuple[str, ...] = ()
) -> Booking:
    return Booking(name=name, hours=when, needs=needs, borrows=borrows)


def club(*bookings: Booking, boxes: tuple[Box, ...] = ()) -> Club:
    return Club(
        bookings={each.name: each for each in bookings}, boxes={each.name: each for each in boxes}
    )


RIVER = booking("river", hours(20, 22), needs={TRUCK: 8})
HILL = booking("hill", hours(20, 22), needs={TRUCK: 8})
BOX_NINE = Box(name="box 9", keeper="Ann", holds={TRUCK: 6})
