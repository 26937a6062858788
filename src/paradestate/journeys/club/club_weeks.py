"""The weeks of a club: what is played when with what, from a Monday on.

folder -> bookings weighed -> week by week
"""

import datetime
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.club.week import Week, week_of, weeks_later
from paradestate.journeys.club.book import BookedSpell, Bookings, bookings
from paradestate.journeys.memory import NOTHING, Memory

WEEKS = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class ClubWeeks:
    """So many weeks, with what is booked in them."""

    answer: Bookings
    weeks: tuple[Week, ...]

    @property
    def spells(self) -> tuple[BookedSpell, ...]:
        """All in which something is played."""
        return self.answer.spells

    @property
    def later(self) -> tuple[str, ...]:
        """Games that are booked for after these weeks."""
        last = self.weeks[-1].days[-1]
        every = self.answer.club.bookings.values()
        return tuple(each.name for each in every if each.hours.on > last)


def club_weeks(
    folder: Path,
    *,
    today: datetime.date,
    first: datetime.date,
    number: int = WEEKS,
    memory: Memory = NOTHING,
) -> ClubWeeks:
    """So many weeks from a Monday on, as far as the calendar goes.

    Nothing is in them where the folder has a stop. Raises StoreError, and FileError.
    """
    mondays = (weeks_later(first, each) for each in range(number))
    empty = [Week(first=monday) for monday in mondays if monday is not None]
    answer = bookings(folder, today=today, since=first, until=empty[-1].days[-1], memory=memory)
    spells = [each.spell for each in answer.spells]
    needs = {name: each.figures for name, each in answer.needs.items()}
    weeks = tuple(week_of(answer.club, spells, first=each.first, needs=needs) for each in empty)
    return ClubWeeks(answer=answer, weeks=weeks)
