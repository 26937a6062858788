"""Prices that contradict one another: more for less, and parts that are cheaper than the whole.

One piece of code for `check`, which looks at every table of the files, and for the proof of a list,
which looks at what is on offer in a game.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from paradestate.core.sentence.wording import capital, spelled
from paradestate.core.support.offer import Offer


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceDoubt:
    """A number of an entry that costs more than it need, and what costs less."""

    number: int
    points: int
    """Of the number that nobody would pay for."""
    parts: tuple[int, ...]
    """What costs less: one greater number, or purchases that come to the same number together."""
    parts_points: int
    choice: str = ""
    """The choice at which it is so; empty where it is so at any."""
    in_reach: bool = True
    """Whether so many purchases may be had; else the price is only odd."""


def price_doubts(offer: Offer) -> tuple[PriceDoubt, ...]:
    """Every doubt about the prices of an entry, numbers rising.

    (a) No number costs more than a greater one. (b) c(a + b) is not above c(a) + c(b), nor that of
    a number above its equal parts together, with what repeats cost more.
    """
    return (*_falling(offer), *_undercut(offer))


def _falling(offer: Offer) -> Iterator[PriceDoubt]:
    """Choices add so much for each one taken, so that they may turn a rising table."""
    said: set[tuple[int, int]] = set()
    for choice, more in sorted(offer.choices.items(), key=lambda each: each[1], reverse=True):
        for fewer, number in pairwise(sorted(offer.cost)):
            price, greater = (offer.price(each, choice=choice) for each in (fewer, number))
            if greater < price > 0 and (fewer, number) not in said:
                said.add((fewer, number))
                yield PriceDoubt(
                    number=fewer,
                    points=price,
                    parts=(number,),
                    parts_points=greater,
                    choice=choice if more else "",
                )


def _undercut(offer: Offer) -> Iterator[PriceDoubt]:
    """What choices add is the same for the parts as for the whole, so that they play no part."""
    for whole in sorted(offer.cost):
        cheapest = min(
            (
                (sum(offer.cost[part] for part in parts) + offer.surcharge(len(parts)), parts)
                for parts in _parts(offer, whole)
            ),
            key=lambda each: (each[0], len(each[1])),
            default=None,
        )
        if cheapest is not None and cheapest[0] < offer.cost[whole]:
            points, parts = cheapest
            yield PriceDoubt(
                number=whole,
                points=offer.cost[whole],
                parts=parts,
                parts_points=points,
                in_reach=offer.most is None or len(parts) <= offer.most,
            )


def _parts(offer: Offer, whole: int) -> Iterator[tuple[int, ...]]:
    """Two priced numbers that come to the whole, and one of them several times over."""
    for part in sorted(offer.cost, reverse=True):
        rest = whole - part
        if part >= rest and rest in offer.cost:
            yield part, rest
        if part < rest and part > 0 and whole % part == 0:
            yield (part,) * (whole // part)


def price_steps(offer: Offer) -> tuple[int, ...]:
    """What each priced number costs more than the one below it; the first its whole price."""
    prices = [offer.cost[number] for number in sorted(offer.cost)]
    return tuple(price - below for below, price in pairwise((0, *prices)))


def doubt_words(doubt: PriceDoubt) -> str:
    """A doubt in words: `3 cost 9, but 2 + 1 cost 8`."""
    if len(set(doubt.parts)) == 1 and len(doubt.parts) > 2:  # noqa: PLR2004 - two are added up
        parts = f"{spelled(len(doubt.parts))} times {doubt.parts[0]}"
    else:
        parts = " + ".join(map(str, doubt.parts))
    what = f"{doubt.number} with {doubt.choice}" if doubt.choice else f"{doubt.number}"
    if len(doubt.parts) == 1 and not doubt.choice:
        return f"{parts} cost {doubt.parts_points}, but {what} cost {doubt.points}"
    return f"{what} cost {doubt.points}, but {parts} cost {doubt.parts_points}"


def doubt_effect(doubt: PriceDoubt) -> str:
    """What a doubt comes to."""
    if doubt.in_reach:
        return "Nobody would pay the higher price."
    times = spelled(len(doubt.parts))
    return f"{capital(times)} purchases of it can't be had, so the price is only odd."
