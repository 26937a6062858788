"""The best basket that can be afforded."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.chance.next.search import Question, best_basket, thinned
from paradestate.core.advice.basket import Basket, Priced, affordable


@dataclass(frozen=True, slots=True, kw_only=True)
class Till:
    """Prices, carriage of 2 below 6, and one candidate that is sent in pairs only."""

    prices: tuple[int, ...]
    most: tuple[int, ...]

    def cost(self, basket: Basket) -> Fraction:
        goods = self._goods(basket)
        return Fraction(goods + (2 if 0 < goods < 6 else 0))

    def least(self, basket: Basket) -> Fraction:
        return Fraction(self._goods(basket))

    def can_be_had(self, basket: Basket) -> bool:
        return basket[0] % 2 == 0

    def _goods(self, basket: Basket) -> int:
        return sum(n * price for n, price in zip(basket, self.prices, strict=True))


def worth(basket: Basket, *, weights: Sequence[int]) -> Fraction:
    """Never less for more: single worths up to a ceiling, and a pair that is worth more."""
    singly = sum(min(n, 2) * weight for n, weight in zip(basket, weights, strict=True))
    return Fraction(min(singly, 9) + 4 * min(basket[1], basket[-1]))


@settings(max_examples=60, deadline=None)
@given(
    st.tuples(*(st.integers(1, 5),) * 4),
    st.tuples(*(st.integers(0, 3),) * 4),
    st.integers(0, 12),
    st.permutations(range(4)),
)
def test_it_is_the_best_of_all_that_can_be_afforded(
    prices: tuple[int, ...], weights: tuple[int, ...], money: int, order: list[int]
) -> None:
    till = Till(prices=prices, most=(2, 3, 2, 2))

    def values(baskets: Sequence[Basket]) -> list[Fraction]:
        return [worth(basket, weights=weights) for basket in baskets]

    limit = Fraction(money)
    question = Question(means=till, limit=limit, values=values, ceilings=values, order=order)
    full = question.room((0,) * 4, first=0)
    every = [
        Priced(basket=each, cost=till.cost(each), value=worth(each, weights=weights))
        for each in affordable(till, limit=limit, within=range(4))
    ]
    best = min(every, key=lambda each: each.rank)
    for among in (None, full):
        found = best_basket(question, start=(0,) * 4, stop=lambda: False, among=among)
        assert found.bound is None
        assert found.best is not None
        assert found.best.rank[:3] == best.rank[:3]


def test_a_search_that_is_stopped_says_what_is_still_possible() -> None:
    till = Till(prices=(1, 1), most=(2, 2))

    def values(baskets: Sequence[Basket]) -> list[Fraction]:
        return [Fraction(sum(basket)) for basket in baskets]

    question = Question(means=till, limit=Fraction(9), values=values, ceilings=values, order=(0, 1))
    found = best_basket(question, start=(0, 0), stop=lambda: True)
    assert found.best is not None
    assert found.best.basket == (0, 0)
    assert found.bound == 4


def test_a_basket_that_cannot_be_had_may_lead_to_one_that_can() -> None:
    till = Till(prices=(1,), most=(3,))
    question = Question(
        means=till,
        limit=Fraction(9),
        values=lambda baskets: [Fraction(sum(each)) for each in baskets],
        ceilings=lambda baskets: [Fraction(sum(each)) for each in baskets],
        order=(0,),
    )
    found = best_basket(question, start=(1,), stop=lambda: False)
    assert found.best is not None
    assert found.best.basket == (2,)
    nothing = best_basket(question, start=(3,), stop=lambda: False)
    assert nothing.best is None


def test_a_stopped_search_has_found_what_adds_something_only_together() -> None:
    till = Till(prices=(6, 4, 2, 4), most=(2, 3, 2, 2))

    def values(baskets: Sequence[Basket]) -> list[Fraction]:
        return [worth(basket, weights=(0, 0, 1, 0)) for basket in baskets]

    question = Question(
        means=till, limit=Fraction(10), values=values, ceilings=values, order=(2, 0, 1, 3)
    )
    every = question.room((0,) * 4, first=0)
    found = best_basket(question, start=(0,) * 4, stop=lambda: True, among=every)
    assert found.best is not None
    assert found.best.basket == (0, 1, 0, 1)
    assert found.best.value == Fraction(4)
    assert thinned(question, start=every, among=every) == every
