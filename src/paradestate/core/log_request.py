"""What is to be logged, as it was said, and what must be known to write it down."""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field

from paradestate.core.holdings import Staged
from paradestate.core.journal import JournalState
from paradestate.core.journal_entry import EntryKind
from paradestate.core.play.event import Played
from paradestate.core.source import Source
from paradestate.core.work.kept_forecast import KeptForecast


@dataclass(frozen=True, slots=True, kw_only=True)
class LogRequest:
    """What happened, as it was said."""

    id: str
    kind: EntryKind
    written: datetime.datetime
    on: datetime.date
    force: str = ""
    figures: Mapping[str, int] = field(default_factory=dict)
    staged: Staged = field(default_factory=dict)
    """Of a count of several stages at once: kind, then stage, to number."""
    from_stage: str = ""
    to_stage: str = ""
    stand: str = ""
    stands: tuple[str, ...] = ()
    """Several stands of one pattern that were brought on alike."""
    minutes: int | None = None
    source: str = ""
    """From whom it was ordered, or came."""
    expected: datetime.date | None = None
    """The day on which what was ordered is to come."""
    wanted: datetime.date | None = None
    """The day on which a stand that goes back to be repaired is wanted again."""
    forecasts: tuple[KeptForecast, ...] = ()
    """Of a forecast that is kept."""
    played: Played | None = None
    """Of what happened in a game."""
    note: str = ""
    struck_out: str = ""
    """Id of an entry."""

    @property
    def said(self) -> frozenset[str]:
        """Which of the options were used."""
        values = {
            "figures": self.figures,
            "staged": self.staged,
            "from": self.from_stage,
            "to": self.to_stage,
            "stand": self.stand,
            "stands": self.stands,
            "minutes": self.minutes is not None,
            "source": self.source,
            "expected": self.expected,
            "wanted": self.wanted,
        }
        return frozenset(name for name, value in values.items() if value)


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedStand:
    """A stand of the force as it is modelled."""

    pattern: str
    figures: Mapping[str, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Desk:
    """What must be known to write an entry down."""

    kinds: tuple[str, ...]
    """Figure kinds."""
    stages: tuple[str, ...]
    stands: Mapping[str, NamedStand]
    """By their names in the force."""
    state: JournalState
    """At the end of the day that the entry holds for."""
    today: datetime.date
    wanted: Mapping[str, int] = field(default_factory=dict)
    """Kind to figures of the whole force, for a promise that names none."""
    sources: Mapping[str, Source] = field(default_factory=dict)
    """From whom figures are bought, with their packs."""
