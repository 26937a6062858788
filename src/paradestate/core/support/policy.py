"""A fall-back: what to ask for first, and what then, as a chart of decisions."""

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from paradestate.core.game import Purchase


@dataclass(frozen=True, slots=True, kw_only=True)
class Take:
    """The end of the chart: what is bought without asking, and what that is worth."""

    purchases: tuple[Purchase, ...]
    points: int
    """Points left before they are paid."""
    worth: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Granted:
    """What follows when so many are allowed."""

    allowed: int
    """The most that may be taken; nought: refused."""
    chance: Fraction
    takes: Purchase | None
    """What is best taken of that; None where nothing is."""
    then: "Step"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """A request that the dice decide."""

    purchase: Purchase
    points: int
    """Points left before it is asked."""
    worth: Fraction
    """Mean worth of all that is still to come, by the best play."""
    outcomes: tuple[Granted, ...]
    """Greatest first; their chances add up to 1."""


Step: TypeAlias = Ask | Take


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstChoice:
    """What the best play comes to when this is asked for first; None: nothing is asked at all."""

    purchase: Purchase | None
    worth: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Tipping:
    """The nearest worth of one number of an entry at which another first choice is as good."""

    entry: str
    choice: str
    number: int
    worth: Fraction
    """What the owner says."""
    down_to: Fraction | None
    """The first choice stays the best down to this worth; None: however little it is worth."""
    up_to: Fraction | None
    """And up to this; None: however much."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fallback:
    """The best play from a number of points on, with what else could be asked first."""

    points: int
    worth: Fraction
    """Mean worth by the best play."""
    chart: Step
    first_choices: tuple[FirstChoice, ...]
    """Best first."""
    tippings: tuple[Tipping, ...] = ()
