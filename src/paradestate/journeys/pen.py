"""Who writes a game down, and how its events become entries of the journal, one after the other."""

import datetime
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.finding import Finding
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_request import LogRequest
from paradestate.core.play.event import Event, Played
from paradestate.core.play.game_record import GameRecord
from paradestate.journeys.log import Logged, log
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Pen:
    """Who writes, when, and where from new ids come."""

    folder: Path
    today: datetime.date
    now: datetime.datetime
    new_id: Callable[[], str]
    """A UUID, each time another."""
    device: str = ""
    of: str = ""
    """The beginning of the game's id; empty: the newest that is open."""
    memory: Memory = NOTHING


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """An event that is to be written, with its id where that is known beforehand."""

    event: Event
    game: str
    id: str = ""
    counter: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class EntriesWritten:
    """What was written of several requests, and what was said of each, once."""

    findings: tuple[Finding, ...]
    entries: tuple[JournalEntry, ...]


def next_lines(
    pen: Pen, record: GameRecord, *, events: Sequence[Event], first_id: str = ""
) -> tuple[Line, ...]:
    """Events of a game, numbered on from those that this device has told."""
    counter = record.next_counter(pen.device)
    return tuple(
        Line(event=event, game=record.id, counter=counter + place, id="" if place else first_id)
        for place, event in enumerate(events)
    )


def write_lines(pen: Pen, lines: Iterable[Line]) -> EntriesWritten:
    """Writes lines until one can't be. Raises StoreError, and FileError."""
    return write_requests(pen, (_request(pen, line) for line in lines))


def write_requests(pen: Pen, requests: Iterable[LogRequest]) -> EntriesWritten:
    """Writes entries until one can't be. Raises StoreError, and FileError."""
    logged: list[Logged] = []
    for request in requests:
        logged.append(log(pen.folder, today=pen.today, request=request, memory=pen.memory))
        if logged[-1].entry is None:
            break
    return EntriesWritten(
        findings=tuple(dict.fromkeys(found for each in logged for found in each.findings)),
        entries=tuple(each.entry for each in logged if each.entry is not None),
    )


def _request(pen: Pen, line: Line) -> LogRequest:
    return LogRequest(
        id=line.id or pen.new_id(),
        kind=EntryKind.PLAYED,
        written=pen.now.replace(microsecond=0),
        on=pen.today,
        played=Played(game=line.game, event=line.event, device=pen.device, counter=line.counter),
    )
