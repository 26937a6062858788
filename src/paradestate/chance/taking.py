"""The takings of one entry: every multiset of purchases of it, gathered by what tells them apart.

A taking is a number of purchases with their points. How many multisets come to it, and what they
are worth, is found kind by kind (a kind is a priced number with a choice), so that the multisets
themselves are never listed unless one of them is asked for.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NamedTuple

from paradestate.core.game import Purchase
from paradestate.core.support.offer import NO_CHOICE, Offer, listed_worth


class Kind(NamedTuple):
    """One sort of purchase of an entry."""

    number: int
    choice: str
    points: int


class Key(NamedTuple):
    """What is known of some purchases of an entry."""

    purchases: int
    number: int
    """Of the entry, over all of them; stays nought where nobody asks for it."""
    points: int
    """Without what repeats cost more, until the end."""
    totals: tuple[int, ...]
    """Number with each choice that has worths, held at the greatest number that is listed."""


class Taking(NamedTuple):
    """So many purchases for so many points, in `ways` ways."""

    purchases: int
    number: int
    points: int
    ways: int


class ValuedTaking(NamedTuple):
    """So many purchases for so many points that are worth so much, in `ways` ways."""

    purchases: int
    number: int
    points: int
    worth: Fraction
    ways: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Takings:
    """All takings of one offer."""

    offer: Offer
    kinds: tuple[Kind, ...]
    watched: tuple[tuple[str, int], ...]
    """Choice that has worths to the greatest number that is listed."""
    numbered: bool
    """Whether takings of different numbers are told apart."""
    tables: tuple[Mapping[Key, int], ...]
    """After none, one, two ... of the kinds: what is known, and how many ways come to it."""

    def with_kind(self, before: Mapping[Key, int], *, kind: Kind, most: int) -> dict[Key, int]:
        """What may be known once any number of one more kind is added, up to so many in all."""
        after = dict(before)
        for key, ways in before.items():
            for times in range(1, most - key.purchases + 1):
                known = self._more(key, kind=kind, times=times)
                after[known] = after.get(known, 0) + ways
        return after

    def plain(self) -> tuple[Taking, ...]:
        """Every taking with its ways, whatever it is worth."""
        ways: dict[tuple[int, int, int], int] = {}
        for key, number in self.tables[-1].items():
            known = (key.purchases, key.number, self._points(key))
            ways[known] = ways.get(known, 0) + number
        return tuple(
            Taking(purchases, number, points, each)
            for (purchases, number, points), each in ways.items()
        )

    def valued(self) -> tuple[ValuedTaking, ...]:
        """Every taking with its worth."""
        ways: dict[tuple[int, int, int, Fraction], int] = {}
        for key, number in self.tables[-1].items():
            known = (key.purchases, key.number, self._points(key), self._worth(key))
            ways[known] = ways.get(known, 0) + number
        return tuple(
            ValuedTaking(purchases, number, points, worth, each)
            for (purchases, number, points, worth), each in ways.items()
        )

    def purchases_of(self, taking: Taking | ValuedTaking, place: int) -> tuple[Purchase, ...]:
        """The multiset at a place among those of a taking; places are from 0 to its ways."""
        for key, ways in self.tables[-1].items():
            if not self._is(key, taking):
                continue
            if place < ways:
                return tuple(self._unwound(key, place))
            place -= ways
        raise ValueError("a taking has no such place")

    def _is(self, key: Key, taking: Taking | ValuedTaking) -> bool:
        return (
            (key.purchases, key.number) == (taking.purchases, taking.number)
            and self._points(key) == taking.points
            and (not isinstance(taking, ValuedTaking) or self._worth(key) == taking.worth)
        )

    def _unwound(self, key: Key, place: int) -> Iterator[Purchase]:
        """The purchases that lead to `key`, of the kinds from last to first."""
        for kind, before in zip(
            reversed(self.kinds), reversed(self.tables[:-1]), strict=True
        ):
            for earlier, ways in before.items():
                times = key.purchases - earlier.purchases
                if times < 0 or self._more(earlier, kind=kind, times=times) != key:
                    continue
                if place < ways:
                    yield from [self._purchase(kind)] * times
                    key = earlier
                    break
                place -= ways

    def _purchase(self, kind: Kind) -> Purchase:
        return Purchase(entry=self.offer.name, number=kind.number, choice=kind.choice)

    def _more(self, key: Key, *, kind: Kind, times: int) -> Key:
        """What is known after so many more purchases of a kind."""
        number = times * kind.number
        return Key(
            key.purchases + times,
            key.number + number if self.numbered else 0,
            key.points + times * kind.points,
            tuple(
                min(most, total + number) if choice in {NO_CHOICE, kind.choice} else total
                for total, (choice, most) in zip(key.totals, self.watched, strict=True)
            ),
        )

    def _points(self, key: Key) -> int:
        return key.points + self.offer.surcharge(key.purchases)

    def _worth(self, key: Key) -> Fraction:
        worths = self.offer.worths
        return sum(
            (
                listed_worth(worths[choice], total)
                for total, (choice, _) in zip(key.totals, self.watched, strict=True)
            ),
            Fraction(0),
        )


def takings_of(
    offer: Offer, *, budget: int, possible: Callable[[int], bool], numbered: bool = False
) -> Takings:
    """Every taking of an offer that can be paid with `budget` points, refunds of others included.

    `possible` says of a number of purchases whether the rules allow it as far as they ask about
    this entry alone. With `numbered` the total number taken is told apart.
    """
    kinds = tuple(
        Kind(number, choice, offer.price(number, choice=choice))
        for number in offer.cost
        for choice in offer.choices
    )
    watched = tuple((choice, max(table)) for choice, table in offer.worths.items() if table)
    made = Takings(offer=offer, kinds=kinds, watched=watched, numbered=numbered, tables=())
    most = _most_purchases(offer, kinds, budget=budget)
    tables: list[dict[Key, int]] = [{Key(0, 0, 0, (0,) * len(watched)): 1}]
    for kind in kinds:
        tables.append(made.with_kind(tables[-1], kind=kind, most=most))
    tables[-1] = {
        key: ways
        for key, ways in tables[-1].items()
        if key.purchases >= offer.least and possible(key.purchases)
    }
    return replace(made, tables=tuple(tables))


def _most_purchases(offer: Offer, kinds: Sequence[Kind], *, budget: int) -> int:
    """How often an entry can be bought at all; where there is no limit, what the points pay for.

    An entry of which any number may be had costs something every time (see `terms_of`).
    """
    if offer.most is not None:
        return offer.most
    return max(0, budget) // min(kind.points for kind in kinds)
