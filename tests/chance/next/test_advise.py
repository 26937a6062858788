"""Everything that is said of candidates and of the best basket."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

import pytest

from paradestate.chance.force import allowed
from paradestate.chance.next import advise as module
from paradestate.chance.next.advise import Choosing, Valuer, advice
from paradestate.chance.next.expectation import Stock
from paradestate.chance.next.search import Found, Question, best_basket
from paradestate.core.advice.advice import Advice, Candidate
from paradestate.core.advice.basket import Basket, Priced
from paradestate.core.certainty import NotComputed, Sampled
from tests.chance.next.examples import osk_bought, osk_expectation


@dataclass(frozen=True, slots=True, kw_only=True)
class Prices:
    """Single prices, nothing else."""

    each: tuple[int, ...]
    most: tuple[int, ...]

    def cost(self, basket: Basket) -> Fraction:
        return Fraction(sum(n * price for n, price in zip(basket, self.each, strict=True)))

    def least(self, basket: Basket) -> Fraction:
        return self.cost(basket)

    def can_be_had(self, basket: Basket) -> bool:
        return bool(basket) or True


def choosing(money: int, *, wish: Basket = (0, 0), prices: tuple[int, int] = (8, 12)) -> Choosing:
    return Choosing(
        candidates=tuple(Candidate(name=each, words=each) for each in ("gun", "tank")),
        means=Prices(each=prices, most=(3, 3)),
        limit=Fraction(money),
        wish=wish,
        stock=osk_bought,
        ceiling=osk_bought,
    )


def found(
    asked: Choosing, *, valuer: Valuer | None = None, is_late: bool = False, is_over: bool = False
) -> Advice:
    made = advice(
        asked,
        valuer=valuer or osk_expectation(),
        is_late=lambda: is_late,
        is_over=lambda: is_over,
    )
    assert isinstance(made, Advice)
    return made


def test_the_advice_of_the_example() -> None:
    """Section 3.13 of the computations."""
    made = found(choosing(20, wish=(0, 1)))
    assert (made.now.value, made.best.value) == (Fraction(6), Fraction(31, 3))
    assert made.best.basket == (2, 0)
    assert [(each.priced.value, each.gain) for each in made.alone] == [
        (10, 4),
        (Fraction(47, 6), Fraction(11, 6)),
    ]
    assert [step.added for step in made.steps] == [(1, 0), (1, 0)]
    assert [(step.gain, step.cost) for step in made.steps] == [
        (Fraction(4), Fraction(8)),
        (Fraction(1, 3), Fraction(8)),
    ]
    assert made.foresight == Fraction(31, 3)
    assert made.wish is not None
    assert (made.wish.basket, made.price_of_fun(made.wish)) == ((1, 1), Fraction(1, 3))
    assert [each.together for each in made.alone] == [None, None]
    assert (made.bound, made.now_sure, len(made.rows)) == (None, None, 3)


def test_what_cannot_be_afforded_by_itself_is_said_to_be_so() -> None:
    made = found(choosing(8))
    assert [each.is_affordable for each in made.alone] == [True, False]
    assert [each.best_with is None for each in made.alone] == [False, True]


def test_a_wish_that_the_best_fulfils_costs_nothing() -> None:
    made = found(choosing(20, wish=(1, 0)))
    assert made.wish == made.best


def test_time_that_is_up_leaves_a_bound_and_no_single_is_better() -> None:
    made = found(choosing(20), is_late=True, is_over=True)
    assert (made.best.basket, made.bound) == ((2, 0), Fraction(31, 3))
    assert all(made.price_of_fun(each.best_with) >= 0 for each in made.alone if each.best_with)
    assert made.foresight == NotComputed(reason="the time was up")


def test_no_basket_that_was_come_across_is_better_than_the_best() -> None:
    """With one gun and one tank more is had than is found by leaving out what is missed least."""
    worths = {(0, 0): 1, (2, 0): 6, (1, 1): 7, (3, 3): 8, (3, 0): 7}
    asked = choosing(24, prices=(8, 16))
    made = advice(asked, valuer=Pairs(worths=worths), is_late=lambda: True, is_over=lambda: False)
    assert isinstance(made, Advice)
    fun = [made.price_of_fun(each.best_with) for each in made.alone if each.best_with]
    assert len(fun) == 2
    assert min(fun) == 0
    assert made.best.value == 7


def test_too_many_baskets_are_not_foreseen(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "MOST_FORESEEN", 4)
    assert found(choosing(20)).foresight == NotComputed(
        reason="more than 4 baskets can be afforded"
    )


def test_a_sample_is_said_of_every_gain(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(allowed, "MOST_OUTCOMES", 1)
    made = found(choosing(20))
    assert isinstance(made.gain_sure, Sampled)
    assert isinstance(made.certainty, Sampled)
    assert all(isinstance(each.sure, Sampled) for each in made.alone)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pairs:
    """Nothing is worth anything but two of a kind, or one of each; or nothing can be said."""

    worths: dict[tuple[int, int], int]
    reason: str = ""

    def values(self, stocks: Sequence[Stock]) -> list[Fraction] | NotComputed:
        if self.reason:
            return NotComputed(reason=self.reason)
        return [
            Fraction(
                max(
                    worth
                    for (guns, tanks), worth in self.worths.items()
                    if stock[0].loose["field gun"] >= guns and stock[0].loose["tank"] >= tanks
                )
            )
            for stock in stocks
        ]


@pytest.mark.parametrize(
    ("worths", "together", "steps"),
    [
        ({(0, 0): 1, (2, 0): 5}, [(2, 0), ()], [(2, 0)]),
        ({(0, 0): 1, (1, 1): 5}, [(1, 1), (1, 1)], [(1, 1)]),
        ({(0, 0): 1, (2, 1): 5}, [(2, 1), (2, 1)], [(2, 1)]),
        ({(0, 0): 1}, [(), ()], []),
    ],
)
def test_what_adds_something_only_with_others_is_found(
    worths: dict[tuple[int, int], int], together: list[Basket], steps: list[Basket]
) -> None:
    made = found(choosing(40), valuer=Pairs(worths=worths))
    joined = [each.together for each in made.alone]
    assert [each.priced.basket if each else () for each in joined] == together
    assert {each.gain for each in joined if each} <= {Fraction(4)}
    assert all(each.is_affordable for each in joined if each)
    assert [step.added for step in made.steps] == steps
    assert made.aim.value == "share"


def test_values_that_cannot_be_worked_out_are_refused() -> None:
    refused = advice(
        choosing(20),
        valuer=Pairs(worths={}, reason="too large"),
        is_late=lambda: False,
        is_over=lambda: False,
    )
    assert refused == NotComputed(reason="too large")


@dataclass(frozen=True, slots=True, kw_only=True)
class Narrow:
    """Refuses more than two guns."""

    def values(self, stocks: Sequence[Stock]) -> list[Fraction] | NotComputed:
        if any(stock[0].loose["field gun"] > 2 for stock in stocks):
            return NotComputed(reason="too many guns")
        return [Fraction(1)] * len(stocks)


def test_bounds_that_cannot_be_worked_out_are_refused() -> None:
    def never() -> bool:
        return False

    refused = advice(choosing(40), valuer=Narrow(), is_late=never, is_over=never)
    assert refused == NotComputed(reason="too many guns")
    bounded = replace(choosing(8), ceiling=lambda _: osk_bought((3, 3)))
    refused = advice(bounded, valuer=Narrow(), is_late=never, is_over=never)
    assert refused == NotComputed(reason="too many guns")


def test_what_can_neither_be_had_nor_adds_anything_goes_with_nothing() -> None:
    made = found(choosing(8), valuer=Pairs(worths={(0, 0): 1}))
    assert [(each.best_with is None, each.together) for each in made.alone] == [
        (False, None),
        (True, None),
    ]


def test_what_adds_nothing_at_all_is_looked_at_last(monkeypatch: pytest.MonkeyPatch) -> None:
    """A pair of tanks is worth something, guns nothing: the search begins with the tanks."""
    orders: list[Sequence[int]] = []

    def noted(question: Question, **how: Any) -> Found:  # noqa: ANN401 - passed on
        orders.append(question.order)
        return best_basket(question, **how)

    monkeypatch.setattr(module, "best_basket", noted)
    made = found(choosing(24, prices=(1, 6)), valuer=Pairs(worths={(0, 0): 1, (0, 2): 5}))
    assert made.best.basket == (0, 2)
    assert orders[0] == [1, 0]


@pytest.mark.parametrize(("limit", "trimmed"), [(20, (1, 0)), (5, (1, 1))])
def test_what_a_basket_is_as_good_without_is_left_out_of_it(limit: int, trimmed: Basket) -> None:
    """A gun and a tank are worth no more than the gun: 10. What can't be had isn't better."""
    asked = choosing(20)
    adviser = module._Adviser(asked, valuer=osk_expectation())  # noqa: SLF001 - as if time were up
    question = Question(
        means=asked.means,
        limit=Fraction(limit),
        values=lambda _: [],
        ceilings=lambda _: [],
        order=(),
    )
    whole = Priced(basket=(1, 1), cost=Fraction(20), value=Fraction(10))
    assert adviser.trimmed(whole, question=question).basket == trimmed
