"""Fire missions: what is rolled for each, and when a battery falls silent."""

from dataclasses import dataclass

from paradestate.core.dice import Dice, Totals
from paradestate.core.game import Purchase
from paradestate.core.support.chances import Chances


@dataclass(frozen=True, slots=True, kw_only=True)
class RollOn:
    """A roll, and the totals on which something happens."""

    roll: Dice
    on: Totals


@dataclass(frozen=True, slots=True, kw_only=True)
class Missions:
    """What is rolled for the missions of one purchase, asked for one after the other.

    A mission that doesn't arrive is used up all the same. After each that arrives the battery may
    fall silent; what is left of its missions is then lost.
    """

    arrives: RollOn | None = None
    """None: each arrives."""
    falls_silent: RollOn | None = None
    """None: it never does."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MissionOdds:
    """How many missions of one purchase are fired, if they all are asked for."""

    purchase: Purchase
    fired: Chances
