"""A game of the bundled example with stands out of action, written into its journal."""

import datetime
from collections.abc import Iterator
from pathlib import Path
from uuid import UUID

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.core.play.event import Ended, Event, Opened, Played, Subject, Told
from paradestate.journeys.log import log

DAY = datetime.date(2026, 11, 27)
AT = datetime.datetime(2026, 11, 27, 22, 30, tzinfo=datetime.UTC)
GAME = "evening attack"
CAMPAIGN = """\
campaign:
  recovery:
    rifle section: {roll: 1d6, on: 3 or more, promoted on: 6}
  never back: [captured]
  replacements: {rifle section: 1}
"""
SECTIONS = tuple(
    f"No {company} Company / {platoon} Platoon / {section} Section"
    for company in (1,)
    for platoon in (1, 2, 3)
    for section in (1, 2)
)
"""Six rifle sections."""


def ids(start: int) -> Iterator[str]:
    """UUIDs in order."""
    number = start
    while True:
        number += 1
        yield str(UUID(int=(4 << 76) | (8 << 60) | (number << 96) | number))


def play(folder: Path, *events: Event, start: int = 0, on: datetime.date = DAY) -> str:
    """Writes one game, and returns its id."""
    new = ids(start)
    game = next(new)
    for counter, event in enumerate((Opened(game=GAME), *events, Ended()), start=1):
        request = LogRequest(
            id=next(new),
            kind=EntryKind.PLAYED,
            written=datetime.datetime.combine(on, AT.timetz()),
            on=on,
            played=Played(game=game, event=event, counter=counter),
        )
        done = log(folder, today=on, request=request)
        assert done.entry is not None, done.findings
    return game


def out(name: str, how: str = "yes") -> Told:
    return Told(subject=Subject("out", name), value=how)


def with_campaign(folder: Path, text: str = CAMPAIGN) -> Path:
    (folder / "campaign.yaml").write_text(text, encoding="utf-8")
    return folder
