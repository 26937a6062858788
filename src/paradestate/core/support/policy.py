"""A fall-back: what to ask for first, and what then, as a chart of decisions."""

from collections.abc import Mapping
from dataclasses import dataclass, field
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
    also: Mapping[str, int] = field(default_factory=dict)
    """How many the same roll allows of others that share it and may still be asked for."""
    is_tied: bool = False
    """Whether it is as good to take another number, or nothing."""
    worth: Fraction = Fraction(0)
    """Mean worth of what is taken and of all that is still to come."""
    if_all: Fraction | None = None
    """The same if all that is allowed were taken, where less is taken."""
    is_open: bool = False
    """Whether what is taken is decided only at the end of the chart."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """A request that the dice decide."""

    purchase: Purchase
    points: int
    """Points left before it is asked."""
    worth: Fraction
    """Mean worth of all that is still to come, by the best play."""
    outcomes: tuple[Granted, ...]
    """Greatest first; their chances add up to 1. Empty where the chart goes no further."""
    before: tuple[Purchase, ...] = ()
    """What is bought without a roll before it is asked, because the request needs it."""
    is_tied: bool = False
    """Whether another decision is as good."""


Step: TypeAlias = Ask | Take


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstChoice:
    """What the best play comes to when this is asked for first; None: nothing is asked at all."""

    purchase: Purchase | None
    worth: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Tipping:
    """The nearest worth of one number of an entry at which another first choice is as good.

    Where one is as good already: at which one is better.
    """

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
    declared: tuple[Purchase, ...] = ()
    """Everything that is named before the first roll, where the game asks for that.

    The chart then asks for each in turn and takes nothing; its ends say what is kept and bought.
    """


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelChoice:
    """The best play from one number of points on, in short."""

    points: int
    worth: Fraction
    """Mean worth by the best play."""
    first: Purchase | None
    """What is asked for first; None: nothing is asked at all."""
