"""Bookings of shared figures: for which hours of which day, and what each needs."""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field

HOUR = 60
DAY = 24 * HOUR
"""Minutes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hours:
    """Hours of one day: from the first minute on, up to the last one, which is out again."""

    on: datetime.date
    start: int
    """Minutes from midnight, as `end`."""
    end: int

    def __str__(self) -> str:
        """As the owner writes them: `2026-12-03 20:00-22:00`."""
        return f"{self.on.isoformat()} {clock(self.start)}-{clock(self.end)}"

    def overlaps(self, other: "Hours") -> bool:
        """Whether they have a minute in common; one that begins as the other ends has none."""
        return self.on == other.on and self.start < other.end and other.start < self.end

    def moved_to(self, start: int) -> "Hours":
        """As long, from another time on."""
        return Hours(on=self.on, start=start, end=start + self.end - self.start)


def clock(minutes: int) -> str:
    """A time of day: `20:00`."""
    return f"{minutes // HOUR:02}:{minutes % HOUR:02}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A box of somebody's that isn't counted among what is owned, and may be borrowed whole."""

    name: str
    keeper: str = ""
    """Who has it; a role or a first name."""
    holds: Mapping[str, int] = field(default_factory=dict)
    """Figure kind to number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Booking:
    """One game that needs figures for some hours."""

    name: str
    hours: Hours
    needs: Mapping[str, int] = field(default_factory=dict)
    """Figure kind to number."""
    borrows: tuple[str, ...] = ()
    """Boxes that are borrowed for that day."""
    by_hand: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Club:
    """What a club plans with its figures."""

    boxes: Mapping[str, Box] = field(default_factory=dict)
    bookings: Mapping[str, Booking] = field(default_factory=dict)
    by_hand: str = ""
