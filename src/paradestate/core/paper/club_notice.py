"""The notice for the club's board: on which days which force is played, and what it will lack.

Rows are the forces of the collection and the games that are booked, columns the days on which
something is promised or played. It hangs where anybody reads it: nobody's name is on it.
"""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.club.booking import Booking, full_hours
from paradestate.core.club.week import Week
from paradestate.core.journal import Promise
from paradestate.core.paper.paper import Draft
from paradestate.core.promise import Cupboard, weekday_words
from paradestate.core.sentence.club_week import needed_words, short_words, times_words
from paradestate.core.sentence.wording import counted

MOST_DAYS = 4
"""Columns of one table."""

WEEKS = 8
"""How far the notice looks ahead."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DayOfForce:
    """What one force does on one day."""

    is_game_night: bool
    promised: tuple[str, ...]
    """What is promised to it, and what was noted of that."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NoticeRow:
    """One force, day by day."""

    force: str
    bookings: tuple[DayOfForce, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BookedGame:
    """A game of a day; its times are minutes from midnight."""

    name: str
    times: str
    needs: str
    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class BookedDay:
    """The games of a day, and the full hours around all of them."""

    games: tuple[BookedGame, ...] = ()
    first: int = 0
    last: int = 0
    short: tuple[tuple[int, int], ...] = ()
    """From when to when something is short."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NoticeTable:
    """So many days as go beside each other."""

    days: tuple[str, ...]
    """In words, the day of the week first."""
    rows: tuple[NoticeRow, ...]
    booked: tuple[BookedDay, ...]
    """For each day the games that are booked; empty where none is on any."""
    short: tuple[str, ...]
    """For each day what is promised or booked and isn't there; empty where all is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClubNotice:
    """The notice."""

    tables: tuple[NoticeTable, ...]
    weeks: int
    short_days: int
    """Days on which something is short."""
    apart: tuple[str, ...]
    """Days that have both promises and bookings, which are counted each for itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Played:
    """A force of the collection, and when it is played."""

    name: str
    """Of its folder, under which the journal has it."""
    title: str
    nights: tuple[datetime.date, ...]


def last_day(today: datetime.date) -> datetime.date:
    """The last day that a notice of today shows."""
    return today + datetime.timedelta(weeks=WEEKS)


def club_notice(
    forces: Sequence[Played],
    *,
    promises: Sequence[Promise],
    cupboard: Cupboard,
    today: datetime.date,
    weeks: Sequence[Week] = (),
) -> Draft[ClubNotice]:
    """The days to come; none where nothing is promised or booked, and no night is named."""
    last = last_day(today)
    ahead = [each for each in promises if today <= each.day <= last]
    nights = {day for force in forces for day in force.nights}
    booked = {day: week for week in weeks for day in week.booked if today <= day <= last}
    promised = {each.day for each in ahead}
    days = sorted(promised | nights | set(booked))
    if not days:
        return Draft(shown=None)
    short = {day: _lacking(ahead, day, cupboard=cupboard, week=booked.get(day)) for day in days}
    games = {day: _booked_day(week, day) for day, week in booked.items()}
    tables = tuple(_tables(forces, ahead, games=games, short=short))
    return Draft(
        shown=ClubNotice(
            tables=tables,
            weeks=WEEKS,
            short_days=sum(bool(words) for words in short.values()),
            apart=tuple(weekday_words(day) for day in sorted(promised & set(booked))),
        )
    )


def _lacking(
    promises: Sequence[Promise], day: datetime.date, *, cupboard: Cupboard, week: Week | None
) -> str:
    """What is promised and isn't there, then what is booked and isn't, with its hours."""
    lacking = cupboard.lacking([each for each in promises if each.day == day])
    said = [counted(lacking)] if lacking else []
    return "; ".join((*said, *(short_words(week, day) if week is not None else ())))


def _booked_day(week: Week, day: datetime.date) -> BookedDay:
    bookings = week.games(day)
    first, last = full_hours(each.hours for each in bookings)
    short = {
        (spell.hours.start, spell.hours.end)
        for row in week.rows
        for spell in row.on(day).spells
        if spell.short
    }
    return BookedDay(
        games=tuple(_game(each, week) for each in bookings),
        first=first,
        last=last,
        short=tuple(sorted(short)),
    )


def _game(booking: Booking, week: Week) -> BookedGame:
    unknown = ", not counted" if booking.name in week.uncounted else ""
    return BookedGame(
        name=booking.name,
        times=times_words(booking.hours),
        needs=f"{needed_words(booking)}{unknown}",
        start=booking.hours.start,
        end=booking.hours.end,
    )


def _tables(
    forces: Sequence[Played],
    promises: Sequence[Promise],
    *,
    games: Mapping[datetime.date, BookedDay],
    short: Mapping[datetime.date, str],
) -> Iterator[NoticeTable]:
    days = tuple(short)
    for first in range(0, len(days), MOST_DAYS):
        some = days[first : first + MOST_DAYS]
        rows = (
            NoticeRow(
                force=force.title,
                bookings=tuple(_booking(force, promises, day=day) for day in some),
            )
            for force in forces
        )
        yield NoticeTable(
            days=tuple(map(weekday_words, some)),
            rows=tuple(row for row in rows if any(map(_says_anything, row.bookings))),
            booked=tuple(games.get(day, BookedDay()) for day in some if games.keys() & set(some)),
            short=tuple(short[day] for day in some),
        )


def _says_anything(cell: DayOfForce) -> bool:
    return cell.is_game_night or bool(cell.promised)


def _booking(force: Played, promises: Sequence[Promise], *, day: datetime.date) -> DayOfForce:
    own = [each for each in promises if each.day == day and each.force == force.name]
    said = [words for each in own for words in (counted(each.figures), each.note) if words]
    return DayOfForce(is_game_night=day in force.nights, promised=tuple(said))
