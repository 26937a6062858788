"""Ties: rules about several entries, each as a small count kept while some of them are decided.

Entries are decided one after the other, in any order. A tie keeps one whole number of what was
decided so far, nought before any is, and no more than it needs to judge what is to come: that is
all that the decision diagram has to remember. A rule that asks about one entry alone is no tie (see
`alone`).
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple, Protocol

from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms


class Move(NamedTuple):
    """What a tie may ask about the taking of one entry."""

    purchases: int
    number: int
    """Of the entry; nought where no tie asks."""
    points: int
    """Nought where no tie asks."""


class Sum(NamedTuple):
    """A sum over entries that no legal force brings above a bound."""

    entries: frozenset[str]
    of: Callable[[str, Move], int]
    """What the taking of an entry adds; below nought where it makes room for others."""
    most: int
    is_rule: bool = True
    """Whether the rule is kept by all that keep the sum, and not only the other way round."""


class Tie(Protocol):
    """A rule about several entries."""

    @property
    def entries(self) -> frozenset[str]:
        """Those it asks about, all on offer."""

    @property
    def greatest(self) -> int:
        """The greatest number that it can keep."""

    def after(self, value: int, *, entry: str, move: Move) -> int | None:
        """The number after one more of its entries is decided; None: the rule is broken."""

    def holds(self, value: int) -> bool:
        """Whether the rule holds once all its entries are decided."""

    def sums(self, *, points: int) -> tuple[Sum, ...]:
        """The rule said as sums, in a game of so many points; none where it asks nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """That there are at least so many purchases of an entry, or fewer."""

    entry: str
    number: int
    fewer: bool = False

    def is_true(self, purchases: int) -> bool:
        """Whether so many purchases of it make it true."""
        return (purchases < self.number) is self.fewer


@dataclass(frozen=True, slots=True, kw_only=True)
class NotTogether:
    """Two claims about two entries that must not both be true: of needs and bars."""

    one: Claim
    other: Claim
    greatest: int = 1
    """Nought, or one once the first of the claims to be decided is true."""

    @property
    def entries(self) -> frozenset[str]:
        """The two."""
        return frozenset({self.one.entry, self.other.entry})

    def after(self, value: int, *, entry: str, move: Move) -> int | None:
        """One if this claim is true; broken if it is the second."""
        if not self._is_true(entry, move):
            return 0
        return None if value else 1

    def holds(self, value: int) -> bool:
        """It would have been broken before."""
        del value
        return True

    def sums(self, *, points: int) -> tuple[Sum, ...]:
        """Of the two claims one is true at most."""
        del points
        return (Sum(self.entries, self._is_true, 1),)

    def _is_true(self, entry: str, move: Move) -> bool:
        claim = self.one if entry == self.one.entry else self.other
        return claim.is_true(move.purchases)


@dataclass(frozen=True, slots=True, kw_only=True)
class OneOf:
    """An entry that needs one of several claims to be true."""

    entry: str
    claims: tuple[Claim, ...]
    greatest: int = 2
    """Nought: nothing yet; one: taken, and still in need; two: nothing more is asked."""

    @property
    def entries(self) -> frozenset[str]:
        """The entry and those of the claims."""
        return frozenset({self.entry, *(claim.entry for claim in self.claims)})

    def after(self, value: int, *, entry: str, move: Move) -> int | None:
        """Two once a claim is true, or the entry itself isn't taken."""
        if self._is_met(entry, move) or (entry == self.entry and not move.purchases):
            return 2
        return max(value, 1) if entry == self.entry else value

    def holds(self, value: int) -> bool:
        """Whether nothing is left in need."""
        return value != 1

    def sums(self, *, points: int) -> tuple[Sum, ...]:
        """One if it is taken, less the claims that are true: no more than nought."""
        del points
        return (Sum(self.entries, self._in_need, 0),)

    def _is_met(self, entry: str, move: Move) -> bool:
        return any(claim.entry == entry and claim.is_true(move.purchases) for claim in self.claims)

    def _in_need(self, entry: str, move: Move) -> int:
        return (entry == self.entry and move.purchases > 0) - self._is_met(entry, move)


