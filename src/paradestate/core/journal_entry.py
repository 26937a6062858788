"""One entry of the journal: something that happened, when, and what it did to the holdings."""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from paradestate.core.holdings import Holdings
from paradestate.core.play.event import Played
from paradestate.core.work.kept_forecast import KeptForecast


class EntryKind(StrEnum):
    """What sort of thing happened."""

    COUNTED = "counted"
    ORDERED = "ordered"
    RECEIVED = "received"
    CANCELLED = "cancelled"
    MOVED = "moved"
    LOST = "lost"
    SOLD = "sold"
    LENT = "lent"
    RETURNED = "returned"
    SESSION = "session"
    PROMISED = "promised"
    NOTED = "noted"
    FORECAST = "forecast"
    PLAYED = "played"
    STRUCK_OUT = "struck-out"


BRINGS_ON = frozenset({EntryKind.MOVED, EntryKind.SESSION})
"""Kinds that bring things from one stage to another."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JournalEntry:
    """An entry as it is kept. It says all that it did, so that no force is needed to add it up."""

    id: str
    """UUID (RFC 9562) made by whoever wrote it."""
    kind: EntryKind
    written: datetime.datetime
    """In UTC, to the second, by the clock of whoever wrote it."""
    on: datetime.date
    """The day that it holds for, by the calendar of whoever wrote it."""
    force: str = ""
    """The force of the collection that it was written for; empty in a collection of one."""
    leaves: Holdings = Holdings()
    """What goes out of the holdings."""
    comes: Holdings = Holdings()
    """What comes into them; of a count, what there is."""
    stand: str = ""
    """Name of the stand of the force that it is about."""
    stands: tuple[str, ...] = ()
    """Names of several that it brought on alike: each has an equal part of what it did."""
    minutes: int = 0
    """Work of a session."""
    promised: Mapping[str, int] = field(default_factory=dict)
    """Kind to figures that the force is to have on that day."""
    source: str = ""
    """From whom something was ordered, or came, or won't come."""
    packs: Mapping[str, int] = field(default_factory=dict)
    """Packs of the source that were ordered, by name."""
    ordered: Mapping[str, int] = field(default_factory=dict)
    """Kind to figures that were ordered, those in packs included."""
    cancelled: Mapping[str, int] = field(default_factory=dict)
    """Kind to figures that were on order and won't come; the note says why."""
    expected: datetime.date | None = None
    """The day on which they are to come."""
    wanted: datetime.date | None = None
    """The day on which a stand that goes back to an earlier stage is wanted again."""
    forecasts: tuple[KeptForecast, ...] = ()
    """What was forecast of each milestone on that day."""
    played: Played | None = None
    """What happened in a game."""
    note: str = ""
    struck_out: str = ""
    """Id of the entry that no longer counts."""
