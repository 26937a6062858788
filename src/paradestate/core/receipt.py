"""What a source charges: goods, discount, carriage and total, to the minor unit.

Goods are the sum of pack prices, multi-buys taken as often as that is cheapest. Then the discount
of the highest step reached, on all goods, rounded half up; then the carriage of the highest step
reached by goods before discount. Nothing bought, nothing charged. A total in another currency is
exchanged once, rounded half up.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeVar

from paradestate.core.money import Currency, Minor, decimal_places, half_up
from paradestate.core.source import Pack, Source

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderLine:
    """So many of one pack. Cost in minor units of the source's currency."""

    source: str
    pack: str
    number: int
    cost: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Receipt:
    """One source's till receipt, in minor units of its own currency."""

    source: str
    currency: Currency
    lines: tuple[OrderLine, ...]
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Charge:
    """What a source makes of goods of some value, in minor units of its own currency."""

    goods: int
    discount_rate: Fraction
    discount: int
    carriage: int

    @property
    def total(self) -> int:
        """What is paid."""
        return self.goods - self.discount + self.carriage


NOTHING_BOUGHT = Charge(goods=0, discount_rate=Fraction(0), discount=0, carriage=0)


def charge(source: Source, *, goods: int) -> Charge:
    """What is paid for goods of that value, bought in one order."""
    rate = step_reached(source.discount, goods, default=Fraction(0))
    return Charge(
        goods=goods,
        discount_rate=rate,
        discount=half_up(goods * rate),
        carriage=int(step_reached(source.carriage, goods, default=Minor(0))),
    )


def receipt(source: Source, packs: Mapping[str, int], *, currency: Currency) -> Receipt:
    """What `source` charges for so many of its packs, by name; `currency` is the force's."""
    lines = tuple(
        OrderLine(source=source.name, pack=name, number=number, cost=cost_of(pack, number=number))
        for name, pack in source.packs.items()
        if (number := packs.get(name, 0))
    )
    goods = sum(line.cost for line in lines)
    charged = charge(source, goods=goods) if lines else NOTHING_BOUGHT
    return Receipt(
        source=source.name,
        currency=source.currency,
        lines=lines,
        goods=goods,
        discount_rate=charged.discount_rate,
        discount=charged.discount,
        carriage=charged.carriage,
        exchanged=half_up(charged.total * exchange_rate(source, currency)),
    )


def exchange_rate(source: Source, currency: Currency) -> Fraction:
    """Minor units of `currency` for one minor unit of the source's.

    Raises ValueError where there is no rate between two currencies: a stop comes before that.
    """
    if source.rate is None:
        if source.currency != currency:
            raise ValueError(f"no rate from {source.currency} of {source.name} to {currency}")
        return Fraction(1)
    places = decimal_places(currency) - decimal_places(source.currency)
    return source.rate * Fraction(10) ** places


def step_reached(steps: Mapping[Minor, T], goods: int, *, default: T) -> T:
    """The value of the highest step that goods reach; a step holds from the value named."""
    reached = [value for value in steps if value <= goods]
    return steps[max(reached)] if reached else default


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """So many packs of one sort for one price."""

    size: int
    price: int


def lots_of(pack: Pack) -> tuple[Lot, ...]:
    """How a pack is sold: the multi-buys that save something, the best a pack first, one last."""
    singly = min(pack.price, pack.multibuy.get(1, pack.price))
    kept = [Lot(size=1, price=singly)]
    for size, price in sorted(pack.multibuy.items()):
        if price < _cost(size, kept):
            kept = [Lot(size=size, price=price), *kept]
            kept.sort(key=lambda lot: (Fraction(lot.price, lot.size), lot.size))
    return tuple(kept)


def cheaper_from(source: Source) -> tuple[Minor, ...]:
    """The goods values from which an order is sent, or may cost less than a smaller one, rising."""
    found = {source.least_order, *(value for value, rate in source.discount.items() if rate)}
    charges = sorted(source.carriage.items())
    found |= {
        value
        for place, (value, charge) in enumerate(charges)
        if any(charge < before for _, before in charges[:place])
    }
    return tuple(sorted(value for value in found if value > 0))


def cost_of(pack: Pack, *, number: int) -> int:
    """The least that so many of one pack cost, in multi-buys and singly."""
    return _cost(number, lots_of(pack))


def _cost(number: int, lots: Sequence[Lot]) -> int:
    """The least cost of so many packs; the lots stand best first.

    Fewer others than the size of the best lot are ever needed beside it: of so many others some
    make up whole best lots, which are no dearer.
    """
    best, others = lots[0], lots[1:]
    if not others:
        return number * best.price
    beside = (best.size - 1) * max(lot.size for lot in others)
    fewest = max(0, -(-(number - beside) // best.size))
    return min(
        count * best.price + _cost(number - count * best.size, others)
        for count in range(fewest, number // best.size + 1)
    )
