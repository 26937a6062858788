"""The takings of one entry: every multiset of purchases of it, gathered by what tells them apart.

A taking is a number of purchases with their points. How many multisets come to it, and what they
are worth, is found kind by kind (a kind is a priced number with a choice), so that the multisets
themselves are never listed unless one of them is asked for.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple, TypeAlias

from paradestate.core.certainty import NotComputed
from paradestate.core.game import Purchase
from paradestate.core.support.offer import NO_CHOICE, Offer, listed_worth


class Kind(NamedTuple):
    """One sort of purchase of an entry."""

    number: int
    choice: str
    points: int


Key: TypeAlias = tuple[int, int, int, tuple[int, ...]]
"""What is known of some purchases of an entry: how many they are, the number of the entry over all
of them (nought where nobody asks), their points without what repeats cost more, and the number with
each choice that has worths, held at the greatest number that is listed."""


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
    worth: int
    """In units that whoever asked has named."""
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

    @property
    def number(self) -> int:
        """How many there are, those that only their worths tell apart included."""
        return len(self.tables[-1])

    def plain(self) -> tuple[Taking, ...]:
        """Every taking with its ways, whatever it is worth."""
        surcharge = self._surcharges()
        ways: dict[tuple[int, int, int], int] = {}
        for (purchases, number, points, _), each in self.tables[-1].items():
            known = (purchases, number, points + surcharge[purchases])
            ways[known] = ways.get(known, 0) + each
        return tuple(Taking(*known, each) for known, each in ways.items())

    def valued(self, scale: int) -> tuple[ValuedTaking, ...]:
        """Every taking with its worth in units of one over `scale`, in which it must be whole."""
        surcharge = self._surcharges()
        worths = self._worths(scale)
        ways: dict[tuple[int, int, int, int], int] = {}
        for (purchases, number, points, totals), each in self.tables[-1].items():
            worth = sum(map(dict.__getitem__, worths, totals))
            known = (purchases, number, points + surcharge[purchases], worth)
            ways[known] = ways.get(known, 0) + each
        return tuple(ValuedTaking(*known, each) for known, each in ways.items())

    def purchases_of(self, taking: Taking, place: int) -> tuple[Purchase, ...]:
        """The multiset at a place among those of a plain taking; places are from 0 to its ways."""
        points = taking.points - self.offer.surcharge(taking.purchases)
        known = (taking.purchases, taking.number, points)
        return self._at([key for key in self.tables[-1] if key[:3] == known], place)

    def valued_purchases_of(
        self, taking: ValuedTaking, place: int, *, scale: int
    ) -> tuple[Purchase, ...]:
        """The same of a valued taking."""
        points = taking.points - self.offer.surcharge(taking.purchases)
        known = (taking.purchases, taking.number, points)
        worths = self._worths(scale)
        keys = [
            key
            for key in self.tables[-1]
            if key[:3] == known and sum(map(dict.__getitem__, worths, key[3])) == taking.worth
        ]
        return self._at(keys, place)

    def _at(self, keys: Sequence[Key], place: int) -> tuple[Purchase, ...]:
        """The multiset at a place among those that come to these keys."""
        for key in keys:
            ways = self.tables[-1][key]
            if place < ways:
                return tuple(self._unwound(key, place))
            place -= ways
        raise ValueError("a taking has no such place")

    def _unwound(self, key: Key, place: int) -> Iterator[Purchase]:
        """The purchases that lead to `key`, of the kinds from last to first."""
        for kind, before in zip(reversed(self.kinds), reversed(self.tables[:-1]), strict=True):
            more = _More(kind, watched=self.watched, numbered=self.numbered)
            earliest = (
                (earlier, ways)
                for earlier, ways in before.items()
                if earlier[0] <= key[0] and more.times(earlier, key[0] - earlier[0]) == key
            )
            earlier, ways = next(earliest)
            while place >= ways:
                place -= ways
                earlier, ways = next(earliest)
            bought = Purchase(entry=self.offer.name, number=kind.number, choice=kind.choice)
            yield from [bought] * (key[0] - earlier[0])
            key = earlier

    def _surcharges(self) -> Mapping[int, int]:
        """Number of purchases to what they cost more for being repeated."""
        return {each: self.offer.surcharge(each) for each in {key[0] for key in self.tables[-1]}}

    def _worths(self, scale: int) -> Sequence[dict[int, int]]:
        """For each choice that has worths those of every number, in units of one over `scale`."""
        found: list[dict[int, int]] = []
        for place, (choice, _) in enumerate(self.watched):
            table = self.offer.worths[choice]
            units = {}
            for number in {key[3][place] for key in self.tables[-1]}:
                worth = listed_worth(table, number)
                units[number] = worth.numerator * scale // worth.denominator
            found.append(units)
        return found


class _More:
    """Adds purchases of one kind to what is known."""

    def __init__(self, kind: Kind, *, watched: Sequence[tuple[str, int]], numbered: bool) -> None:
        self._number = kind.number
        self._points = kind.points
        self._numbered = kind.number if numbered else 0
        self._most = [
            most if choice in {NO_CHOICE, kind.choice} else None for choice, most in watched
        ]

    def times(self, key: Key, times: int) -> Key:
        """What is known after so many of them."""
        purchases, number, points, totals = key
        more = times * self._number
        return (
            purchases + times,
            number + times * self._numbered,
            points + times * self._points,
            tuple(
                [
                    total if most is None else min(most, total + more)
                    for total, most in zip(totals, self._most, strict=True)
                ]
            ),
        )


MOST_KEYS = 50_000
"""An entry of more takings isn't looked into: it would take minutes."""


