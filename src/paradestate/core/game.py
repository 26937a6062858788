"""Games: what there is to spend, and what the battalion itself costs."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from typing import TypeAlias

from paradestate.core.dice import NOUGHT, Dice, LookUp
from paradestate.core.scenario import Arrival


@dataclass(frozen=True, slots=True, kw_only=True)
class Purchase:
    """So many of an entry, with one choice for all of them."""

    entry: str
    number: int
    choice: str = ""


Allowance: TypeAlias = Dice | LookUp[int]
"""Points to spend: what is rolled, or what is looked up for a roll."""


def allowance_roll(allowance: Allowance) -> Dice:
    """The dice that are rolled for the points."""
    return allowance.roll if isinstance(allowance, LookUp) else allowance


@dataclass(frozen=True, slots=True, kw_only=True)
class Game:
    """A kind of game that the owner plays."""

    name: str
    allowance: Allowance = NOUGHT
    """Nought in a game without points."""
    posture: str
    weight: Fraction = Fraction(1)
    """How often it is played, against the others."""
    numbers: Mapping[str, int] = field(default_factory=dict)
    plan: tuple[Purchase, ...] = ()
    strengths: Mapping[str, LookUp[Fraction]] = field(default_factory=dict)
    """Formation to the share of its stands that takes the field, rolled for each of them."""
    arrivals: Mapping[str, Arrival] = field(default_factory=dict)
    """Formation or stand to when each of them comes onto the table."""
    by_hand: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CostByNumber:
    """Points by how many of a formation are raised."""

    by: str
    points: Mapping[int, int]


FormationCost: TypeAlias = int | CostByNumber
"""What the force costs before any supporting troops, in points."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Grade:
    """A quality scale and its points; a negative number is a refund."""

    name: str
    usual: str
    points: Mapping[str, int]
    by_hand: str = ""


class ReserveMethod(StrEnum):
    """How a reserve is kept."""

    NAMED = "named"
    UNCOMMITTED = "uncommitted"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reserves:
    """How much may be kept back."""

    method: ReserveMethod
    most: Fraction
    """Greatest share of the formations `of`."""
    of: str
    by_hand: str = ""
