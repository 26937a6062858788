"""Legal forces by points, and single ones with what their owner holds them worth."""

from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.game import Purchase


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelForces:
    """Legal forces of one number of points."""

    points: int
    legal: int
    """Forces that cost at most so much."""
    spending_all: int
    """Forces that cost exactly so much."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ValuedForce:
    """A legal force with its points and the owner's worth of it."""

    purchases: tuple[Purchase, ...]
    points: int
    worth: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class SearchedForce:
    """The best legal force that a search found."""

    force: ValuedForce | None
    """None: nothing is legal; or, where the search was stopped, none was found until then."""
    bound: Fraction | None
    """No legal force is worth more; None: nothing is legal."""
    is_proved: bool
    """Whether it has the greatest worth, and of those that have it the fewest points."""