def takings_of(
    offer: Offer, *, budget: int, possible: Callable[[int], bool], numbered: bool = False
) -> Takings | NotComputed:
    """Every taking of an offer that `budget` points can pay for, refunds of others included.

    `possible` says of a number of purchases whether the rules allow it as far as they ask about
    this entry alone. With `numbered` the total number taken is told apart. Refused where there are
    too many takings.
    """
    kinds = tuple(
        Kind(number, choice, offer.price(number, choice=choice))
        for number in offer.cost
        for choice in offer.choices
    )
    watched = tuple((choice, max(table)) for choice, table in offer.worths.items() if table)
    price = offer.cheapest
    most = _most_purchases(offer, price=price, budget=budget)
    is_cheaper_again = any(step < 0 for step in offer.repeats_cost_more)
    dearest = budget if price > 0 and not is_cheaper_again else None
    nothing: Key = (0, 0, 0, (0,) * len(watched))
    tables: list[Mapping[Key, int]] = [{nothing: 1}]
    for kind in kinds:
        more = _More(kind, watched=watched, numbered=numbered)
        if most == 1:
            tables.append(_with_one(tables[-1], more.times(nothing, 1), dearest=dearest))
            continue
        table = _with_kind(tables[-1], more, most=most, dearest=dearest)
        if table is None:
            return NotComputed(
                reason=f"there are more than {MOST_KEYS:,} ways to take '{offer.name}' alone"
            )
        tables.append(table)
    fit = {
        number
        for number in {key[0] for key in tables[-1]}
        if number >= offer.least and possible(number)
    }
    tables[-1] = {key: ways for key, ways in tables[-1].items() if key[0] in fit}
    return Takings(
        offer=offer, kinds=kinds, watched=watched, numbered=numbered, tables=tuple(tables)
    )


def _with_one(before: Mapping[Key, int], known: Key, *, dearest: int | None) -> Mapping[Key, int]:
    """What may be known once one purchase more may be chosen for the only one."""
    if dearest is not None and known[2] > dearest:
        return before
    return {**before, known: before.get(known, 0) + 1}


def _with_kind(
    before: Mapping[Key, int], more: _More, *, most: int, dearest: int | None
) -> Mapping[Key, int] | None:
    """What may be known once any number of one more kind is added; None where that is too much.

    One at a time, those of fewer purchases first, so that each purchase adds to all before it.
    """
    if dearest is None and most >= MOST_KEYS:
        return None  # for each number of purchases there is a way at least
    after = dict(before)
    waiting: dict[int, list[Key]] = {}
    for key in before:
        waiting.setdefault(key[0], []).append(key)
    number, last = 0, max(waiting)
    while number < most and number <= last:
        for key in waiting.get(number, ()):
            known = more.times(key, 1)
            if dearest is not None and known[2] > dearest:
                continue
            if known not in after:
                waiting.setdefault(number + 1, []).append(known)
                last = max(last, number + 1)
                after[known] = 0
            after[known] += after[key]
        if len(after) > MOST_KEYS:
            return None
        number += 1
    return after


def _most_purchases(offer: Offer, *, price: int, budget: int) -> int:
    """How often an entry can be bought at all, for at least `price` each time.

    An entry of which any number may be had costs something every time (see `terms_of`).
    """
    if price <= 0 and offer.most is not None:
        return offer.most
    paid = max(0, budget) // price
    return paid if offer.most is None else min(paid, offer.most)
