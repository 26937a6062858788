"""What is owned: what the files say was there at the start, and everything that happened since.

collection -> each force checked -> start -> journal read -> holdings
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from paradestate.core.finding import Finding, in_reading_order, stops
from paradestate.core.holdings import Holdings, together
from paradestate.core.journal import JournalState
from paradestate.core.journal_entry import JournalEntry
from paradestate.core.journal_finding import (
    fitting,
    lent_out,
    ordered_out,
    stands_differ,
    unknown_names,
)
from paradestate.core.on_order import figures_on_order
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.collection import Collection, collection_of
from paradestate.journeys.memory import NOTHING, Memory

if TYPE_CHECKING:  # start-up time: the database is loaded only where there is a journal
    from paradestate.journeys.journal import JournalReading


@dataclass(frozen=True, slots=True, kw_only=True)
class HeldCollection:
    """A collection with what it holds; the state is None where it can't be known at all."""

    collection: Collection
    forces: Mapping[str, Checked]
    state: JournalState | None
    findings: tuple[Finding, ...]
    entries: tuple[JournalEntry, ...] | None = None
    """All entries of the journal, where they are at hand."""

    @property
    def texts(self) -> Mapping[str, str]:
        """File to its text, of all forces."""
        return {file: text for read in self.forces.values() for file, text in read.texts.items()}

    @property
    def is_stopped(self) -> bool:
        """Whether a finding prevents any sum over the holdings."""
        return bool(stops(self.findings))

    @property
    def stages(self) -> tuple[str, ...]:
        """The stages of all forces; those that only a later force has come last."""
        every = (stage for read in self.forces.values() for stage in read.force.bench.stages)
        return tuple(dict.fromkeys(every))


def holdings(
    folder: Path,
    *,
    today: datetime.date,
    on: datetime.date | None = None,
    whole: bool = False,
    memory: Memory = NOTHING,
) -> HeldCollection:
    """What a collection holds at the end of a day; without one, what all entries come to."""
    collection = collection_of(folder)
    forces = {
        name: checked(path, today=today, memory=memory) for name, path in collection.forces.items()
    }
    return held(collection, forces=forces, on=on, whole=whole, memory=memory)


def held(
    collection: Collection,
    *,
    forces: Mapping[str, Checked],
    on: datetime.date | None = None,
    whole: bool = False,
    memory: Memory = NOTHING,
) -> HeldCollection:
    """What a collection holds whose forces are read already."""
    if not collection.has_journal or any(read.is_stopped for read in forces.values()):
        return memory.kept(
            ("held", collection.root),
            lambda: _without_journal(collection, forces=forces),
            rests_on=tuple(forces.values()),
        )
    start = start_of(forces)
    from paradestate.journeys.journal import read_journal  # noqa: PLC0415 - start-up time
    from paradestate.store.opening import opened  # noqa: PLC0415 - the same

    with opened(collection.address, writing=False) as journal:
        reading = read_journal(
            journal,
            start=start,
            file=str(collection.address),
            until=on,
            whole=whole,
            memory=memory,
        )
    return memory.kept(
        ("held", collection.root, on),
        lambda: _held(collection, forces=forces, reading=reading),
        rests_on=(reading, *forces.values()),
    )


def _without_journal(collection: Collection, *, forces: Mapping[str, Checked]) -> HeldCollection:
    """What is held where nothing was written down yet, or where a force can't be summed up."""
    stopped = [found for read in forces.values() for found in stops(read.findings)]
    return HeldCollection(
        collection=collection,
        forces=forces,
        state=None if stopped else JournalState(held=start_of(forces)),
        findings=in_reading_order(stopped),
    )


def _held(
    collection: Collection, *, forces: Mapping[str, Checked], reading: "JournalReading"
) -> HeldCollection:
    findings = (*reading.findings, *_doubts(reading.state, collection, forces=forces))
    return HeldCollection(
        collection=collection,
        forces=forces,
        state=reading.state if reading.is_understood else None,
        findings=in_reading_order(findings),
        entries=reading.entries,
    )


