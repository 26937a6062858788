"""Baskets: how many of each thing that may be bought or made, and what they cost."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Protocol, TypeAlias

Basket: TypeAlias = tuple[int, ...]
"""How many of each candidate, in the order of the candidates."""


class Means(Protocol):
    """What there may be in a basket, for money or for hours."""

    @property
    def most(self) -> Sequence[int]:
        """How many of each candidate there may be at the most."""

    def cost(self, basket: Basket) -> Fraction:
        """What a basket costs."""

    def least(self, basket: Basket) -> Fraction:
        """No basket that holds all of this one and more costs less than this, nor does it."""

    def can_be_had(self, basket: Basket) -> bool:
        """Whether it can be had as it stands, whatever it costs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Priced:
    """A basket with what it costs, and what the games to come are worth with it."""

    basket: Basket
    cost: Fraction
    value: Fraction

    @property
    def rank(self) -> tuple[Fraction, Fraction, int, tuple[int, ...]]:
        """What baskets are sorted by, the best first: value, cost, number, order of candidates."""
        earlier_first = tuple(-number for number in self.basket)
        return -self.value, self.cost, sum(self.basket), earlier_first


def one_more(basket: Basket, place: int, *, number: int = 1) -> Basket:
    """A basket with so many more of one candidate."""
    return (*basket[:place], basket[place] + number, *basket[place + 1 :])


def affordable(means: Means, *, limit: Fraction, within: Sequence[int]) -> Iterator[Basket]:
    """Every basket that can be had for no more than the limit, with these candidates only."""
    nothing = (0,) * len(means.most)
    waiting = [(nothing, 0)]
    while waiting:
        basket, first = waiting.pop()
        if means.can_be_had(basket) and means.cost(basket) <= limit:
            yield basket
        for at, place in enumerate(within[first:], start=first):
            more = one_more(basket, place)
            if more[place] <= means.most[place] and means.least(more) <= limit:
                waiting.append((more, at))
