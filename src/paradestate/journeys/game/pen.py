"""Who writes a game down, and how its events become entries of the journal, one after the other."""

import datetime
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import count
from pathlib import Path
from uuid import UUID, uuid5

from paradestate.core.finding import Finding
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_request import LogRequest
from paradestate.core.play.event import Event, Played
from paradestate.core.play.game_record import GameRecord
from paradestate.journeys.history import entry_of_id
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
    on: datetime.date | None = None
    """The day of the evening; None for today."""
    device: str = ""
    of: str = ""
    """The beginning of the game's id; empty: the newest that is open."""
    entry: str = ""
    """UUID of the first line that it writes, where that is known beforehand; a line that bears it
    already is written as of then, so that what is sent twice is written once."""
    memory: Memory = NOTHING

    def there(self, id_: str) -> JournalEntry | None:
        """The entry of an id, where it is written already. Raises StoreError, and FileError."""
        return entry_of_id(self.folder, id_, today=self.today, memory=self.memory)


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
    were_there: bool = False
    """Whether all of them were there already, so that nothing was added."""


def sent_again(pen: Pen, entry: str) -> Pen:
    """A pen whose first line bears a UUID, and whose others bear ones that follow from it.

    Raises StoreError, and FileError.
    """
    there = pen.there(entry)
    day = pen.today if there is None else min(there.on, pen.today)
    return replace(pen, entry=entry, today=day, new_id=_ids_from(entry).__next__)


def _ids_from(entry: str) -> Iterator[str]:
    """A UUID, and after it as many as are needed (RFC 9562, version 5)."""
    yield entry
    for number in count(1):
        yield str(uuid5(UUID(entry), str(number)))


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
        were_there=bool(logged) and all(each.was_there for each in logged),
    )


def _request(pen: Pen, line: Line) -> LogRequest:
    return LogRequest(
        id=line.id or pen.new_id(),
        kind=EntryKind.PLAYED,
        written=pen.now.replace(microsecond=0),
        on=pen.on or pen.today,
        played=Played(game=line.game, event=line.event, device=pen.device, counter=line.counter),
    )
