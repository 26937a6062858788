"""What a source charges: goods, discount, carriage and total, to the minor unit.

Goods are the sum of pack prices, multi-buys taken as often as that is cheapest. Then the discount
of the highest step reached, on all goods, rounded half up; then the carriage of the highest step
reached by goods before discount. Nothing bought, nothing charged.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeVar

from paradestate.core.money import Currency, Minor, decimal_places, half_up
from paradestate.core.source import Pack, Source

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class ReceiptLine:
    """So many of one pack. Cost in minor units of the source's currency."""

    pack: str
    number: int
    cost: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Receipt:
    """One source's till receipt, in minor units of its own currency."""

    source: str
    currency: Currency
    lines: tuple[ReceiptLine, ...]
    goods: int
    discount_rate: Fraction
    discount: int
    carriage: int
    exchanged: int
    """The total in minor units of the force's currency."""

    @property
    def total(self) -> int:
        """What is paid, in the source's currency."""
        return self.goods - self.discount + self.carriage


def receipt(source: Source, packs: Mapping[str, int], *, currency: Currency) -> Receipt:
    """What `source` charges for so many of its packs, by name; `currency` is the force's."""
    lines = tuple(
        ReceiptLine(pack=name, number=number, cost=cost_of(source.packs[name], number=number))
        for name, number in packs.items()
        if number
    )
    goods = sum(line.cost for line in lines)
    rate = step_reached(source.discount, goods, default=Fraction(0))
    discount = half_up(goods * rate)
    carriage = int(step_reached(source.carriage, goods, default=Minor(0))) if lines else 0
    total = goods - discount + carriage
    return Receipt(
        source=source.name,
        currency=source.currency,
        lines=lines,
        goods=goods,
        discount_rate=rate if lines else Fraction(0),
        discount=discount,
        carriage=carriage,
        exchanged=half_up(total * exchange_rate(source, currency)),
    )


def exchange_rate(source: Source, currency: Currency) -> Fraction:
    """Minor units of `currency` for one minor unit of the source's; 1 where no rate is given."""
    if source.rate is None:
        return Fraction(1)
    places = decimal_places(currency) - decimal_places(source.currency)
    return source.rate * Fraction(10) ** places


def cost_of(pack: Pack, *, number: int) -> int:
    """The least that so many of one pack cost, with its multi-buys."""
    best = [0] * (number + 1)
    for count in range(1, number + 1):
        ways = [best[count - 1] + pack.price]
        ways += [
            best[count - size] + price for size, price in pack.multibuy.items() if size <= count
        ]
        best[count] = min(ways)
    return best[number]


def step_reached(steps: Mapping[Minor, T], goods: int, *, default: T) -> T:
    """The value of the highest step that goods reach; a step holds from the value named."""
    reached = [value for value in steps if value <= goods]
    return steps[max(reached)] if reached else default
