"""A week of a club by rows: which game has what when, and what is short."""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.club.booking import Booking, Club, Hours
from paradestate.core.club.enough import Spell
from paradestate.core.figure import StandIn

DAYS = 7


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """One game that has something for some hours."""

    game: str
    hours: Hours
    number: int | None = None
    """Of the kind; None where it is a box, which is borrowed whole."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KindSpell:
    """One kind of figure in a spell."""

    hours: Hours
    booked: int
    sound: int
    """As many as there are to give out, with those of borrowed boxes."""
    kept: int = 0
    """Of these, what is out in a box with a game that doesn't need them."""
    short: int = 0
    stand_ins: tuple[StandIn, ...] = ()
    """Who stands in for this kind."""

    @property
    def to_give_out(self) -> int:
        """What is sound and kept by nobody."""
        return self.sound - self.kept


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekRow:
    """A kind of figure or a box, with all that has it in a week."""

    name: str
    uses: tuple[Use, ...]
    spells: tuple[KindSpell, ...] = ()
    """In the order of time; a box has none."""

    @property
    def is_box(self) -> bool:
        """Whether it is a box, that several games may have at once."""
        return not self.spells

    def on(self, day: datetime.date) -> "WeekRow":
        """The same with what happens on one day alone."""
        return WeekRow(
            name=self.name,
            uses=tuple(each for each in self.uses if each.hours.on == day),
            spells=tuple(each for each in self.spells if each.hours.on == day),
        )

    def in_hours(self, hours: Hours) -> tuple[Use, ...]:
        """Who has some of it in these hours."""
        return tuple(each for each in self.uses if each.hours.overlaps(hours))


@dataclass(frozen=True, slots=True, kw_only=True)
class Week:
    """Seven days from a Monday on."""

    first: datetime.date
    rows: tuple[WeekRow, ...] = ()
    bookings: tuple[Booking, ...] = ()
    """In the order of time."""
    uncounted: tuple[str, ...] = ()
    """Of these, the games of which nobody knows what they need; they have no bars."""

    @property
    def days(self) -> tuple[datetime.date, ...]:
        """Each of them, booked or not; fewer than seven where the calendar ends."""
        first = self.first.toordinal()
        last = min(first + DAYS, datetime.date.max.toordinal() + 1)
        return tuple(map(datetime.date.fromordinal, range(first, last)))

    @property
    def booked(self) -> tuple[datetime.date, ...]:
        """The days on which something is played."""
        return tuple(dict.fromkeys(each.hours.on for each in self.bookings))

    def games(self, day: datetime.date) -> tuple[Booking, ...]:
        """What is played on a day, in the order of time."""
        return tuple(each for each in self.bookings if each.hours.on == day)


def monday_of(day: datetime.date) -> datetime.date:
    """The Monday on or before a day."""
    return datetime.date.fromordinal(day.toordinal() - day.weekday())


def weeks_later(monday: datetime.date, number: int) -> datetime.date | None:
    """The Monday so many weeks later, or earlier; None where the calendar doesn't reach so far."""
    later = monday.toordinal() + number * DAYS
    is_known = datetime.date.min.toordinal() <= later <= datetime.date.max.toordinal()
    return datetime.date.fromordinal(later) if is_known else None


def week_of(
    club: Club,
    spells: Sequence[Spell],
    *,
    first: datetime.date,
    needs: Mapping[str, Mapping[str, int]],
) -> Week:
    """The week from a Monday on: the kinds that are booked, then the boxes that are borrowed.

    `needs` has each booking's figures by kind; one that isn't in it couldn't be counted.
    """
    days = frozenset(Week(first=first).days)
    mine = [each for each in club.bookings.values() if each.hours.on in days]
    bookings = sorted(mine, key=lambda each: (each.hours.on, each.hours.start, each.hours.end))
    within = [each for each in spells if each.hours.on in days]
    return Week(
        first=first,
        bookings=tuple(bookings),
        uncounted=tuple(each.name for each in bookings if each.name not in needs),
        rows=(*_kinds(bookings, within, needs=needs), *_boxes(bookings)),
    )


def _kinds(
    bookings: Sequence[Booking], spells: Sequence[Spell], *, needs: Mapping[str, Mapping[str, int]]
) -> Iterator[WeekRow]:
    counted = [(each, needs[each.name]) for each in bookings if each.name in needs]
    for kind in dict.fromkeys(kind for _, figures in counted for kind in figures):
        uses = tuple(
            Use(game=each.name, hours=each.hours, number=figures[kind])
            for each, figures in counted
            if kind in figures
        )
        yield WeekRow(
            name=kind,
            uses=uses,
            spells=tuple(_spell(each, kind=kind) for each in spells if kind in each.booked),
        )


def _spell(spell: Spell, *, kind: str) -> KindSpell:
    return KindSpell(
        hours=spell.hours,
        booked=spell.booked[kind],
        sound=spell.sound[kind],
        kept=sum(each.get(kind, 0) for each in spell.kept.values()),
        short=spell.short.get(kind, 0),
        stand_ins=tuple(each for each in spell.stand_ins if each.stands_for == kind),
    )


def _boxes(bookings: Sequence[Booking]) -> Iterator[WeekRow]:
    for box in dict.fromkeys(box for each in bookings for box in each.borrows):
        yield WeekRow(
            name=box,
            uses=tuple(
                Use(game=each.name, hours=each.hours) for each in bookings if box in each.borrows
            ),
        )
