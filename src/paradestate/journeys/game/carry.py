"""What a carry file has to know: the force as the table page shows it, and the games that are open.

folder -> force at the table -> games that are open -> what was written of each
"""

import datetime
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from paradestate.core.finding import Finding, stops
from paradestate.core.sentence.wording import day_words
from paradestate.journeys.game.table import table_force
from paradestate.journeys.game.table_entries import known_record, lacking, sent_record
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """The content of a carry file as a record of JSON, or None with the stops that prevent it."""

    findings: tuple[Finding, ...]
    texts: Mapping[str, str]
    content: Mapping[str, Any] | None = None


def carry(
    folder: Path, *, today: datetime.date, new_id: Callable[[], str], memory: Memory = NOTHING
) -> Carried:
    """The content of a carry file of its own. Raises StoreError, and FileError.

    Each has another id, under which a phone keeps what is tapped in it.
    """
    answer = table_force(folder, today=today, memory=memory)
    found, texts = answer.checked.findings, answer.checked.texts
    if answer.force is None:
        return Carried(findings=found, texts=texts)
    known = lacking(folder, today=today, game=None, after="", memory=memory)
    if stops(known.findings):
        return Carried(findings=known.findings, texts=texts)
    games = [each for each in known.games if not each.is_ended]
    content = {
        "carry": new_id(),
        "name": folder.resolve().name,
        "title": answer.force["title"],
        "made": day_words(today),
        "force": answer.force,
        "games": [known_record(each) for each in games],
        "entries": [sent_record(each) for each in known.entries],
    }
    return Carried(findings=(*found, *known.findings), texts=texts, content=content)
