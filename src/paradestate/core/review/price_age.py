"""Prices that were noted long ago."""

import datetime
from collections.abc import Iterator

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import nearest_place

USUAL_MONTHS = 12
"""Age at which a price is taken for old (common practice, no source)."""


def months_between(first: datetime.date, last: datetime.date) -> int:
    """Whole months from one day to another."""
    months = (last.year - first.year) * 12 + last.month - first.month
    return months - (last.day < first.day)


def old_prices(
    force: Force, *, today: datetime.date, months: int = USUAL_MONTHS
) -> Iterator[Finding]:
    """A remark for each source whose prices were noted that many months ago or more."""
    for source in force.sources.values():
        if source.noted is None:
            continue
        age = months_between(source.noted.last, today)
        if age >= months:
            yield Finding(
                level=Level.REMARK,
                code="price-old",
                message=f"The prices of {source.name} were noted {age} months ago.",
                effect="The order may cost something else by now.",
                hint="Look them up again and change 'noted'.",
                place=nearest_place(force.places, ("sources", source.name, "noted")),
            )
