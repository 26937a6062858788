"""Stands that went back to an earlier stage, and the day on which they are wanted again."""

import datetime
from dataclasses import dataclass

from paradestate.core.holdings import Holdings, piles


@dataclass(frozen=True, slots=True, kw_only=True)
class Repair:
    """One stand that is in repair."""

    entry: str
    """Id of the entry by which it went back."""
    force: str
    stand: str
    """Its name in the force."""
    day: datetime.date
    """On which it went back."""
    wanted: datetime.date
    """The day on which it is wanted: it has to be finished on the evening before."""
    left: str
    """The stage that it left, and has to reach again."""
    note: str = ""


def is_in_repair(repair: Repair, worked: Holdings) -> bool:
    """Whether a stand still has something at another stage than the one that it left.

    `worked` is what was worked on as that stand, and is there.
    """
    return any(pile.stage != repair.left for pile in piles(worked))
