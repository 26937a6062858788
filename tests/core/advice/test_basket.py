"""Baskets, and which of them can be afforded."""

from fractions import Fraction

from paradestate.core.advice.basket import Priced, affordable, one_more
from tests.chance.next.test_search import Till


def test_one_more_changes_nothing_else() -> None:
    assert one_more((1, 0, 2), 1) == (1, 1, 2)
    assert one_more((1, 0, 2), 2, number=-1) == (1, 0, 1)


def test_every_basket_that_can_be_afforded_is_there_once() -> None:
    """Carriage of 2 below 6: two of the first cost 8, and with one of the second 6."""
    till = Till(prices=(2, 2), most=(2, 2))
    found = list(affordable(till, limit=Fraction(6), within=(0, 1)))
    assert sorted(found) == [(0, 0), (0, 1), (0, 2), (2, 0), (2, 1)]
    assert len(found) == len(set(found))
    assert sorted(affordable(till, limit=Fraction(6), within=(1,))) == [(0, 0), (0, 1), (0, 2)]


def test_the_best_comes_first_by_value_cost_number_and_order() -> None:
    def priced(value: int, cost: int, *basket: int) -> Priced:
        return Priced(basket=basket, cost=Fraction(cost), value=Fraction(value))

    in_order = [
        priced(5, 9, 1, 1),
        priced(4, 3, 3, 0),
        priced(4, 4, 1, 0),
        priced(4, 4, 0, 1),
        priced(4, 4, 1, 1),
    ]
    assert sorted({*in_order}, key=lambda each: each.rank) == in_order
