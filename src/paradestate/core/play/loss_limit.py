"""What the owner's file says of losses while a game goes on: at how many of them what happens.

Nothing happens by itself: an effect is the owner's own words, and what it does is for his rules.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from paradestate.core.formation import Echelon
from paradestate.core.number import percent_text

STANDS, FIGURES, LEADERS = "stands", "figures", "leaders hit"
COUNTED = (STANDS, FIGURES, LEADERS)
"""What may be counted beside the owner's own states."""

SHARES = {
    Fraction(1, 2): "half",
    Fraction(1, 3): "a third",
    Fraction(2, 3): "two thirds",
    Fraction(1, 4): "a quarter",
    Fraction(3, 4): "three quarters",
    Fraction(1): "all",
}
"""Shares that have a name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Threshold:
    """So many losses, or such a share of all that there is to lose."""

    amount: Fraction
    """A share where `is_share`, else a whole number."""
    is_share: bool = False
    is_more: bool = False
    """Whether it takes more than that."""

    def least(self, total: int) -> int:
        """The least losses, of so many, by which it is reached.

        A third of 10 is 3 1/3, which 4 are the first to reach; of 9 it is 3, and 3 reach it. More
        than half of 10 are 6, of 11 also 6.
        """
        exact = self.amount * total if self.is_share else self.amount
        return exact // 1 + 1 if self.is_more else -(-exact // 1)

    def __str__(self) -> str:
        """As the owner writes it: `5`, `more than half`, `2/5`, `30%`."""
        return f"more than {self._amount_text()}" if self.is_more else self._amount_text()

    def _amount_text(self) -> str:
        if not self.is_share:
            return str(self.amount)
        if self.amount in SHARES:
            return SHARES[self.amount]
        is_even = (self.amount * 100).denominator == 1
        return percent_text(self.amount) if is_even else str(self.amount)


@dataclass(frozen=True, slots=True, kw_only=True)
class LossLimit:
    """What happens at so many losses of each body that it is for."""

    at: Mapping[Threshold, str]
    """To the effect in the owner's words."""
    of: str = ""
    """A formation: each of it by itself."""
    echelon: Echelon | None = None
    """Every body of that size by itself; with neither the whole force."""
    count: str = STANDS
    """Stands that are out, figures on them, units whose leader is hit, or units in a state."""
    counts_as: Mapping[str, int] = field(default_factory=dict)
    """Stand pattern to what it counts when it is out, instead of 1 or of its figures."""
    among: str = ""
    """Of units in a state or without leader: only those of this formation; empty: all."""
    supporting_troops: bool = False
    """Whether the stands of those that are taken count as well; of the whole force alone."""
    by_hand: str = ""

    @property
    def counts_stands(self) -> bool:
        """Whether stands that are out are counted, each by itself or by its figures."""
        return self.count in {STANDS, FIGURES}
