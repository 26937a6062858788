"""What to get next: everything that is said of the candidates and of the best basket.

now -> each candidate alone -> the best basket, proven or within a bound -> how it comes about ->
the best with each candidate -> what foresight would bring
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import islice
from typing import Protocol

from paradestate.chance.next.expectation import Expectation, Stock
from paradestate.chance.next.outcome_table import outcome_rows
from paradestate.chance.next.search import Question, Stop, best_basket
from paradestate.core.advice.advice import (
    Advice,
    Aim,
    Alone,
    Candidate,
    Joined,
    OutcomeRow,
    Step,
)
from paradestate.core.advice.basket import Basket, Means, Priced, affordable, one_more
from paradestate.core.certainty import NotComputed, Sampled

MOST_FORESEEN = 1_000
"""Affordable baskets up to which what foresight would bring is worked out."""


class Valuer(Protocol):
    """Whoever says what stocks are worth."""

    def values(self, stocks: Sequence[Stock]) -> list[Fraction] | NotComputed:
        """The value of each."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Choosing:
    """What may be chosen, and what it is chosen for."""

    candidates: tuple[Candidate, ...]
    means: Means
    limit: Fraction
    """What there is to spend."""
    wish: Basket
    """What is wished for; nothing where nothing is."""
    stock: Callable[[Basket], Stock]
    """What there is, for each game, with a basket."""
    ceiling: Callable[[Basket], Stock]
    """No less than that, and no less for a larger basket."""


def advice(
    choosing: Choosing, *, valuer: Valuer, is_late: Stop, is_over: Stop
) -> Advice | NotComputed:
    """The advice; refused where the values can't be worked out.

    Once it `is_late` the best that was found is taken; once it `is_over` nothing more is sought.
    """
    adviser = _Adviser(choosing, valuer=valuer)
    try:
        return adviser.advice(is_late=is_late, is_over=is_over)
    except _RefusedError as refused:
        return refused.why


class _RefusedError(Exception):
    """Carries to `advice` why a value can't be worked out, from wherever one is asked for."""

    def __init__(self, why: NotComputed) -> None:
        super().__init__(why.reason)
        self.why = why


