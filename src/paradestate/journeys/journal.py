"""Reading and writing a collection's journal: lines -> verified -> entries -> added up."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice

from paradestate.core.digest_chain import START, Checkpoint, Head, altered_lines
from paradestate.core.finding import Finding
from paradestate.core.holdings import Holdings
from paradestate.core.journal import JournalState, Shortfall, added_up, can_follow
from paradestate.core.journal_entry import JournalEntry
from paradestate.core.journal_finding import altered_line, below_nought, not_understood
from paradestate.core.journal_text import (
    UnknownEntryError,
    entry_text,
    read_entry,
    read_state,
    state_text,
)
from paradestate.core.place import Place
from paradestate.store.journal import Journal

ALWAYS_WHOLE = 25_000
"""A journal of so many lines is verified from its first line whenever it is read."""

MOST_NAMED = 20
"""Altered lines that are named; there may be more."""

BETWEEN_CHECKPOINTS = 1_000
"""Lines after which the sum so far is kept, so that it needn't be made again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JournalReading:
    """A journal added up, as far as it could be read."""

    start: Holdings
    """What was owned before the first entry."""
    state: JournalState
    findings: tuple[Finding, ...]
    is_understood: bool = True
    """Whether every line could be read; else the state is that of the start."""
    summed_before: int = 0
    """Lines whose sum was known already."""
    is_altered: bool = False
    """Whether a line isn't as it was written."""


def read_journal(
    journal: Journal,
    *,
    start: Holdings,
    file: str,
    until: datetime.date | None = None,
    whole: bool = False,
) -> JournalReading:
    """What all lines come to, or those that hold for a day up to `until`.

    With `whole` every line is verified, however many there are, and the sum is made anew. Raises
    StoreError.
    """
    place = Place(file=file, line=max(journal.head().number, 1), column=1)
    kept = None if until is not None or whole else journal.checkpoint()
    base = None if kept is None else read_state(kept.text, start=start)
    after = START if kept is None or base is None else kept.head
    altered = tuple(_altered(journal, after=after, place=place))
    state = base or JournalState(held=start)
    before = after.number
    try:
        entries = tuple(entries_of(journal, after=before))
        # Over altered lines nothing that was summed before is trusted.
        if before and (altered or not can_follow(state, entries)):
            state, before = JournalState(held=start), 0
            altered = tuple(_altered(journal, after=START, place=place))
            entries = tuple(entries_of(journal))
    except UnreadableLineError as error:
        found = not_understood(error, journal=replace(place, line=error.number))
        return JournalReading(
            start=start,
            state=JournalState(held=start),
            findings=(*altered, found),
            is_understood=False,
        )
    state = added_up(state, entries, until=until)
    short = tuple(
        below_nought(each, journal=replace(place, line=_line_of(journal, each)))
        for each in state.shortfalls
    )
    return JournalReading(
        start=start,
        state=state,
        findings=(*altered, *short),
        summed_before=before,
        is_altered=bool(altered),
    )


def _line_of(journal: Journal, short: Shortfall) -> int:
    link = journal.link(short.entry.id)
    return 1 if link is None else link.number


def _altered(journal: Journal, *, after: Head, place: Place) -> Iterator[Finding]:
    """Warnings for altered lines; a journal of at most `ALWAYS_WHOLE` is verified whole."""
    end = journal.head()
    first = START if end.number <= ALWAYS_WHOLE else after
    altered = altered_lines(journal.links(after=first.number), after=first, end=end)
    for each in islice(altered, MOST_NAMED):
        yield altered_line(each, journal=place)


class UnreadableLineError(UnknownEntryError):
    """An entry that isn't understood, with its line."""

    def __init__(self, error: UnknownEntryError, *, number: int) -> None:
        super().__init__(f"{error}")
        self.number = number


def entries_of(journal: Journal, *, after: int = 0) -> Iterator[JournalEntry]:
    """The entries after a line. Raises UnreadableLineError, and StoreError."""
    for link in journal.links(after=after):
        try:
            yield read_entry(link.text, id=link.id)
        except UnknownEntryError as error:
            raise UnreadableLineError(error, number=link.number) from error


def with_entry(journal: Journal, reading: JournalReading, *, entry: JournalEntry) -> JournalState:
    """What the journal would come to with one more entry, its new shortfalls included."""
    if can_follow(reading.state, (entry,)):
        return added_up(reading.state, (entry,))
    return added_up(JournalState(held=reading.start), (*entries_of(journal), entry))


def new_shortfalls(before: JournalState, after: JournalState) -> tuple[Shortfall, ...]:
    """What only the new entry brought below nought, or further below."""
    known = {(each.entry.id, each.name, each.stage): each.lacking for each in before.shortfalls}
    return tuple(
        each
        for each in after.shortfalls
        if each.lacking > known.get((each.entry.id, each.name, each.stage), 0)
    )


def write(
    journal: Journal, reading: JournalReading, *, entry: JournalEntry, state: JournalState
) -> None:
    """Appends an entry, and keeps what all come to where it is time to. Raises StoreError."""
    link = journal.append(id=entry.id, text=entry_text(entry))
    is_due = link.number - reading.summed_before >= BETWEEN_CHECKPOINTS
    if is_due and not state.shortfalls and not reading.is_altered:
        journal.keep(
            Checkpoint(
                head=Head(number=link.number, digest=link.digest),
                text=state_text(state, start=reading.start),
            )
        )
