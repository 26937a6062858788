"""Bookings, boxes and clubs for tests."""

import datetime
from collections.abc import Mapping

from paradestate.core.club.booking import HOUR, Booking, Box, Club, Hours, Lent

DAY = datetime.date(2026, 12, 3)
TRUCK = "truck"


def hours(start: int, end: int, *, on: datetime.date = DAY) -> Hours:
    """From one full hour to another."""
    return Hours(on=on, start=start * HOUR, end=end * HOUR)


def booking(
    name: str, when: Hours, *, needs: Mapping[str, int], borrows: tuple[str, ...] = ()
) -> Booking:
    return Booking(name=name, hours=when, needs=needs, borrows=borrows)


def club(*bookings: Booking, boxes: tuple[Box, ...] = (), loans: tuple[Lent, ...] = ()) -> Club:
    return Club(
        bookings={each.name: each for each in bookings},
        boxes={each.name: each for each in boxes},
        loans={each.box: each for each in loans},
    )


def lent(box: str, *, to: str = "treasurer", since: int = 1, until: int | None = None) -> Lent:
    """From one day of December 2026 to another."""
    last = None if until is None else DAY.replace(day=until)
    return Lent(box=box, to=to, since=DAY.replace(day=since), until=last)


def needs_of(planned: Club) -> Mapping[str, Mapping[str, int]]:
    """Each booking's figures as they are written."""
    return {name: each.needs for name, each in planned.bookings.items()}


RIVER = booking("river", hours(20, 22), needs={TRUCK: 8})
HILL = booking("hill", hours(20, 22), needs={TRUCK: 8})
BOX_NINE = Box(name="box 9", keeper="Ann", holds={TRUCK: 6})
BOX_THREE = Box(name="box 3", keeper="secretary", holds={TRUCK: 6}, is_counted=True)
"""One of our own."""
