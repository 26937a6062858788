"""What a figure costs alone: the pack that holds nothing else and is cheapest by the figure."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.money import Currency
from paradestate.core.receipt import exchange_rate
from paradestate.core.source import Pack, Source


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitPrice:
    """A pack of one kind; its price in minor units of the source's currency, carriage left out."""

    source: str
    pack: str
    price: int
    number: int
    """Figures that it holds."""
    currency: Currency


def unit_prices(
    kinds: Mapping[str, int], sources: Mapping[str, Source], *, currency: Currency
) -> Mapping[str, UnitPrice]:
    """Kind to the pack by which one figure of it is cheapest; kinds sold only mixed are left out.

    One pack is bought at a time: no multi-buy, discount or carriage counts. Prices of several
    currencies are compared in `currency`; of two that are as cheap the first in the files is taken.
    """
    found = {kind: _cheapest(kind, sources, currency=currency) for kind in kinds}
    return {kind: price for kind, price in found.items() if price is not None}


def _cheapest(kind: str, sources: Mapping[str, Source], *, currency: Currency) -> UnitPrice | None:
    offers = list(_offers(kind, sources, currency=currency))
    return min(offers, key=lambda offer: offer[0])[1] if offers else None


def _offers(
    kind: str, sources: Mapping[str, Source], *, currency: Currency
) -> Iterator[tuple[Fraction, UnitPrice]]:
    for source in sources.values():
        for pack in source.packs.values():
            number = _alone(pack, kind)
            if number:
                each = Fraction(pack.price, number) * exchange_rate(source, currency)
                yield (
                    each,
                    UnitPrice(
                        source=source.name,
                        pack=pack.name,
                        price=pack.price,
                        number=number,
                        currency=source.currency,
                    ),
                )


def _alone(pack: Pack, kind: str) -> int:
    """Figures of a kind in a pack that holds no other; else nought."""
    held = {name: number for name, number in pack.holds.items() if number}
    return held.get(kind, 0) if len(held) == 1 else 0
