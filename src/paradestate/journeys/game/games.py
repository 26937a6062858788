"""All games that were written down of a force, and the one that is meant."""

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import takewhile
from pathlib import Path

from paradestate.core.play.game_record import GameRecord, game_records
from paradestate.journeys.collection import collection_of
from paradestate.journeys.history import ALL, History, history
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Games:
    """All games of a force, with the journal in which they stand."""

    past: History
    records: tuple[GameRecord, ...]
    """Oldest first."""


def games_of(
    folder: Path, *, today: datetime.date, before: str = "", memory: Memory = NOTHING
) -> Games:
    """All games of a force, or as they were before the entry of that id was written.

    Raises StoreError, and FileError.
    """
    past = history(folder, today=today, last=ALL, memory=memory)
    force = collection_of(folder).force_of(folder)
    entries = takewhile(lambda each: each.id != before, past.entries[::-1])
    return Games(past=past, records=game_records(tuple(entries), force=force or ""))


def game_beginning(records: Sequence[GameRecord], beginning: str) -> GameRecord | None:
    """The one game whose id begins so; None where there is none, or more than one."""
    fitting = [each for each in records if each.id.startswith(beginning.lower())]
    return fitting[0] if len(fitting) == 1 else None


def game_going_on(
    folder: Path, *, today: datetime.date, memory: Memory = NOTHING
) -> GameRecord | None:
    """The newest game that isn't ended; None where there is none.

    Looked for once as long as nothing is written. Raises StoreError, and FileError.
    """
    newest = history(folder, today=today, last=1, memory=memory).entries
    if not newest:
        return None
    return memory.kept(
        ("game going on", folder, newest[0].id),
        lambda: going_on(games_of(folder, today=today, memory=memory).records),
    )


def going_on(records: Sequence[GameRecord]) -> GameRecord | None:
    """The newest of these games that isn't ended; None where there is none."""
    return next((each for each in reversed(records) if each.ended is None), None)
