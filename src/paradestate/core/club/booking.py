"""Bookings of shared figures: for which hours of which day, and what each needs."""

import datetime
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

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


def full_hours(every: Iterable[Hours]) -> tuple[int, int]:
    """From when to when the full hours around all of them are; nought to nought without any."""
    known = tuple(every)
    first = min((each.start for each in known), default=0)
    last = max((each.end for each in known), default=0)
    return first // HOUR * HOUR, -(-last // HOUR) * HOUR


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A box that goes out whole: one of somebody's that isn't counted here, or one of our own."""

    name: str
    keeper: str = ""
    """Who has it; a role, a code or a first name."""
    holds: Mapping[str, int] = field(default_factory=dict)
    """Figure kind to number."""
    is_counted: bool = False
    """Whether what it holds is among what is owned."""
    handed_over: Mapping[datetime.date, str] = field(default_factory=dict)
    """Day to who keeps it from then on."""
    insured_for: Fraction | None = None
    """In units of the force's currency."""

    def keeper_on(self, day: datetime.date) -> str:
        """Who keeps it on that day; from the day of a handing over on it is the next one."""
        days = [each for each in self.handed_over if each <= day]
        return self.handed_over[max(days)] if days else self.keeper


@dataclass(frozen=True, slots=True, kw_only=True)
class Lent:
    """A box that is out with somebody."""

    box: str
    to: str
    """A role or a code, never a name."""
    since: datetime.date
    until: datetime.date | None = None
    """The last day on which it is away; None: nobody said."""

    @property
    def is_backwards(self) -> bool:
        """Whether its last day is before its first, so that nobody knows either."""
        return self.until is not None and self.until < self.since

    def is_late(self, today: datetime.date) -> bool:
        """Whether it should be back by now."""
        return self.until is not None and self.until < today and not self.is_backwards

    def is_away(self, day: datetime.date) -> bool:
        """Whether it is away on that day."""
        return self.since <= day and (self.until is None or day <= self.until)


@dataclass(frozen=True, slots=True, kw_only=True)
class Booking:
    """One game that needs figures for some hours."""

    name: str
    hours: Hours
    needs: Mapping[str, int] = field(default_factory=dict)
    """Figure kind to number."""
    stands: Mapping[str, int] = field(default_factory=dict)
    """Stand pattern to number, beside those figures."""
    game: str = ""
    """A game of a force of the collection, of which everything is needed that must be there."""
    force: str = ""
    """The force of that game; empty for the one whose files say the booking."""
    borrows: tuple[str, ...] = ()
    """Boxes that are borrowed for that day; one of our own goes out whole to this game."""
    whom: str = ""
    """For whom it is booked; a role or a code, never a name."""
    by_hand: str = ""

    @property
    def is_of_nothing(self) -> bool:
        """Whether nothing is said of what it needs."""
        whole = self.game or self.force
        return not (whole or self.needs or self.stands or self.borrows or self.by_hand)


@dataclass(frozen=True, slots=True, kw_only=True)
class Club:
    """What a club plans with its figures."""

    boxes: Mapping[str, Box] = field(default_factory=dict)
    bookings: Mapping[str, Booking] = field(default_factory=dict)
    loans: Mapping[str, Lent] = field(default_factory=dict)
    """Box to who has it now; at most one has it."""
    by_hand: str = ""
