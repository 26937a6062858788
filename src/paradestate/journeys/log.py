"""Writing down what happened.

holdings on that day -> desk -> entry drafted -> checked against all others -> safe on disk
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from paradestate.core.finding import Finding, stops
from paradestate.core.journal import JournalState, Promise, added_up
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.journal_text import read_entry
from paradestate.core.log import drafted
from paradestate.core.log_finding import takes_too_much, unclear_entry
from paradestate.core.log_request import LogRequest
from paradestate.core.promise import Cupboard, promise_findings
from paradestate.journeys.desk import Laid, desk_of_collection, desk_of_force
from paradestate.journeys.holdings import HeldCollection, holdings, start_of
from paradestate.journeys.journal import (
    JournalReading,
    entries_of,
    new_shortfalls,
    read_journal,
    with_entry,
    write,
)
from paradestate.store.journal import Journal
from paradestate.store.opening import opened

MOST_OFFERED = 5
"""Entries listed where the beginning of an id fits several."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Logged:
    """What was written, or None with the stops that prevent it."""

    findings: tuple[Finding, ...]
    texts: Mapping[str, str] = field(default_factory=dict)
    entry: JournalEntry | None = None
    was_there: bool = False
    """Whether an entry of this id was there already; then nothing was added."""
    state: JournalState = JournalState()
    """What all entries come to now."""


def log(folder: Path, *, today: datetime.date, request: LogRequest) -> Logged:
    """Writes an entry into the journal of a collection, and says what is held then.

    Raises StoreError where it can't be written, and FileError.
    """
    known = holdings(folder, today=today, on=request.on)
    if known.state is None:
        return Logged(findings=known.findings, texts=known.texts)
    force = known.collection.force_of(folder)
    asked = replace(request, force=force or "")
    if force is None:
        laid = desk_of_collection(known.forces, request=asked, state=known.state, today=today)
    else:
        read = known.forces[force]
        laid = desk_of_force(folder, read, request=asked, state=known.state, today=today)
    if laid.desk is None:
        return Logged(findings=laid.findings, texts=known.texts)
    # Drafted once before anything is opened for writing, so that a slip leaves no journal behind.
    draft, findings = drafted(asked, laid.desk)
    if draft is None:
        return Logged(findings=findings, texts=known.texts)
    with opened(known.collection.address, writing=True) as journal:
        done = _logged(journal, known, request=asked, laid=laid)
    return replace(done, findings=(*known.findings, *done.findings), texts=known.texts)


def _logged(journal: Journal, known: HeldCollection, *, request: LogRequest, laid: Laid) -> Logged:
    """What is written in one transaction, in which nobody else can write."""
    reading = read_journal(
        journal, start=start_of(known.forces), file=str(known.collection.address)
    )
    there = journal.link(request.id)
    if there is not None:
        entry = read_entry(there.text, id=there.id)
        return Logged(findings=reading.findings, entry=entry, was_there=True, state=reading.state)
    asked, unclear = _with_whole_id(journal, request)
    if laid.desk is None or unclear:
        return Logged(findings=unclear)
    desk = replace(laid.desk, state=_state_on(journal, reading, day=request.on))
    draft, findings = drafted(asked, desk)
    if draft is None:
        return Logged(findings=findings)
    state = with_entry(journal, reading, entry=draft)
    more = (
        *(takes_too_much(each) for each in new_shortfalls(reading.state, state)),
        *_promised_findings(draft, reading.state, cupboard=laid.cupboard),
    )
    if stops(more):
        return Logged(findings=(*findings, *more))
    write(journal, reading, entry=draft, state=state)
    return Logged(findings=(*findings, *more), entry=draft, state=state)


def _state_on(journal: Journal, reading: JournalReading, *, day: datetime.date) -> JournalState:
    if day >= reading.state.last_day:
        return reading.state
    start = JournalState(held=reading.start)
    return added_up(start, tuple(entries_of(journal)), until=day)


def _with_whole_id(journal: Journal, request: LogRequest) -> tuple[LogRequest, tuple[Finding, ...]]:
    """The request with the id of which only the beginning was typed."""
    if request.kind is not EntryKind.STRUCK_OUT:
        return request, ()
    fitting = journal.ids_beginning(request.struck_out, MOST_OFFERED)
    if len(fitting) != 1:
        return request, (unclear_entry(request.struck_out, fitting=fitting),)
    return replace(request, struck_out=fitting[0]), ()


def _promised_findings(
    entry: JournalEntry, before: JournalState, *, cupboard: Cupboard | None
) -> tuple[Finding, ...]:
    if cupboard is None:
        return ()
    new = Promise(day=entry.on, force=entry.force, figures=entry.promised, note=entry.note)
    return promise_findings(new, before.promises, cupboard=cupboard)