class _Adviser:
    """Values of baskets, each worked out once."""

    def __init__(self, choosing: Choosing, *, valuer: Valuer) -> None:
        self._choosing = choosing
        self._means = choosing.means
        self._valuer = valuer
        self._nothing: Basket = (0,) * len(choosing.candidates)
        self._known: dict[Basket, Fraction] = {}

    def advice(self, *, is_late: Stop, is_over: Stop) -> Advice:
        """All that is said."""
        now = self._priced(self._nothing)
        singles = [one_more(self._nothing, place) for place in range(len(self._nothing))]
        values = self._values(singles)
        question = Question(
            means=self._means,
            limit=self._choosing.limit,
            values=self._values,
            ceilings=self._ceilings,
            order=range(len(singles)),
        )
        every = question.room(self._nothing, first=0)
        missed = self._missed(every)
        question = replace(
            question, order=sorted(question.order, key=lambda at: (-values[at], -missed[at]))
        )
        found = best_basket(question, start=self._nothing, stop=is_late, among=every)
        tried = [found.best or now, *map(self._priced, filter(question.is_affordable, singles))]
        best = min(tried, key=lambda each: each.rank)
        with_each = [
            self._best_with(question, place, best=best, stop=is_over)
            for place in range(len(singles))
        ]
        # Where time was short one of these may be better than what was found before.
        best = min((best, *filter(None, with_each)), key=lambda each: each.rank)
        best = self.trimmed(best, question=question)
        return Advice(
            aim=Aim.WORTH if isinstance(self._valuer, Expectation) else Aim.SHARE,
            candidates=self._choosing.candidates,
            now=now,
            now_sure=self._sure(now.basket),
            alone=tuple(
                self._alone(question, place, now=now, best_with=best if best.basket[place] else one)
                for place, one in enumerate(with_each)
            ),
            best=best,
            gain_sure=self._sure(best.basket, instead_of=now.basket),
            bound=found.bound,
            steps=tuple(self._steps(now, best)),
            foresight=self._foresight(is_over),
            wish=self._wished(question, best=best, is_over=is_over),
            rows=tuple(self._rows(best)),
        )

    def _missed(self, every: Basket) -> Sequence[Fraction]:
        """What would be lost without each candidate, if there were all of the others.

        What adds nothing by itself is looked at in this order: else the search would go through
        all numbers of what adds nothing at all before it came to what adds something together.
        """
        without = [one_more(every, at, number=-number) for at, number in enumerate(every)]
        whole, *rest = self._values([every, *without])
        return [whole - each for each in rest]

    def trimmed(self, best: Priced, *, question: Question) -> Priced:
        """A basket without what it is as good without, where that can be had for less."""
        for place, number in enumerate(best.basket):
            for _ in range(number):
                less = one_more(best.basket, place, number=-1)
                if question.is_affordable(less):
                    best = min(best, self._priced(less), key=lambda each: each.rank)
        return best

    def _values(self, baskets: Sequence[Basket]) -> list[Fraction]:
        new = [basket for basket in dict.fromkeys(baskets) if basket not in self._known]
        self._known |= zip(new, self._valued(map(self._choosing.stock, new)), strict=True)
        return [self._known[basket] for basket in baskets]

    def _ceilings(self, baskets: Sequence[Basket]) -> list[Fraction]:
        return self._valued(map(self._choosing.ceiling, baskets))

    def _valued(self, stocks: Iterable[Stock]) -> list[Fraction]:
        values = self._valuer.values(list(stocks))
        if isinstance(values, NotComputed):
            raise _RefusedError(values)
        return values

    def _priced(self, basket: Basket) -> Priced:
        (value,) = self._values([basket])
        return Priced(basket=basket, cost=self._means.cost(basket), value=value)

    def _sure(self, basket: Basket, *, instead_of: Basket | None = None) -> Sampled | None:
        if not isinstance(self._valuer, Expectation):
            return None
        other = None if instead_of is None else self._choosing.stock(instead_of)
        return self._valuer.sampled(self._choosing.stock(basket), instead_of=other)

    def _best_with(
        self, question: Question, place: int, *, best: Priced, stop: Stop
    ) -> Priced | None:
        """The best basket that holds one of a candidate; None where it can't be had."""
        if best.basket[place]:
            return best
        start, both = one_more(self._nothing, place), one_more(best.basket, place)
        return best_basket(question, start=start, stop=stop, among=both).best

    def _alone(
        self, question: Question, place: int, *, now: Priced, best_with: Priced | None
    ) -> Alone:
        priced = self._priced(one_more(self._nothing, place))
        joined = self._together(place, best_with) if priced.value == now.value else ()
        return Alone(
            candidate=self._choosing.candidates[place],
            priced=priced,
            gain=priced.value - now.value,
            sure=self._sure(priced.basket, instead_of=now.basket),
            is_affordable=question.is_affordable(priced.basket),
            best_with=best_with,
            together=self._joined(question, joined, now=now) if joined else None,
        )

    def _together(self, place: int, whole: Priced | None) -> Basket:
        """A candidate with one other, or else with all of a basket, so that it adds something."""
        if whole is None:
            return ()
        one = one_more(self._nothing, place)
        pairs = [
            one_more(one, other)
            for other, number in enumerate(whole.basket)
            if number > (other == place)
        ]
        for basket in (*pairs, whole.basket):
            more, less = self._values([basket, one_more(basket, place, number=-1)])
            if more > less:
                return basket
        return ()

    def _joined(self, question: Question, basket: Basket, *, now: Priced) -> Joined:
        priced = self._priced(basket)
        return Joined(
            priced=priced,
            gain=priced.value - now.value,
            sure=self._sure(basket, instead_of=now.basket),
            is_affordable=question.is_affordable(basket),
        )

    def _steps(self, now: Priced, best: Priced) -> Iterator[Step]:
        """From now to the best; what adds most first, what adds nothing with what comes next."""
        begun = here = now
        while here.basket != best.basket:
            onward = [
                one_more(here.basket, place)
                for place, number in enumerate(best.basket)
                if number > here.basket[place]
            ]
            self._values(onward)
            here = min(map(self._priced, onward), key=lambda each: each.rank)
            if here.value > begun.value or here.basket == best.basket:
                yield Step(
                    added=tuple(
                        more - less for more, less in zip(here.basket, begun.basket, strict=True)
                    ),
                    priced=here,
                    gain=here.value - begun.value,
                    cost=here.cost - begun.cost,
                )
                begun = here

    def _foresight(self, is_over: Stop) -> Fraction | NotComputed:
        if not isinstance(self._valuer, Expectation):
            return NotComputed(reason="the dice have no part in which forces are legal")
        choosing = self._choosing
        every = affordable(
            self._means, limit=choosing.limit, within=range(len(choosing.candidates))
        )
        baskets = list(islice(every, MOST_FORESEEN + 1))
        if len(baskets) > MOST_FORESEEN:
            return NotComputed(reason=f"more than {MOST_FORESEEN:,} baskets can be afforded")
        if is_over():
            return NotComputed(reason="the time was up")
        self._values(baskets)
        return self._valuer.foresight([choosing.stock(basket) for basket in baskets])

    def _wished(self, question: Question, *, best: Priced, is_over: Stop) -> Priced | None:
        wish = self._choosing.wish
        if not any(wish):
            return None
        if all(number <= there for number, there in zip(wish, best.basket, strict=True)):
            return best
        both: Basket = tuple(map(max, wish, best.basket))
        return best_basket(question, start=wish, stop=is_over, among=both).best

    def _rows(self, best: Priced) -> Iterator[OutcomeRow]:
        if not isinstance(self._valuer, Expectation):
            return
        now, then = self._choosing.stock(self._nothing), self._choosing.stock(best.basket)
        for place, game in self._valuer.legal:
            yield from outcome_rows(
                game, now=game.ground.key(now[place]), then=game.ground.key(then[place])
            )