def start_of(forces: Mapping[str, Checked]) -> Holdings:
    """What the files of all forces say was owned at the start."""
    return together(
        *(
            Holdings(figures=read.force.stock, stands=read.force.stock_stands)
            for read in forces.values()
        )
    )


def _doubts(
    state: JournalState, collection: Collection, *, forces: Mapping[str, Checked]
) -> Iterator[Finding]:
    journal = collection.place
    known = {
        "figures": {kind for read in forces.values() for kind in read.force.figures},
        "stands": {name for read in forces.values() for name in read.force.stands},
    }
    owned = together(state.held, state.lent)
    yield from unknown_names(owned, known=known, journal=journal)
    for pattern in owned.stands:
        made = {
            name: tuple(sorted(stand.modelled.items()))
            for name, read in forces.items()
            if (stand := read.force.stands.get(pattern))
        }
        if len(set(made.values())) > 1:
            yield stands_differ(pattern, made, journal=journal)


def checked_with_journal(folder: Path, *, today: datetime.date) -> Checked:
    """The force of a folder with all findings, every line of its journal verified."""
    read = checked(folder, today=today)
    return with_holdings(read, folder, today=today, whole=True)


def with_holdings(
    read: Checked,
    folder: Path,
    *,
    today: datetime.date,
    on: datetime.date | None = None,
    lent_too: bool = False,
    ordered_too: bool = False,
    whole: bool = False,
    memory: Memory = NOTHING,
) -> Checked:
    """A force that was read, with what is owned by now in place of what its files say.

    With `on` what was owned at the end of that day; with `lent_too` what is away counts as well;
    with `ordered_too` what is on order counts as if it were here in its packet; with `whole` every
    line of the journal is verified, however many there are.
    """
    collection = collection_of(folder)
    own = collection.force_of(folder)
    if own is None or read.is_stopped:
        return read
    others = {
        name: checked(path, today=today, memory=memory)
        for name, path in collection.forces.items()
        if name != own
    }
    forces = {own: read, **others}
    known = held(collection, forces=forces, on=on, whole=whole, memory=memory)
    return memory.kept(
        ("stocked", folder, lent_too, ordered_too, on),
        lambda: _with_what_is_held(
            read, known, own=own, lent_too=lent_too, ordered_too=ordered_too
        ),
        rests_on=(read, known),
    )


def _with_what_is_held(
    read: Checked, known: HeldCollection, *, own: str, lent_too: bool, ordered_too: bool
) -> Checked:
    if known.state is None:
        return replace(read.with_findings(*known.findings), texts={**read.texts, **known.texts})
    state = known.state
    lent = state.lent if lent_too else Holdings()
    to_come = _in_packet(state, read) if ordered_too else Holdings()
    journal = known.collection.place
    usable, findings = fitting(together(state.held, lent, to_come), read.force, journal=journal)
    if state.lent and not lent_too:
        findings = (*findings, lent_out(state.lent, journal=journal))
    ordered = ordered_out(state.on_order, counts_as_there=ordered_too, journal=journal)
    return replace(
        read,
        force=replace(
            read.force,
            stock=usable.figures,
            stock_stands=usable.stands,
            worked={stand: holds for (force, stand), holds in state.worked.items() if force == own},
            on_order=state.on_order,
            repairs=tuple(each for each in state.repairs if each.force == own),
        ),
        findings=in_reading_order((*read.findings, *known.findings, *findings, *ordered)),
    )


def _in_packet(state: JournalState, read: Checked) -> Holdings:
    """What is on order as if it had come."""
    stage = read.force.bench.stages[0]
    figures = figures_on_order(state.on_order)
    return Holdings(figures={kind: {stage: number} for kind, number in figures.items()})
