"""Entries of a journal that several tests write."""

import datetime
from itertools import count

from paradestate.core.holdings import Holdings, piles
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.work.kept_forecast import KeptForecast

WRITTEN = datetime.datetime(2026, 3, 5, 20, 15, 0, tzinfo=datetime.UTC)
ON = datetime.date(2026, 3, 5)

_NUMBERS = count(1)


def uuid(number: int) -> str:
    """A UUID that shows its number."""
    return f"00000000-0000-4000-8000-{number:012d}"


def figures(**stages: dict[str, int]) -> Holdings:
    """Loose figures: `rifleman={"painted": 3}`."""
    return Holdings(figures={name.replace("_", " "): each for name, each in stages.items()})


def entry(
    kind: EntryKind,
    *,
    leaves: Holdings | None = None,
    comes: Holdings | None = None,
    on: datetime.date = ON,
    id: str = "",  # noqa: A002 - that is what it is
    struck_out: str = "",
    minutes: int = 0,
    note: str = "",
    force: str = "",
    forecasts: tuple[KeptForecast, ...] = (),
) -> JournalEntry:
    """An entry with an id of its own."""
    return JournalEntry(
        id=id or uuid(next(_NUMBERS)),
        kind=kind,
        written=WRITTEN,
        on=on,
        leaves=leaves or Holdings(),
        comes=comes or Holdings(),
        struck_out=struck_out,
        minutes=minutes,
        note=note,
        force=force,
        forecasts=forecasts,
    )


def number_of(name: str, held: Holdings) -> int:
    """Figures of a kind, or stands of a pattern, at all stages together."""
    return sum(pile.number for pile in piles(held) if pile.name == name)
