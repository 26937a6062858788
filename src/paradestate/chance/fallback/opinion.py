"""The owner's worths as whole numbers, as they are or with one of them changed.

A worth that is w becomes w times a unit. With a slope, one is added for each time that the changed
worth counts (or taken away), so that value and slope come out of one sum together: the unit is
larger than any sum of slopes.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from paradestate.chance.fallback.sure_way import listed_totals, worth_of
from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """Another worth of one number of an entry; choice as in the owner's table."""

    entry: str
    choice: str
    number: int
    worth: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Opinion:
    """Worths in whole numbers: so many to one of the owner's."""

    unit: int
    change: Change | None = None
    slope: int = 0
    """1 or -1: added for each time that the changed worth counts."""

    def worth(self, offer: Offer, totals: Mapping[str, int]) -> int:
        """The worth of totals that `listed_totals` gave."""
        worth, slope = worth_of(offer, totals), 0
        change = self.change
        if change is not None and change.entry == offer.name:
            is_there = totals.get(change.choice) == change.number
            if is_there:
                worth += change.worth - offer.worths[change.choice][change.number]
                slope = self.slope
        return (worth * self.unit).numerator + slope

    def worth_taken(self, offer: Offer, purchase: Purchase) -> int:
        """The worth of one purchase and no other of its entry."""
        return self.worth(offer, listed_totals(offer, (purchase,)))


def as_said(offers: Iterable[Offer]) -> Opinion:
    """The owner's worths as they are."""
    return Opinion(unit=_denominator(offers))


def changed(offers: Iterable[Offer], change: Change, *, slope: int, ways: int) -> Opinion:
    """The owner's worths with a change; `ways` is the product of the ways of all rolls."""
    unit = lcm(_denominator(offers), change.worth.denominator) * (2 * ways + 1)
    return Opinion(unit=unit, change=change, slope=slope)


def _denominator(offers: Iterable[Offer]) -> int:
    worths = (
        worth for offer in offers for table in offer.worths.values() for worth in table.values()
    )
    return lcm(1, *(worth.denominator for worth in worths))
