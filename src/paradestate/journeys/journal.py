"""Reading and writing a collection's journal: lines -> verified -> entries -> added up."""

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice

from paradestate.core.digest_chain import START, Checkpoint, Head, altered_lines, first_altered
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
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.store.journal import Journal

ALWAYS_WHOLE = 25_000
"""A journal of so many lines is verified from its first line whenever it is read."""

MOST_IN_MIND = 100_000
"""Lines of a journal whose entries are kept in mind; of a longer one they are read each time."""

MOST_NAMED = 20
"""Altered lines that are named; there may be more."""

MOST_EARLIER = 20
"""Earlier states that are kept in mind beside that of a journal; just so many can be undone."""

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
    entries: tuple[JournalEntry, ...] | None = None
    """All entries, where they are at hand."""
    earlier: tuple[tuple[int, JournalState], ...] = ()
    """Numbers of first entries with what these came to, oldest first.

    What was written after them can be struck out without adding all up anew.
    """


@dataclass(frozen=True, slots=True, kw_only=True)
class _Known:
    """A journal that was read and verified to its end, and is kept in mind."""

    head: Head
    reading: JournalReading
    """Of all days, with its entries."""


def read_journal(
    journal: Journal,
    *,
    start: Holdings,
    file: str,
    until: datetime.date | None = None,
    whole: bool = False,
    memory: Memory = NOTHING,
) -> JournalReading:
    """What all lines come to, or those that hold for a day up to `until`.

    With `whole` every line is verified, however many there are, and the sum is made anew. With a
    memory lines that were verified once aren't read again. Raises StoreError.
    """
    known = None if whole else memory.last(("journal", file), _Known)
    grown = None if known is None else _grown(journal, known, start=start, file=file)
    if grown is None:
        grown = _remembered(journal, start=start, file=file, memory=memory)
    if grown is not None:
        memory.keep(("journal", file), grown)
        reading = grown.reading
        if until is None:
            return reading
        return memory.kept(
            ("journal", file, until),
            lambda: _on_day(journal, reading, day=until, file=file),
            rests_on=(reading,),
        )
    return _read_anew(journal, start=start, file=file, until=until, whole=whole)


def _remembered(journal: Journal, *, start: Holdings, file: str, memory: Memory) -> _Known | None:
    """The journal with all its entries, to be kept in mind; None where that can't or needn't be."""
    head = journal.head()
    if memory is NOTHING or head.number > MOST_IN_MIND:
        return None
    reading = _read_anew(journal, start=start, file=file)
    if reading.is_altered or not reading.is_understood:
        return None
    return _Known(head=head, reading=replace(reading, entries=tuple(entries_of(journal))))


def _grown(journal: Journal, known: _Known, *, start: Holdings, file: str) -> _Known | None:
    """What is known with the lines that came since; None where those don't fit on."""
    head, before = journal.head(), known.reading
    if head == known.head and start == before.start:
        return known
    new: tuple[JournalEntry, ...] = ()
    if head != known.head:
        since = journal.links(after=known.head.number)
        if first_altered(since, after=known.head, end=head) is not None:
            return None
        try:
            new = tuple(entries_of(journal, after=known.head.number))
        except UnreadableLineError:
            return None
    known_entries = before.entries or ()
    entries = (*known_entries, *new)
    earlier: tuple[tuple[int, JournalState], ...] = ()
    if start == before.start:
        earlier = (*before.earlier, (len(known_entries), before.state))[-MOST_EARLIER:]
    state = _from_earlier(earlier, entries, start=start)
    reading = JournalReading(
        start=start,
        state=state,
        findings=_shortfalls(state, journal=journal, file=file),
        summed_before=_summed(journal, before, head=head),
        entries=entries,
        earlier=earlier,
    )
    return _Known(head=head, reading=reading)


def _from_earlier(
    earlier: Sequence[tuple[int, JournalState]],
    entries: tuple[JournalEntry, ...],
    *,
    start: Holdings,
) -> JournalState:
    """What entries come to, from the newest state on that the rest of them can follow."""
    for number, state in reversed(earlier):
        if can_follow(state, entries[number:]):
            return added_up(state, entries[number:])
    return added_up(JournalState(held=start), entries)


def _summed(journal: Journal, before: JournalReading, *, head: Head) -> int:
    """Lines of which the sum is kept in the journal by now."""
    if head.number - before.summed_before < BETWEEN_CHECKPOINTS:
        return before.summed_before
    kept = journal.checkpoint()
    return before.summed_before if kept is None else kept.head.number


def _on_day(
    journal: Journal, reading: JournalReading, *, day: datetime.date, file: str
) -> JournalReading:
    """What the entries that are at hand came to at the end of a day."""
    state = added_up(JournalState(held=reading.start), reading.entries or (), until=day)
    short = _shortfalls(state, journal=journal, file=file)
    return replace(reading, state=state, findings=short)


def _read_anew(
    journal: Journal,
    *,
    start: Holdings,
    file: str,
    until: datetime.date | None = None,
    whole: bool = False,
) -> JournalReading:
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
    return JournalReading(
        start=start,
        state=state,
        findings=(*altered, *_shortfalls(state, journal=journal, file=file)),
        summed_before=before,
        is_altered=bool(altered),
    )


def _shortfalls(state: JournalState, *, journal: Journal, file: str) -> tuple[Finding, ...]:
    return tuple(
        below_nought(each, journal=Place(file=file, line=_line_of(journal, each), column=1))
        for each in state.shortfalls
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
    every = (*every_entry(journal, reading), entry)
    return _from_earlier(reading.earlier, every, start=reading.start)


def every_entry(journal: Journal, reading: JournalReading) -> tuple[JournalEntry, ...]:
    """All entries of a journal that was read. Raises UnreadableLineError, and StoreError."""
    return tuple(entries_of(journal)) if reading.entries is None else reading.entries


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
