"""The weeks of a club: what is played when with what, from a Monday on.

folder -> bookings weighed -> week by week
"""

import datetime
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.club.week import Week, week_of, weeks_later
from paradestate.journeys.book import BookedSpell, Bookings, bookings
from paradestate.journeys.memory import NOTHING, Memory

WEEKS = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class ClubWeeks:
    """So many weeks, with all bookings from the first of them on."""

    answer: Bookings
    weeks: tuple[Week, ...]

    @property
    def spells(self) -> tuple[BookedSpell, ...]:
        """Those of these weeks."""
        return tuple(each for each in self.answer.spells if self.holds(each.spell.hours.on))

    @property
    def later(self) -> tuple[str, ...]:
        """Games that are booked for after these weeks."""
        last = self.weeks[-1].days[-1]
        every = self.answer.club.bookings.values()
        return tuple(each.name for each in every if each.hours.on > last)

    def holds(self, day: datetime.date) -> bool:
        """Whether a day is in these weeks."""
        return self.weeks[0].first <= day <= self.weeks[-1].days[-1]


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
    answer = bookings(folder, today=today, since=first, memory=memory)
    spells = [each.spell for each in answer.spells]
    needs = {name: each.figures for name, each in answer.needs.items()}
    mondays = (weeks_later(first, each) for each in range(number))
    weeks = tuple(
        week_of(answer.club, spells, first=monday, needs=needs)
        for monday in mondays
        if monday is not None
    )
    return ClubWeeks(answer=answer, weeks=weeks)
