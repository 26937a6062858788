"""An entry as it stands in one game: prices, limits and conditions, with everything resolved."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from paradestate.core.support.entry import Availability, Limit

NO_CHOICE = ""
"""Stands for the choice where an entry leaves none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """What may be bought of one entry in one game, for how many points, under which conditions.

    All who judge, count or weigh purchases read these; none of them reads the entry.
    """

    name: str
    cost: Mapping[int, int]
    """Number taken to points, in this game and at these grades."""
    choices: Mapping[str, int] = field(default_factory=lambda: {NO_CHOICE: 0})
    """Choice to points added for each one taken."""
    repeats_cost_more: tuple[int, ...] = ()
    least: int = 0
    """Purchases that a force must hold."""
    most: int | None = 1
    """Purchases that a force may hold; None: any number."""
    limit: Limit | None = field(default=None, compare=False)
    """`least` and `most` as they are written, for saying them; the sums don't read it."""
    needs: Mapping[str, int] = field(default_factory=dict)
    """Entry to the purchases of it that must be there; all must hold."""
    needs_any_of: Mapping[str, int] = field(default_factory=dict)
    """As `needs`, of which one must hold; what opens an entry is among them."""
    needs_for_each: Mapping[str, int] = field(default_factory=dict)
    """Entry to the purchases of it that must be there for each purchase of this one."""
    bars: frozenset[str] = frozenset()
    """Entries that can't be there with it, whichever of the two says so."""
    group: str = ""
    availability: Availability | None = None
    loses_points: bool = False
    """Whether what was asked for is paid even when it is refused."""
    worths: Mapping[str, Mapping[int, Fraction]] = field(default_factory=dict)
    """The owner's opinion: choice ("" for any) to total number taken to worth."""

    @property
    def has_worths(self) -> bool:
        """Whether the owner says a worth of it."""
        return any(self.worths.values())

    def price(self, number: int, *, choice: str = NO_CHOICE) -> int:
        """Points for one purchase of `number` with `choice`, as the first of its entry."""
        return self.cost[number] + number * self.choices[choice]

    @property
    def cheapest(self) -> int:
        """The fewest points that one purchase of it can cost, whichever it is."""
        prices = (self.price(number, choice=each) for number in self.cost for each in self.choices)
        return min(prices) + min((0, *self.repeats_cost_more))

    def is_prepaid(self, number: int, *, choice: str = NO_CHOICE) -> bool:
        """Whether the points of a request are gone even when it is refused.

        Points that it would bring never come without it.
        """
        is_rolled = self.availability is not None
        return is_rolled and self.loses_points and self.price(number, choice=choice) > 0

    def greatest_number(self, *, allowed: int) -> int:
        """The greatest number with a price that is allowed; nought: refused."""
        return max((number for number in self.cost if number <= allowed), default=0)

    def surcharge(self, purchases: int) -> int:
        """Points that so many purchases cost above the sum of their prices."""
        steps = self.repeats_cost_more
        if not steps or purchases < 2:  # noqa: PLR2004 - the first purchase is never dearer
            return 0
        known = steps[: purchases - 1]
        return sum(known) + steps[-1] * (purchases - 1 - len(known))

    def worth(self, totals: Mapping[str, int]) -> Fraction:
        """The owner's worth of so many taken, by choice.

        A total that isn't listed has the worth of the greatest listed total below it, or nought.
        """
        every = {**totals, NO_CHOICE: sum(totals.values())}
        return sum(
            (listed_worth(table, every.get(choice, 0)) for choice, table in self.worths.items()),
            Fraction(0),
        )


def listed_worth(table: Mapping[int, Fraction], total: int) -> Fraction:
    """The worth of the greatest listed total that isn't above this one, or nought."""
    listed = [number for number in table if number <= total]
    return table[max(listed)] if listed else Fraction(0)
