"""The list of boxes with what it would cost to buy again what is in them.

A box is worth what its figures cost each by the pack that is cheapest for them alone, carriage left
out. All together cost what the cheapest order of everything costs; that is another sum, for packs
hold several kinds, and carriage and discounts go by the parcel.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.money import Currency, half_up, money_text
from paradestate.core.paper.paper import Draft
from paradestate.core.receipt import exchange_rate
from paradestate.core.sentence.wording import capital, counted, plural
from paradestate.core.source import Source
from paradestate.core.unit_price import UnitPrice


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """Figures that are owned and lie in one box."""

    name: str
    figures: Mapping[str, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxRow:
    """A box in words."""

    name: str
    number: int
    holds: str
    worth: str | None
    without_price: str
    """What in it no source sells alone; empty where all has a price."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KindRow:
    """A kind of figure that is owned."""

    name: str
    number: int
    each: str
    """By which pack it is reckoned."""
    worth: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxList:
    """The whole list."""

    boxes: tuple[BoxRow, ...]
    kinds: tuple[KindRow, ...]
    figures: int
    total: str
    """Of the cheapest order of everything; empty where there is none."""
    sure: str
    parts: str | None
    """What all kinds come to by the price of one."""
    unsold: str
    """What no source sells at all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Prices:
    """What a figure costs alone."""

    by_kind: Mapping[str, UnitPrice]
    sources: Mapping[str, Source]
    currency: Currency

    def each(self, kind: str) -> Fraction | None:
        """One figure, in minor units of the force's currency; None where nobody sells it alone."""
        found = self.by_kind.get(kind)
        if found is None:
            return None
        rate = exchange_rate(self.sources[found.source], self.currency)
        return Fraction(found.price, found.number) * rate

    def worth(self, figures: Mapping[str, int]) -> str | None:
        """So many figures, rounded once, without those that have no price; None where none has."""
        prices = {kind: self.each(kind) for kind in figures}
        if all(price is None for price in prices.values()):
            return None
        total = sum((price * figures[k] for k, price in prices.items() if price), Fraction(0))
        return money_text(half_up(total), self.currency)


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole:
    """What everything together would cost new."""

    total: str
    sure: str
    unsold: Mapping[str, int]


def box_list(boxes: Sequence[Box], *, prices: Prices, whole: Whole) -> Draft[BoxList]:
    """The list; none where nothing is owned."""
    owned: dict[str, int] = {}
    for box in boxes:
        for kind, number in box.figures.items():
            owned[kind] = owned.get(kind, 0) + number
    if not any(owned.values()):
        return Draft(shown=None)
    return Draft(
        shown=BoxList(
            boxes=tuple(_box(box, prices) for box in boxes if any(box.figures.values())),
            kinds=tuple(_kinds(owned, prices)),
            figures=sum(owned.values()),
            total=whole.total,
            sure=whole.sure,
            parts=prices.worth(owned),
            unsold=counted(whole.unsold),
        )
    )


def _box(box: Box, prices: Prices) -> BoxRow:
    figures = {kind: number for kind, number in box.figures.items() if number}
    without = {kind: number for kind, number in figures.items() if prices.each(kind) is None}
    return BoxRow(
        name=capital(box.name),
        number=sum(figures.values()),
        holds=capital(counted(figures)),
        worth=prices.worth(figures),
        without_price=counted(without),
    )


def _kinds(owned: Mapping[str, int], prices: Prices) -> Iterator[KindRow]:
    for kind, number in owned.items():
        if number:
            yield KindRow(
                name=capital(plural(kind)),
                number=number,
                each=_price_words(prices.by_kind.get(kind)),
                worth=prices.worth({kind: number}),
            )


def _price_words(price: UnitPrice | None) -> str:
    """A price as a pack: `£8.00 for 12, South S3`."""
    if price is None:
        return "not sold alone"
    money = money_text(price.price, price.currency)
    each = money if price.number == 1 else f"{money} for {price.number}"
    return f"{each}, {price.source} {price.pack}"
