"""Writing down what happened.

holdings on that day -> desk -> entry drafted -> checked against all others -> safe on disk
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from paradestate.core.finding import Finding, Level, stops
from paradestate.core.journal import JournalState, Promise, added_up, struck_out
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.journal_text import read_entry
from paradestate.core.log import drafted, says_the_same
from paradestate.core.log_finding import other_entry, struck_already, takes_too_much, unclear_entry
from paradestate.core.log_request import LogRequest
from paradestate.core.promise import broken_promises, promise_findings
from paradestate.journeys.desk import Laid, cupboard_of, desk_of_collection, desk_of_force
from paradestate.journeys.holdings import HeldCollection, holdings, start_of
from paradestate.journeys.journal import (
    JournalReading,
    every_entry,
    new_shortfalls,
    read_journal,
    with_entry,
    write,
)
from paradestate.journeys.memory import NOTHING, Memory
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
    """Whether the same entry was there already; then nothing was added."""
    before: JournalState = JournalState()
    """What was held at the end of the entry's day without it."""
    state: JournalState = JournalState()
    """What all entries come to now."""


def log(
    folder: Path, *, today: datetime.date, request: LogRequest, memory: Memory = NOTHING
) -> Logged:
    """Writes an entry into the journal of a collection, and says what is held then.

    Raises StoreError where it can't be written, and FileError.
    """
    known = holdings(folder, today=today, memory=memory)
    if known.state is None:
        return Logged(findings=known.findings, texts=known.texts)
    force = known.collection.force_of(folder)
    asked = replace(request, force=force or "")
    if force is None:
        laid = desk_of_collection(known.forces, request=asked, state=known.state, today=today)
    else:
        read = known.forces[force]
        laid = desk_of_force(
            folder, read, request=asked, state=known.state, today=today, memory=memory
        )
    if laid.desk is None:
        return Logged(findings=laid.findings, texts=known.texts)
    done, reading = _done(known, request=asked, laid=laid, memory=memory)
    doubts = dict.fromkeys((*known.findings, *reading.findings))
    told = (found for found in doubts if found.level is not Level.STOP)
    own = () if done.entry is None or done.was_there else laid.findings
    return replace(done, findings=(*told, *own, *done.findings), texts=known.texts)


def _done(
    known: HeldCollection, *, request: LogRequest, laid: Laid, memory: Memory
) -> tuple[Logged, JournalReading]:
    """What is written; a slip makes no journal where none is, so that is looked into first."""
    address = known.collection.address
    if not known.collection.has_journal:
        with opened(address, writing=False) as journal:
            reading = _read(journal, known, request=request, memory=memory)
            tried = _weighed(journal, known, reading=reading, request=request, laid=laid)
        if tried.entry is None:
            return tried, reading
    with opened(address, writing=True) as journal:
        reading = _read(journal, known, request=request, memory=memory)
        done = _weighed(journal, known, reading=reading, request=request, laid=laid)
        if done.entry is not None and not done.was_there:
            write(journal, reading, entry=done.entry, state=done.state)
    return done, reading


def _read(
    journal: Journal, known: HeldCollection, *, request: LogRequest, memory: Memory
) -> JournalReading:
    """The journal added up; whole where the entry changes what was added up long ago."""
    start, file = start_of(known.forces), str(known.collection.address)
    reading = read_journal(journal, start=start, file=file, memory=memory)
    comes_late = request.on < reading.state.last_day or request.kind is EntryKind.STRUCK_OUT
    if comes_late and reading.summed_before and reading.entries is None:
        return read_journal(journal, start=start, file=file, whole=True)
    return reading


def _weighed(
    journal: Journal,
    known: HeldCollection,
    *,
    reading: JournalReading,
    request: LogRequest,
    laid: Laid,
) -> Logged:
    """The entry as it is to be written, weighed against all others."""
    there = journal.link(request.id)
    if there is not None:
        stored = read_entry(there.text, id=there.id)
        if stored.force != request.force or not says_the_same(stored, request):
            return Logged(findings=(other_entry(stored, sent=request),))
        return Logged(findings=(), entry=stored, was_there=True, state=reading.state)
    asked, unclear = _with_whole_id(journal, request, reading=reading)
    if laid.desk is None or unclear:
        return Logged(findings=unclear)
    before = _state_on(journal, reading, day=request.on)
    draft, findings = drafted(asked, replace(laid.desk, state=before))
    if draft is None:
        return Logged(findings=findings)
    state = with_entry(journal, reading, entry=draft)
    # The first of each pile: what comes after it lacks the same figures.
    firsts = {(s.name, s.stage): s for s in reversed(new_shortfalls(reading.state, state))}
    if firsts:
        return Logged(findings=tuple(takes_too_much(each) for each in firsts.values()))
    kept = tuple(_of_promises(draft, known, before=reading.state, after=state, laid=laid))
    if stops(kept):
        return Logged(findings=stops(kept))
    return Logged(findings=(*findings, *kept), entry=draft, before=before, state=state)


def _state_on(journal: Journal, reading: JournalReading, *, day: datetime.date) -> JournalState:
    if day >= reading.state.last_day:
        return reading.state
    start = JournalState(held=reading.start)
    # Of days to come it says what is known today, for what is to be told of the clock.
    past = added_up(start, every_entry(journal, reading), until=day)
    return replace(past, last_day=reading.state.last_day)


def _with_whole_id(
    journal: Journal, request: LogRequest, *, reading: JournalReading
) -> tuple[LogRequest, tuple[Finding, ...]]:
    """The request with the id of which only the beginning was typed."""
    if request.kind is not EntryKind.STRUCK_OUT:
        return request, ()
    fitting = journal.ids_beginning(request.struck_out.lower(), MOST_OFFERED)
    if len(fitting) != 1:
        return request, (unclear_entry(request.struck_out, fitting=fitting),)
    if fitting[0] in struck_out(every_entry(journal, reading)):
        return request, (struck_already(fitting[0]),)
    return replace(request, struck_out=fitting[0]), ()


def _of_promises(
    entry: JournalEntry,
    known: HeldCollection,
    *,
    before: JournalState,
    after: JournalState,
    laid: Laid,
) -> Iterator[Finding]:
    cupboard = cupboard_of(known.forces, after.held, parts=laid.parts)
    if entry.promised:
        new = Promise(day=entry.on, force=entry.force, figures=entry.promised, note=entry.note)
        yield from promise_findings(new, before.promises, cupboard=cupboard)
    elif after.promises and entry.kind is not EntryKind.STRUCK_OUT:
        yield from broken_promises(
            after.promises,
            since=entry.on,
            before=cupboard_of(known.forces, before.held, parts={}),
            after=cupboard,
        )
