"""Booking in a parcel against what was ordered.

folder -> source -> packs as figures, less shorts and miscasts -> one entry in the journal
"""

import datetime
from dataclasses import dataclass, field, replace
from pathlib import Path

from paradestate.core.choice import unknown_choice
from paradestate.core.delivery import Delivery, Received, delivery_note, unpacked
from paradestate.core.finding import Finding, stops
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_finding import unwritten
from paradestate.core.log_request import LogRequest
from paradestate.journeys.check import checked
from paradestate.journeys.log import Logged, log
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Parcel:
    """A parcel to be booked in."""

    id: str
    """UUID of the entry that is to be written."""
    written: datetime.datetime
    on: datetime.date
    delivery: Delivery
    note: str = ""
    """What else the entry is to say."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BookedIn:
    """What was written, and what the parcel came to; None with the stops that prevent it."""

    logged: Logged
    received: Received | None = None
    findings: tuple[Finding, ...] = field(default_factory=tuple)
    """About the parcel and its entry."""


def receive(
    folder: Path, *, today: datetime.date, parcel: Parcel, memory: Memory = NOTHING
) -> BookedIn:
    """Writes what really came of a parcel as one entry, with what is claimed in its note.

    Where nothing of it is of use it is a note alone. Raises StoreError and FileError.
    """
    force = checked(folder, today=today, memory=memory).force
    source = force.sources.get(parcel.delivery.source)
    if source is None:
        unknown = unknown_choice(parcel.delivery.source, force.sources, what="source")
        return _refused((unwritten(unknown),))
    received, findings = unpacked(parcel.delivery, source)
    if received is None:
        return _refused(findings)
    done = log(folder, today=today, request=_request(parcel, received), memory=memory)
    told = (*findings, *done.findings) if done.entry is not None else done.findings
    return BookedIn(
        logged=replace(done, findings=told),
        received=received,
        findings=told,
    )


def _refused(findings: tuple[Finding, ...]) -> BookedIn:
    return BookedIn(logged=Logged(findings=findings), findings=stops(findings))


def _request(parcel: Parcel, received: Received) -> LogRequest:
    said = delivery_note(parcel.delivery, received)
    return LogRequest(
        id=parcel.id,
        kind=EntryKind.RECEIVED if received.figures else EntryKind.NOTED,
        written=parcel.written,
        on=parcel.on,
        figures=received.figures,
        source=parcel.delivery.source if received.figures else "",
        note=f"{said}; {parcel.note}" if parcel.note else said,
    )
