"""The notice for the club's board: on which days which force is played, and what it will lack.

Rows are the forces of the collection, columns the days on which something is promised or played.
"""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.journal import Promise
from paradestate.core.paper.paper import Draft
from paradestate.core.promise import Cupboard, weekday_words
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
class NoticeTable:
    """So many days as go beside each other."""

    days: tuple[str, ...]
    """In words, the day of the week first."""
    rows: tuple[NoticeRow, ...]
    short: tuple[str, ...]
    """For each day what is promised and isn't there; empty where all is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClubNotice:
    """The notice."""

    tables: tuple[NoticeTable, ...]
    weeks: int
    short_days: int
    """Days on which something is short."""


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
) -> Draft[ClubNotice]:
    """The days to come; none where nothing is promised and no night is named."""
    ahead = [each for each in promises if today <= each.day <= last_day(today)]
    nights = {day for force in forces for day in force.nights}
    days = sorted({each.day for each in ahead} | nights)
    if not days:
        return Draft(shown=None)
    short = {day: counted(_short(ahead, day, cupboard=cupboard)) for day in days}
    tables = tuple(_tables(forces, ahead, days=days, short=short))
    number = sum(bool(words) for words in short.values())
    return Draft(shown=ClubNotice(tables=tables, weeks=WEEKS, short_days=number))


def _short(
    promises: Sequence[Promise], day: datetime.date, *, cupboard: Cupboard
) -> Mapping[str, int]:
    return cupboard.lacking([each for each in promises if each.day == day])


def _tables(
    forces: Sequence[Played],
    promises: Sequence[Promise],
    *,
    days: Sequence[datetime.date],
    short: Mapping[datetime.date, str],
) -> Iterator[NoticeTable]:
    for first in range(0, len(days), MOST_DAYS):
        some = tuple(days[first : first + MOST_DAYS])
        rows = tuple(
            NoticeRow(
                force=force.title,
                bookings=tuple(_booking(force, promises, day=day) for day in some),
            )
            for force in forces
        )
        yield NoticeTable(
            days=tuple(map(weekday_words, some)), rows=rows, short=tuple(short[day] for day in some)
        )


def _booking(force: Played, promises: Sequence[Promise], *, day: datetime.date) -> DayOfForce:
    own = [each for each in promises if each.day == day and each.force == force.name]
    said = [words for each in own for words in (counted(each.figures), each.note) if words]
    return DayOfForce(is_game_night=day in force.nights, promised=tuple(said))
