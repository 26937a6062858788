"""What happened, newest first.

collection -> journal opened -> verified -> entries, and which of them are struck out
"""

import datetime
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.finding import Finding
from paradestate.core.holdings import piles, together
from paradestate.core.journal import strikes
from paradestate.core.journal_entry import JournalEntry
from paradestate.core.journal_text import UnknownEntryError
from paradestate.journeys.holdings import HeldCollection, holdings, start_of
from paradestate.journeys.journal import entries_of, every_entry, read_journal
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.store.journal import Journal
from paradestate.store.opening import opened


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """The newest entries of a journal; none where it isn't understood, as the findings say."""

    findings: tuple[Finding, ...]
    texts: Mapping[str, str]
    entries: tuple[JournalEntry, ...]
    strikes: Mapping[str, JournalEntry]
    """Id of each entry that no longer counts, to the one that strikes it out."""
    number: int
    """Entries in all, of that day and about that name if one was asked for."""

    @property
    def struck_out(self) -> frozenset[str]:
        """Ids of those entries that no longer count."""
        return frozenset(self.strikes)


def history(
    folder: Path,
    *,
    today: datetime.date,
    last: int,
    skip: int = 0,
    on: datetime.date | None = None,
    about: str = "",
    memory: Memory = NOTHING,
) -> History:
    """So many entries, newest first, `skip` of them left out.

    With `on` those that hold for that day; with `about` those that touch a figure kind, a stand
    pattern or a stand of that name, or are the entry of that id. Raises StoreError, and FileError.
    """
    known = holdings(folder, today=today, memory=memory)
    known.collection.force_of(folder)
    entries: tuple[JournalEntry, ...] = ()
    # Where it isn't understood the findings say so.
    with opened(known.collection.address, writing=False) as journal, suppress(UnknownEntryError):
        entries = _entries(journal, known, memory=memory)
    asked = [
        entry
        for entry in entries
        if (on is None or entry.on == on) and (not about or _is_about(entry, about))
    ]
    return History(
        findings=known.findings,
        texts=known.texts,
        entries=tuple(asked[::-1][skip : skip + last]),
        strikes=strikes(entries),
        number=len(asked),
    )


def _is_about(entry: JournalEntry, name: str) -> bool:
    touched = {pile.name for pile in piles(together(entry.leaves, entry.comes))}
    return name in {*touched, *entry.promised, entry.stand, entry.id, entry.struck_out}


def _entries(
    journal: Journal, known: HeldCollection, *, memory: Memory
) -> tuple[JournalEntry, ...]:
    if memory is NOTHING or known.state is None:
        return tuple(entries_of(journal))
    file = str(known.collection.address)
    reading = read_journal(journal, start=start_of(known.forces), file=file, memory=memory)
    return every_entry(journal, reading)