@dataclass(frozen=True, slots=True, kw_only=True)
class ForEach:
    """So many purchases of one entry for each purchase of another."""

    entry: str
    of: str
    number: int
    greatest: int
    """Nought: none is decided; else one more than what the first of the two to be decided says,
    which is how many purchases of `entry` there are, or for how many there is enough."""

    @property
    def entries(self) -> frozenset[str]:
        """The two."""
        return frozenset({self.entry, self.of})

    def after(self, value: int, *, entry: str, move: Move) -> int | None:
        """How many there are, or may be; broken where there are more than may be."""
        says = move.purchases if entry == self.entry else move.purchases // self.number
        says = min(says, self.greatest - 1)
        if not value:
            return says + 1
        there, may_be = (says, value - 1) if entry == self.entry else (value - 1, says)
        return None if there > may_be else value

    def holds(self, value: int) -> bool:
        """It would have been broken before."""
        del value
        return True

    def sums(self, *, points: int) -> tuple[Sum, ...]:
        """What must be there, less what is: no more than nought."""
        del points
        return (Sum(self.entries, self._lacking, 0),)

    def _lacking(self, entry: str, move: Move) -> int:
        return move.purchases * (self.number if entry == self.entry else -1)


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupPurchases:
    """How many purchases of a group there must and may be."""

    entries: frozenset[str]
    least: int
    most: int | None

    @property
    def greatest(self) -> int:
        """No more is counted than the limit asks about."""
        return self.least if self.most is None else self.most

    def after(self, value: int, *, entry: str, move: Move) -> int | None:
        """The purchases so far; broken above the most."""
        del entry
        number = value + move.purchases
        if self.most is None:
            return min(number, self.least)
        return None if number > self.most else number

    def holds(self, value: int) -> bool:
        """Whether the least is reached."""
        return value >= self.least

    def sums(self, *, points: int) -> tuple[Sum, ...]:
        """The purchases, and below nought for the least."""
        del points
        return _between(self.entries, _purchases, least=self.least or None, most=self.most)


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupPoints:
    """The points of a group, to be judged by its share once the points of the game are known."""

    entries: frozenset[str]
    limit: GroupLimit
    lowest: Mapping[str, int]
    """Entry to the fewest points that it can cost; the number kept counts from there."""
    greatest: int

    def after(self, value: int, *, entry: str, move: Move) -> int | None:
        """The points so far."""
        return value + move.points - self.lowest[entry]

    def holds(self, value: int) -> bool:
        """Not judged here."""
        del value
        return True

    def sums(self, *, points: int) -> tuple[Sum, ...]:
        """The points, and below nought for the least."""
        least, most = self.limit.least_spent(points), self.limit.most_spent(points)
        return _between(self.entries, _points, least=least, most=most)

    def span(self, *, points: int) -> range:
        """The numbers with which the group has its share in a game of so many points."""
        nought = -sum(self.lowest.values())
        most_spent, least_spent = self.limit.most_spent(points), self.limit.least_spent(points)
        least = 0 if least_spent is None else max(0, least_spent + nought)
        most = self.greatest if most_spent is None else min(self.greatest, most_spent + nought)
        return range(least, most + 1)


def _purchases(entry: str, move: Move) -> int:
    del entry
    return move.purchases


def _points(entry: str, move: Move) -> int:
    del entry
    return move.points


def _between(
    entries: frozenset[str],
    of: Callable[[str, Move], int],
    *,
    least: int | None,
    most: int | None,
) -> tuple[Sum, ...]:
    """What adds up to no more than the most, and to no less than the least."""
    above = () if most is None else (Sum(entries, of, most),)
    below = () if least is None else (Sum(entries, lambda *each: -of(*each), -least),)
    return (*above, *below)


def alone(terms: Terms, offer: Offer) -> Callable[[int], bool]:
    """Whether a number of purchases of an entry can hold, asking about this entry alone.

    What isn't on offer counts as never bought.
    """
    name, here = offer.name, terms.offers

    def possible(purchases: int) -> bool:
        if not purchases:
            return True
        there = {name: purchases}
        return (
            all(
                number <= there.get(other, 0)
                for other, number in offer.needs.items()
                if other == name or other not in here
            )
            and all(
                number * purchases <= there.get(other, 0)
                for other, number in offer.needs_for_each.items()
                if other == name or other not in here
            )
            and name not in offer.bars
            and (not offer.needs_any_of or any(other in here for other in offer.needs_any_of))
        )

    return possible


def ties_of(
    terms: Terms, *, lowest: Mapping[str, int], highest: Mapping[str, int], most: Mapping[str, int]
) -> Iterator[Tie]:
    """All ties of the terms of a game, shares of the points last.

    `lowest`, `highest` and `most`: entry to the fewest and most points that it can cost, and to how
    often it can be bought.
    """
    for offer in terms.offers.values():
        yield from _needs(terms, offer, most=most)
    bars = {frozenset({name, other}) for name, each in terms.offers.items() for other in each.bars}
    for pair in sorted(
        sorted(pair) for pair in bars if pair <= set(terms.offers) and len(pair) > 1
    ):
        one, other = (Claim(entry=name, number=1) for name in pair)
        yield NotTogether(one=one, other=other)
    for limit in terms.groups:
        names = [name for name, offer in terms.offers.items() if offer.group == limit.group]
        if limit.least or limit.most is not None:
            yield GroupPurchases(entries=frozenset(names), least=limit.least, most=limit.most)
    for limit in terms.groups:
        if not limit.least_points and limit.most_points is None:
            continue
        names = [name for name, offer in terms.offers.items() if offer.group == limit.group]
        yield GroupPoints(
            entries=frozenset(names),
            limit=limit,
            lowest={name: lowest[name] for name in names},
            greatest=sum(highest[name] - lowest[name] for name in names),
        )


def _needs(terms: Terms, offer: Offer, *, most: Mapping[str, int]) -> Iterator[Tie]:
    taken = Claim(entry=offer.name, number=1)
    for other, number in offer.needs.items():
        if other in terms.offers and other != offer.name:
            yield NotTogether(one=taken, other=Claim(entry=other, number=number, fewer=True))
    for other, number in offer.needs_for_each.items():
        if other in terms.offers and other != offer.name and number:
            yield ForEach(entry=offer.name, of=other, number=number, greatest=most[offer.name] + 1)
    claims = tuple(
        Claim(entry=other, number=number)
        for other, number in offer.needs_any_of.items()
        if other in terms.offers
    )
    if claims:
        yield OneOf(entry=offer.name, claims=claims)
