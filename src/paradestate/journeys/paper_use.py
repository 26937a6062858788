"""What each paper is for, and whose eyes: the one list of what may leave its owner's hands."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum


class Purpose(StrEnum):
    """Where a paper is used."""

    BENCH = "at the bench"
    STANDS = "on the stands"
    TRAY = "in the tray"
    TONIGHT = "for tonight"
    CLUB = "for the club"


class Eyes(StrEnum):
    """Whose eyes a paper is for."""

    OWNER = "private"
    VISITORS = "for visitors"
    """It names what stands there, and so isn't for an opponent before the game."""
    ANYBODY = "may be handed over"
    """Made from a list of what may be seen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """What a paper is for, and whose eyes."""

    purpose: Purpose
    eyes: Eyes = Eyes.OWNER
    """Private as long as nothing else is said: whatever counts stands gives the force away."""


BENCH = Use(purpose=Purpose.BENCH)
STANDS = Use(purpose=Purpose.STANDS)
TRAY = Use(purpose=Purpose.TRAY)
TONIGHT = Use(purpose=Purpose.TONIGHT)

USES: Mapping[str, Use] = {
    "parade state": BENCH,
    "templates": BENCH,
    "stock-take sheet": BENCH,
    "job cards": BENCH,
    "colour cards": BENCH,
    "purchase slips": BENCH,
    "labels": STANDS,
    "rear marks": STANDS,
    "tray plans": TRAY,
    "packing list": TRAY,
    "box list": TRAY,
    "markers": TONIGHT,
    "key card": TONIGHT,
    "private sheet": TONIGHT,
    "opponents sheet": Use(purpose=Purpose.TONIGHT, eyes=Eyes.ANYBODY),
    "umpires sheet": TONIGHT,
    "state board": TONIGHT,
    "fire missions": TONIGHT,
    "request slips": TONIGHT,
    "decision chart": TONIGHT,
    "roll record": TONIGHT,
    "message slips": TONIGHT,
    "troops list": Use(purpose=Purpose.CLUB),
    "club notice": Use(purpose=Purpose.CLUB, eyes=Eyes.VISITORS),
    "show labels": Use(purpose=Purpose.CLUB, eyes=Eyes.VISITORS),
}
"""Name of a paper to its use."""


def use_of(name: str) -> Use:
    """The use of a paper; that of a private one for tonight where the list doesn't have it."""
    return USES.get(name, TONIGHT)


def may_be_handed_over(name: str) -> bool:
    """Whether even the opponent may read a paper."""
    return use_of(name).eyes is Eyes.ANYBODY
