"""Slips of the days on which not all can be played, with what would put each right."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.club.enough import Loan, Move, Remedy
from paradestate.core.promise import weekday_words
from paradestate.core.sentence.club import hours_short, remedy_words
from paradestate.core.sentence.club_week import mend_words
from paradestate.core.sentence.wording import capital, counted, listed
from paradestate.journeys.club.book import BookedSpell
from paradestate.journeys.club.club_weeks import ClubWeeks
from paradestate.sheet.booked_hours import booked_hours
from paradestate.sheet.svg import Drawing

MOST_WAYS = 8
"""Of more single changes the first are shown, which change least."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """A single change that puts a day right."""

    words: str
    hours: str
    """Those in which something is short, for its form."""
    is_written: bool
    """Whether the sheet can write it; else somebody has to see to it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ShortSlip:
    """A day on which not all can be played."""

    day: str
    sentences: tuple[str, ...]
    games: str
    ways: tuple[Way, ...]
    """Each single change that puts the day right."""
    ways_left_out: int
    waiting: str
    """Of the kinds that are short what isn't finished, or in repair; empty where nothing is."""
    drawings: tuple[Drawing, ...]
    """A day of each kind that is short."""


def short_slips(short: Sequence[BookedSpell], *, found: ClubWeeks) -> Iterator[ShortSlip]:
    """A slip for each day, with what would put the whole of it right."""
    for day in dict.fromkeys(each.spell.hours.on for each in short):
        that_day = [each for each in short if each.spell.hours.on == day]
        week = next(week for week in found.weeks if day in week.days)
        lacking = {kind for each in that_day for kind in each.spell.short}
        ways = _ways(that_day)
        in_repair = {} if found.answer.stock is None else found.answer.stock.in_repair
        yield ShortSlip(
            day=weekday_words(day),
            sentences=tuple(
                sentence for each in that_day for sentence in hours_short(each.spell).split("; ")
            ),
            games=listed(dict.fromkeys(game for each in that_day for game in each.spell.games)),
            ways=ways[:MOST_WAYS],
            ways_left_out=max(len(ways) - MOST_WAYS, 0),
            waiting=counted({kind: n for kind, n in in_repair.items() if kind in lacking}),
            drawings=tuple(booked_hours(row, day) for row in week.rows if row.name in lacking),
        )


def _ways(short: Sequence[BookedSpell]) -> tuple[Way, ...]:
    """Each once, though it may be offered for several hours of a day."""
    ways = {
        _way_words(remedy): Way(
            words=_way_words(remedy),
            hours=str(each.spell.hours),
            is_written=isinstance(remedy, Move | Loan),
        )
        for each in short
        for remedy in each.remedies
    }
    return tuple(ways.values())


def _way_words(remedy: Remedy) -> str:
    """What a button does, or what somebody has to see to."""
    if isinstance(remedy, Move | Loan):
        return capital(mend_words(remedy))
    return capital(remedy_words(remedy))


def way_out(found: ClubWeeks, *, hours: str, words: str) -> Move | Loan | None:
    """The change that a form of the sheet asks for; None where it isn't offered any more."""
    offered = (
        remedy
        for each in found.spells
        if str(each.spell.hours) == hours
        for remedy in each.remedies
        if isinstance(remedy, Move | Loan)
    )
    return next((each for each in offered if _way_words(each) == words), None)
