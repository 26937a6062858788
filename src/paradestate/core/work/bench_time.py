"""The owner's days at the bench: on each day on which he is there, a seventh of his `week`.

Days are counted from the day on which a plan begins; those on which he is away bring nothing.
"""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.span import DateSpan
from paradestate.core.work.habit import DAYS, later


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchTime:
    """How long work takes where every week is alike."""

    begins: datetime.date
    week: Fraction
    """Minutes of a week, above nought."""
    away: tuple[DateSpan, ...] = ()

    @property
    def a_day(self) -> Fraction:
        """Minutes of a day on which the owner is there."""
        return self.week / DAYS

    def days_before(self, day: datetime.date) -> int:
        """How many days the owner is there from the beginning until before a day."""
        until = day.toordinal()
        gone = sum(min(end, until) - first for first, end in self._absences() if first < until)
        return max(0, until - self.begins.toordinal() - gone)

    def day(self, number: int) -> datetime.date:
        """The day on which the owner is there for the so manieth time, from 1."""
        found = later(self.begins, number - 1)
        for first, end in self._absences():
            if first <= found.toordinal():
                found = later(found, end - first)
        return found

    def _absences(self) -> Iterator[tuple[int, int]]:
        """The first day of each absence and the day after it; none before the beginning."""
        until = self.begins.toordinal()
        for span in sorted(self.away):
            end = span.last.toordinal() + 1
            if end > until:
                yield max(span.first.toordinal(), until), end
                until = end
