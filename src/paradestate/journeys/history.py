"""What happened, newest first.

collection -> journal opened -> verified -> entries, and which of them are struck out
"""

import datetime
import sys
from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.finding import Finding
from paradestate.core.journal import strikes
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.journal_text import UnknownEntryError
from paradestate.journeys.holdings import HeldCollection, holdings
from paradestate.journeys.journal import entries_of
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.store.opening import opened

LOOKED_AT = 20
"""Newest entries among which the one that can be taken back at once is looked for.

So that nobody takes back by a single touch what was written long ago.
"""

ALL = sys.maxsize

NOT_UNDONE = frozenset({EntryKind.STRUCK_OUT, EntryKind.PLAYED})
"""Kinds of entry that aren't taken back by a single touch."""


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

    @property
    def newest_in_force(self) -> JournalEntry | None:
        """The newest of these that can be undone: one that counts, and strikes out no other.

        Lines of a game aren't: they are struck out with a reason of their own.
        """
        for entry in self.entries:
            if entry.id not in self.strikes and entry.kind not in NOT_UNDONE:
                return entry
        return None

    @property
    def struck_just_now(self) -> JournalEntry | None:
        """The one of these that the newest strikes out; None where the newest strikes out none."""
        struck = self.entries[0].struck_out if self.entries else ""
        return next((entry for entry in self.entries if struck and entry.id == struck), None)


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
    entries = known.entries if known.entries is not None else _entries(known)
    asked: Sequence[JournalEntry] = entries
    if on is not None:
        asked = [entry for entry in asked if entry.on == on]
    if about:
        asked = [entry for entry in asked if _is_about(entry, about)]
    return History(
        findings=known.findings,
        texts=known.texts,
        entries=_newest(asked, last=last, skip=skip),
        strikes=memory.kept(
            ("strikes", known.collection.root), lambda: strikes(entries), rests_on=(entries,)
        ),
        number=len(asked),
    )


def entry_of_id(
    folder: Path, id_: str, *, today: datetime.date, memory: Memory = NOTHING
) -> JournalEntry | None:
    """The entry of an id, whether it still counts or not. Raises StoreError, and FileError."""
    past = history(folder, today=today, last=ALL, about=id_, memory=memory)
    return next((entry for entry in past.entries if entry.id == id_), None)


def _newest(asked: Sequence[JournalEntry], *, last: int, skip: int) -> tuple[JournalEntry, ...]:
    end = max(len(asked) - skip, 0)
    return tuple(asked[max(end - last, 0) : end][::-1])


def _is_about(entry: JournalEntry, name: str) -> bool:
    touched = (
        *(entry.leaves.figures, entry.comes.figures, entry.promised),
        *(entry.ordered, entry.cancelled),
        *(entry.leaves.stands, entry.comes.stands),
    )
    return name in (entry.stand, *entry.stands, entry.id, entry.struck_out) or any(
        name in names for names in touched
    )


def _entries(known: HeldCollection) -> tuple[JournalEntry, ...]:
    """All entries; none where one isn't understood, as the findings say."""
    with opened(known.collection.address, writing=False) as journal, suppress(UnknownEntryError):
        return tuple(entries_of(journal))
    return ()
