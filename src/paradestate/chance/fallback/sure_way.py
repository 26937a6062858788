"""Ways to end up with purchases of one sure entry: how many, for how many points, worth what."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction

from paradestate.chance.fallback.prospect import is_refund
from paradestate.chance.fallback.rolled import options_of
from paradestate.core.game import Purchase
from paradestate.core.support.offer import NO_CHOICE, Offer


@dataclass(frozen=True, slots=True, kw_only=True)
class SureWay:
    """So many purchases of an entry, those held already among them."""

    number: int
    points: int
    """What is still to be paid for it."""
    bought: tuple[Purchase, ...]
    """What is still to be bought."""
    totals: Mapping[str, int] = field(default_factory=dict)
    """How many are taken, by choice; equal where the owner's worths make no difference."""


def sure_ways(
    offer: Offer, *, held: tuple[Purchase, ...], points: int, exact_number: bool
) -> tuple[SureWay, ...]:
    """All ways to end up with purchases of the entry for at most `points` more.

    Of those that lead to the same number and the same worth, whatever the worths are, only the one
    of fewest points is kept, and of those the first. Where the number makes no difference to others
    (not `exact_number`), ways with fewer purchases serve as well.
    """
    start = SureWay(
        number=len(held),
        points=0,
        bought=(),
        totals=_told(offer, {choice: _total(held, choice) for choice in offer.worths}),
    )
    every, newest = [start], [start]
    cheapest = {tuple(start.totals.values()): 0}
    while newest:
        newest = _with_one_more(offer, newest, points=points)
        if not exact_number and not is_refund(offer):
            # More purchases for no fewer points and no other worth lead nowhere better.
            newest = [each for each in newest if _is_cheaper(each, cheapest)]
            cheapest |= {tuple(each.totals.values()): each.points for each in newest}
        every += newest
    first: dict[object, SureWay] = {}
    for way in sorted(every, key=lambda way: (way.points, way.number)):
        totals = _listed(offer, way.totals)
        key = (way.number if exact_number else 0, tuple(totals.values()))
        first.setdefault(key, replace(way, totals=totals))
    return tuple(first.values())


def _is_cheaper(way: SureWay, cheapest: Mapping[tuple[int, ...], int]) -> bool:
    known = cheapest.get(tuple(way.totals.values()))
    return known is None or way.points < known


def _with_one_more(offer: Offer, known: list[SureWay], *, points: int) -> list[SureWay]:
    """What comes of one more purchase: of those with equal totals only the cheapest."""
    newer: dict[tuple[int, ...], SureWay] = {}
    for way in known:
        number = way.number + 1
        if offer.most is not None and number > offer.most:
            continue
        step = offer.surcharge(number) - offer.surcharge(way.number)
        for option in options_of(offer):
            more = SureWay(
                number=number,
                points=way.points + option.price + step,
                bought=(*way.bought, option.purchase),
                totals=_told(
                    offer,
                    {
                        choice: total + _total((option.purchase,), choice)
                        for choice, total in way.totals.items()
                    },
                ),
            )
            key = tuple(more.totals.values())
            # Later purchases of what brings points may pay for this one.
            if (more.points <= points or is_refund(offer)) and (
                key not in newer or more.points < newer[key].points
            ):
                newer[key] = more
    return list(newer.values())


def _total(purchases: tuple[Purchase, ...], choice: str) -> int:
    return sum(each.number for each in purchases if choice in (NO_CHOICE, each.choice))


def _told(offer: Offer, totals: Mapping[str, int]) -> Mapping[str, int]:
    """Totals, but none above the greatest number that the owner gave a worth."""
    return {
        choice: min(total, max(offer.worths[choice], default=0)) for choice, total in totals.items()
    }


def _listed(offer: Offer, totals: Mapping[str, int]) -> Mapping[str, int]:
    """Totals down to a number that the owner gave a worth, which is worth as much; or nought."""
    return {
        choice: max((number for number in offer.worths[choice] if number <= total), default=0)
        for choice, total in totals.items()
    }


def listed_totals(offer: Offer, purchases: tuple[Purchase, ...]) -> Mapping[str, int]:
    """The numbers, by choice, for which the owner's worths are said when so much is taken."""
    return _listed(offer, {choice: _total(purchases, choice) for choice in offer.worths})


def worth_of(offer: Offer, totals: Mapping[str, int]) -> Fraction:
    """The owner's worth of totals by choice, `NO_CHOICE` being all of them."""
    return sum(
        (offer.worths[choice].get(total, Fraction(0)) for choice, total in totals.items()),
        Fraction(0),
    )
