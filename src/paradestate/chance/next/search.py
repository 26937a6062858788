"""The best basket that can be afforded: branch and bound, proven or with the bound that is left.

Every basket is reached once, its candidates added in their order. What else may be added to a
basket later is bounded by the value with all of it at once, each as often as it could be afforded
by itself: no value falls when more is there. The most promising baskets are looked at first, many
in one sum.
"""

import heapq
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple, TypeAlias

from paradestate.core.advice.basket import Basket, Means, Priced, one_more

Values: TypeAlias = Callable[[Sequence[Basket]], Sequence[Fraction]]
"""The values of baskets."""
Stop: TypeAlias = Callable[[], bool]
"""Is asked, often, whether to stop with the best so far."""

TOGETHER = 48
"""Baskets that are taken up in one sum."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The best basket that was found."""

    best: Priced | None
    """None where none of them can be had."""
    bound: Fraction | None
    """No basket is worth more; None where that is proved of the best itself."""


class _Open(NamedTuple):
    """A basket to which more may be added; the first to be looked at is the least."""

    bound: Fraction
    """The greatest value that can come of it, below nought."""
    cost: Fraction
    """The least that anything with more in it costs."""
    number: int
    """How many things the smallest basket with more in it holds."""
    basket: Basket
    first: int
    """Place in the order of the candidate from which on more may be added."""

    def beats(self, best: Priced | None) -> bool:
        """Whether what comes of it may stand before the best."""
        return best is None or (self.bound, self.cost, self.number) <= best.rank[:3]


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """Which baskets there may be, and what they are worth."""

    means: Means
    limit: Fraction
    values: Values
    ceilings: Values
    """The values of baskets or more than those, never less for a larger basket."""
    order: Sequence[int]
    """The candidates, the most promising first; those left out are in no basket."""

    def room(self, basket: Basket, *, first: int) -> Basket:
        """The basket with each further candidate as often as it can be afforded by itself."""
        full = basket
        for place in self.order[first:]:
            number = 0
            while self.may_hold(one_more(basket, place, number=number + 1)):
                number += 1
            full = one_more(full, place, number=number)
        return full

    def may_hold(self, basket: Basket) -> bool:
        """Whether it, or a larger basket, may be had and afforded."""
        within = all(n <= most for n, most in zip(basket, self.means.most, strict=True))
        return within and self.means.least(basket) <= self.limit

    def is_affordable(self, basket: Basket) -> bool:
        """Whether it can be had for no more than the limit."""
        return self.means.can_be_had(basket) and self.means.cost(basket) <= self.limit


def best_basket(
    question: Question, *, start: Basket, stop: Stop, among: Basket | None = None
) -> Found:
    """The best basket that holds all of `start`; at least that one is looked at.

    A good one may be hidden in `among`, which holds all of `start` and may cost too much.
    """
    search = _Search(question)
    search.look_at([(start, 0)])
    if among is not None and search.is_open:
        search.keep_some(thinned(question, start=start, among=among))
    while search.is_open and not stop():
        search.look_at(search.next_ones())
    return Found(best=search.best, bound=search.bound)


def thinned(question: Question, *, start: Basket, among: Basket) -> Basket:
    """What is left of a basket when what is missed least is taken out until it can be paid for.

    That finds at once what adds something only together, and the search may leave out the more.
    """
    basket = _without_the_idle(question, start=start, among=among)
    while basket != start and not question.is_affordable(basket):
        less = [
            one_more(basket, place, number=-1)
            for place in question.order
            if basket[place] > start[place]
        ]
        values = dict(zip(less, question.values(less), strict=True))
        basket = max(less, key=lambda each: (values[each], -question.means.least(each)))
    return basket


def _without_the_idle(question: Question, *, start: Basket, among: Basket) -> Basket:
    """A basket without the candidates that add nothing to all the others in it."""
    basket = among
    (value,) = question.values([basket])
    for place in reversed(question.order):
        less = one_more(basket, place, number=start[place] - basket[place])
        if question.values([less])[0] == value:
            basket = less
    return basket


class _Search:
    """How far the search has come."""

    def __init__(self, question: Question) -> None:
        self.best: Priced | None = None
        self._question = question
        self._waiting: list[_Open] = []

    @property
    def is_open(self) -> bool:
        """Whether something may stand before the best."""
        return bool(self._waiting) and self._waiting[0].beats(self.best)

    @property
    def bound(self) -> Fraction | None:
        """No basket is worth more; None where nothing is open."""
        return -self._waiting[0].bound if self.is_open else None

    def next_ones(self) -> list[tuple[Basket, int]]:
        """What one more of anything makes of the most promising baskets."""
        question = self._question
        coming: list[tuple[Basket, int]] = []
        while self.is_open and len(coming) < TOGETHER:
            opened = heapq.heappop(self._waiting)
            for at, place in enumerate(question.order[opened.first :], start=opened.first):
                more = one_more(opened.basket, place)
                if question.may_hold(more):
                    coming.append((more, at))
        return coming

    def look_at(self, coming: Sequence[tuple[Basket, int]]) -> None:
        """Values baskets, keeps the best, and opens those of which something better may come."""
        question = self._question
        values = question.values([basket for basket, _ in coming])
        full = [question.room(basket, first=first) for basket, first in coming]
        ceilings = question.ceilings(full)
        for (basket, _), value in zip(coming, values, strict=True):
            self._keep(basket, value)
        for (basket, first), most, ceiling in zip(coming, full, ceilings, strict=True):
            if most != basket:
                least = question.means.least(basket)
                opened = _Open(-ceiling, least, sum(basket) + 1, basket, first)
                if opened.beats(self.best):
                    heapq.heappush(self._waiting, opened)

    def keep_some(self, basket: Basket) -> None:
        """Keeps a basket from elsewhere, if it can be had and is the best so far."""
        (value,) = self._question.values([basket])
        self._keep(basket, value)

    def _keep(self, basket: Basket, value: Fraction) -> None:
        """Keeps a basket that can be had, if it is the best so far."""
        if self._question.is_affordable(basket):
            each = Priced(basket=basket, cost=self._question.means.cost(basket), value=value)
            if self.best is None or each.rank < self.best.rank:
                self.best = each
