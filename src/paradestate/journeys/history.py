"""What happened, newest first.

collection -> journal opened -> verified -> entries, and which of them are struck out
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.finding import Finding
from paradestate.core.journal import in_force
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.journeys.holdings import holdings
from paradestate.journeys.journal import entries_of
from paradestate.store.opening import opened


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """The newest entries of a journal."""

    findings: tuple[Finding, ...]
    texts: Mapping[str, str]
    entries: tuple[JournalEntry, ...]
    struck_out: frozenset[str]
    """Ids of those entries that no longer count."""
    number: int
    """Entries in all."""


def history(folder: Path, *, today: datetime.date, last: int) -> History:
    """So many entries, newest first. Raises StoreError, and FileError."""
    known = holdings(folder, today=today)
    with opened(known.collection.address, writing=False) as journal:
        entries = tuple(entries_of(journal))
    counting = {entry.id for entry in in_force(entries)}
    struck = {
        entry.struck_out
        for entry in entries
        if entry.kind is EntryKind.STRUCK_OUT and entry.struck_out not in counting
    }
    return History(
        findings=known.findings,
        texts=known.texts,
        entries=entries[::-1][:last],
        struck_out=frozenset(struck),
        number=len(entries),
    )
