"""An evening with the example that is half over, for whoever looks at its sheet."""

import datetime
from itertools import count
from pathlib import Path

from paradestate.core.play.event import Subject, Told
from paradestate.journeys.choosing import TermsTyped
from paradestate.journeys.game.pen import Line, Pen, write_lines
from paradestate.journeys.game.play import opened, roll, strike, take
from paradestate.journeys.memory import Memory

TERMS = TermsTyped(numbers=(), date="", theatre=None, wished="", game="whole-day attack", grades=())
GAME = "0e000002-0000-4000-8000-000000000000"
SLIP = "0e000004-0000-4000-8000-000000000000"
"""The line that is struck out."""


class Clerk:
    """Writes with ids that are always the same, each line some minutes after the one before."""

    def __init__(self, folder: Path, *, begin: datetime.datetime) -> None:
        self._folder, self._now = folder, begin
        self._ids = count(1)
        self._memory = Memory()

    def pen(self) -> Pen:
        self._now += datetime.timedelta(minutes=2)
        return Pen(
            folder=self._folder,
            today=self._now.date(),
            now=self._now,
            new_id=lambda: f"0e{next(self._ids):06x}-0000-4000-8000-000000000000",
            memory=self._memory,
        )


def half_over(folder: Path, *, begin: datetime.datetime, is_disputed: bool = False) -> None:
    """Terms, rolls with one struck out, what was taken, and an offer that waits for an answer."""
    clerk = Clerk(folder, begin=begin)
    opened(clerk.pen(), TERMS, opponent="Ommerath")
    roll(clerk.pen(), "allowance", numbers=(6, 2), roller="Anna", witness="Bert")
    done = roll(clerk.pen(), "light tanks=2", numbers=(3,), roller="Anna", witness="Bert")
    assert [each.id for each in done.entries] == [SLIP]
    strike(clerk.pen(), SLIP, because="the die was cocked")
    roll(clerk.pen(), "light tanks=2", numbers=(7,), roller="Anna", witness="Bert")
    take(clerk.pen(), "light tanks=2")
    done = roll(clerk.pen(), "anti-tank guns=2", numbers=(10,), roller="Anna", witness="Bert")
    assert done.game is not None
    assert done.game.now.take is not None
    if is_disputed:
        subject = Subject("ammunition", "No 1 Company / 1 Platoon")
        tellings = (Line(event=Told(subject=subject, value=each), game=GAME) for each in "21")
        write_lines(clerk.pen(), tellings)
