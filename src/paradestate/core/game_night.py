"""When games are played: single days, or every so many weeks."""

import datetime
from collections.abc import Iterable
from dataclasses import dataclass

from paradestate.core.span import DateSpan

WEEK = 7
"""Days."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GameNights:
    """One evening, or one every so many weeks from then on."""

    first: datetime.date
    weeks: int = 0
    """Weeks from one to the next; nought where there is only one."""
    until: datetime.date | None = None
    """The last day on which one may be; None: without end."""

    def __str__(self) -> str:
        """As the owner writes it."""
        if not self.weeks:
            return self.first.isoformat()
        often = "every week" if self.weeks == 1 else f"every {self.weeks} weeks"
        end = f" until {self.until.isoformat()}" if self.until else ""
        return f"{often} from {self.first.isoformat()}{end}"

    def within(self, span: DateSpan) -> tuple[datetime.date, ...]:
        """Those that fall into a span of days, in order."""
        step = self.weeks * WEEK
        last = min(span.last, self.until) if self.until else span.last
        if not step:
            return (self.first,) if span.first <= self.first <= last else ()
        before = max(0, -((self.first - span.first).days // step))
        days = range(self.first.toordinal() + before * step, last.toordinal() + 1, step)
        return tuple(datetime.date.fromordinal(day) for day in days)


def nights_within(nights: Iterable[GameNights], *, span: DateSpan) -> tuple[datetime.date, ...]:
    """All evenings of a span of days, in order, each once."""
    return tuple(sorted({day for each in nights for day in each.within(span)}))
