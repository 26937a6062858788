"""The odds of a plan: whether the points suffice, whether all of it comes, what may turn up."""

from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.certainty import Certainty, Exact
from paradestate.core.game import Purchase
from paradestate.core.support.chances import Chances


@dataclass(frozen=True, slots=True, kw_only=True)
class Turnout:
    """One way that a plan may come out once all its rolls are made."""

    chance: Fraction
    purchases: tuple[Purchase, ...]
    """What comes, in the order of the plan."""
    points_free: int
    """Points of the plan that come free again: those of what was refused, where they are kept."""
    points_lost: int
    """Points of the plan that are paid for nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Roll:
    """One roll of the plan: what it decides, and the chance that all that was asked is allowed."""

    entry: str
    asked: int
    allowed: Chances
    """How many are allowed, never more than asked."""
    shared_roll: str = ""
    """The roll that it has in common with others, where it has."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanOdds:
    """The exact odds of a plan."""

    plan: tuple[Purchase, ...]
    cost: int
    allowance: Chances
    """Points left: the allowance less formation cost and grades."""
    paid_by: tuple[int, ...]
    """Points left with which it may be taken: they pay for it, and groups keep to their shares."""
    affordable: Fraction
    """The chance of such points."""
    available: Fraction
    """The chance that every entry is allowed at least its number, if the points suffice."""
    together: Fraction
    """The chance of both: all or nothing."""
    rolls: tuple[Roll, ...]
    turnouts: tuple[Turnout, ...]
    """Likeliest first, if the points suffice; their chances add up to 1.

    Empty where there are too many to be worked out; a plan of nothing has one.
    """
    asking_order: tuple[str, ...]
    """Entries that are rolled for, in the best order to ask; one taken twice is there twice."""
    order_certainty: Certainty = Exact()

    @property
    def mean_lost(self) -> Fraction:
        """The mean of the points that are paid for nothing, if the points suffice."""
        return sum((each.chance * each.points_lost for each in self.turnouts), Fraction(0))
