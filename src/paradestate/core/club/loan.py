"""Which boxes are out when: one that is late stays away until somebody says that it is back."""

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations

from paradestate.core.club.booking import Booking, Box, Club, Lent


def late(club: Club, today: datetime.date) -> tuple[Lent, ...]:
    """The loans whose last day is over, the latest first."""
    found = [each for each in club.loans.values() if each.is_late(today)]
    return tuple(sorted(found, key=lambda each: (each.until or today, each.box)))


def with_late_away(club: Club, today: datetime.date) -> Club:
    """The club in which a box that is late is away for good, since nobody knows until when.

    So is one whose last day is before its first.
    """
    loans = {
        name: replace(each, until=None) if each.is_late(today) or each.is_backwards else each
        for name, each in club.loans.items()
    }
    return replace(club, loans=loans)


def lent_on(club: Club, box: str, *, day: datetime.date) -> Lent | None:
    """With whom a box is on that day; None where it is here."""
    lent = club.loans.get(box)
    return lent if lent is not None and lent.is_away(day) else None


def has_box(club: Club, booking: Booking, *, box: str) -> bool:
    """Whether a game that borrows a box can have it: it is here, or with those who play."""
    lent = lent_on(club, box, day=booking.hours.on)
    return lent is None or (bool(booking.whom) and lent.to == booking.whom)


def without_box(club: Club) -> Iterator[tuple[Booking, Lent]]:
    """Each game with a box that it borrows and can't have, since it is out with others."""
    for booking in club.bookings.values():
        for box in booking.borrows:
            lent = lent_on(club, box, day=booking.hours.on)
            if lent is not None and not has_box(club, booking, box=box):
                yield booking, lent


def at_once(club: Club) -> Iterator[tuple[str, Booking, Booking]]:
    """Each box with two games that borrow it for the same hours."""
    borrowing = [each for each in club.bookings.values() if each.borrows]
    for one, other in combinations(borrowing, 2):
        if one.hours.overlaps(other.hours):
            both = [box for box in dict.fromkeys(one.borrows) if box in other.borrows]
            yield from ((box, one, other) for box in both)


def handed_over_away(club: Club) -> Iterator[tuple[Box, datetime.date, Lent]]:
    """Each handing over of a box on a day on which it is out."""
    for box in club.boxes.values():
        for day in sorted(box.handed_over):
            lent = lent_on(club, box.name, day=day)
            if lent is not None:
                yield box, day, lent


def games_with(club: Club, box: str, *, games: Sequence[Booking]) -> tuple[str, ...]:
    """Those of the games that borrow a box and have it."""
    return tuple(
        each.name for each in games if box in each.borrows and has_box(club, each, box=box)
    )
