"""What baskets of packs cost: whole receipts, with multi-buys, discounts, carriage and exchange.

A larger basket may cost less than a smaller one: carriage may be free, and discount given, from
some value on. So whether more can still be had is judged by a bound from below: all packs at their
best price each, the greatest discount, the least carriage.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import floor

from paradestate.core.advice.basket import Basket
from paradestate.core.money import Currency
from paradestate.core.order import PackName
from paradestate.core.receipt import exchange_rate, lots_of, receipt
from paradestate.core.source import Source


class PackPrices:
    """Prices of packs, in minor units of the force's currency."""

    def __init__(
        self,
        sources: Mapping[str, Source],
        names: Sequence[PackName],
        *,
        currency: Currency,
        most: Sequence[int],
    ) -> None:
        self.names = tuple(names)
        """The packs that are candidates."""
        self._most = tuple(most)
        self._currency = currency
        self._of_source: dict[str, tuple[Source, list[tuple[int, str]]]] = {}
        for place, (source, pack) in enumerate(names):
            self._of_source.setdefault(source, (sources[source], []))[1].append((place, pack))
        self._at_best = [
            min(Fraction(lot.price, lot.size) for lot in lots_of(sources[source].packs[pack]))
            for source, pack in names
        ]
        self._known: dict[tuple[str, tuple[int, ...]], tuple[int, bool]] = {}

    @property
    def most(self) -> Sequence[int]:
        """How many of each can be had, or could be wanted."""
        return self._most

    def cost(self, basket: Basket) -> Fraction:
        """The totals of all sources added up."""
        return Fraction(sum(self._charge(name, basket)[0] for name in self._of_source))

    def can_be_had(self, basket: Basket) -> bool:
        """Whether every source sends what is bought of it, which may be too little."""
        return all(self._charge(name, basket)[1] for name in self._of_source)

    def least(self, basket: Basket) -> Fraction:
        """The bound from below."""
        total = Fraction(0)
        for source, packs in self._of_source.values():
            if not any(basket[place] for place, _ in packs):
                continue
            goods = sum((basket[place] * self._at_best[place] for place, _ in packs), Fraction(0))
            kept = 1 - max(source.discount.values(), default=Fraction(0))
            # A discount is rounded half up, which may take half of a minor unit more off.
            paid = goods * kept - Fraction(1, 2) + _least_carriage(source, goods=goods)
            rate = exchange_rate(source, self._currency)
            total += max(Fraction(0), Fraction(floor(paid * rate - Fraction(1, 2))))
        return total

    def _charge(self, name: str, basket: Basket) -> tuple[int, bool]:
        """The total of one source, and whether it sends so little."""
        source, packs = self._of_source[name]
        numbers = tuple(basket[place] for place, _ in packs)
        if not any(numbers):
            return 0, True
        if (name, numbers) not in self._known:
            bought = {pack: basket[place] for place, pack in packs}
            made = receipt(source, bought, currency=self._currency)
            self._known[name, numbers] = (made.exchanged, made.goods >= source.least_order)
        return self._known[name, numbers]


def _least_carriage(source: Source, *, goods: Fraction) -> int:
    """The least carriage of goods of so much or more."""
    reached = [value for value in source.carriage if value <= goods]
    if not reached:
        return 0
    now = max(reached)
    return min(charge for value, charge in source.carriage.items() if value >= now)
