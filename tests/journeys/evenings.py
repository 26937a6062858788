"""An evening with the bundled example, written down line by line."""

import datetime
from itertools import count
from pathlib import Path

from paradestate.journeys.choosing import TermsTyped
from paradestate.journeys.game.pen import Pen
from paradestate.journeys.game.play import Wrote, opened
from paradestate.journeys.memory import Memory

TODAY = datetime.date(2026, 11, 27)
NOW = datetime.datetime(2026, 11, 27, 19, 42, tzinfo=datetime.UTC)
IDS = count(1)
MEMORY = Memory()
"""So that the files of a test are read once."""


def pen(folder: Path, *, of: str = "") -> Pen:
    """A pen with ids that are told apart by their beginnings."""
    return Pen(
        folder=folder,
        today=TODAY,
        now=NOW,
        new_id=lambda: f"{next(IDS):08x}-0000-4000-8000-000000000000",
        of=of,
        memory=MEMORY,
    )


def begun(
    folder: Path, *, game: str = "whole-day attack", grades: tuple[str, ...] = (), **more: str
) -> Wrote:
    """A game of the example, opened."""
    return begun_with(pen(folder), game=game, grades=grades, **more)


def begun_with(
    pen: Pen, *, game: str = "whole-day attack", grades: tuple[str, ...] = (), **more: str
) -> Wrote:
    """The same with a pen of one's own."""
    typed = TermsTyped(
        numbers=(),
        date=more.pop("date", ""),
        theatre=None,
        wished="",
        game=game,
        grades=grades,
    )
    return opened(pen, typed, **more)


def codes(done: Wrote) -> list[str]:
    """Codes of what was said."""
    return [each.code for each in done.findings]
