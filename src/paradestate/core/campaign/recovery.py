"""What the owner's file says of stands that were put out of action, once the game is over."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from paradestate.core.dice import Dice, Totals


@dataclass(frozen=True, slots=True, kw_only=True)
class Recovery:
    """The roll that says whether a stand comes back."""

    roll: Dice
    on: Totals
    """Totals on which it comes back; on all others it is lost."""
    promoted_on: Totals | None = None
    """Totals on which it has gained experience as well; None: it never does by this roll."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Campaign:
    """How losses are carried on from game to game."""

    recovery: Mapping[str, Recovery] = field(default_factory=dict)
    """Stand pattern to its roll; a pattern that is left out comes back without one."""
    rolled_once_for: str = ""
    """Formation of which all stands of one pattern share a roll; empty: each has its own."""
    never_back: tuple[str, ...] = ()
    """What the owner calls a stand out of action that is lost without a roll, such as captured."""
    replacements: Mapping[str, int] = field(default_factory=dict)
    """Stand pattern to how many of it may be sent up over the whole campaign."""
    by_hand: str = ""
