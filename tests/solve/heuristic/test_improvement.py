"""Orders that get better: each is enough, none is dearer than the one before."""

from itertools import pairwise

import pytest
from hypothesis import given, settings

from bench.price_lists import catalogue, dense
from paradestate.core.order import OrderProblem, netted, priced, shortcomings
from paradestate.solve.clock import clock
from paradestate.solve.heuristic.first_order import first_order
from paradestate.solve.heuristic.improvement import better_orders
from tests.solve.drawn import problems_with_stand_ins


def agrees(asked: OrderProblem, *, seconds: float) -> list[int]:
    """The totals one after the other, all of orders that are enough."""
    first = first_order(asked, until=clock(9))
    orders = list(better_orders(asked, first, until=clock(seconds))) if first else []
    assert all(shortcomings(asked, packs) == () for packs in orders)
    totals = [priced(asked, packs).total for packs in orders]
    assert all(later <= sooner for sooner, later in pairwise(totals))
    return totals


@settings(max_examples=15)
@given(problems_with_stand_ins())
def test_orders_get_no_dearer_and_stay_enough(asked: OrderProblem) -> None:
    agrees(netted(asked), seconds=0.1)


@pytest.mark.parametrize("asked", [catalogue(20, seed=3), dense(12, packs=90, seed=1)])
def test_a_large_price_list_takes_many_moves(asked: OrderProblem) -> None:
    totals = agrees(asked, seconds=1.5)
    assert len(totals) > 3
    assert totals[-1] <= totals[0]


def test_a_search_without_time_gives_back_what_it_was_given() -> None:
    asked = catalogue(20, seed=3)
    first = first_order(asked, until=clock(9))
    assert list(better_orders(asked, first, until=clock(0))) == [first]


def test_a_dear_order_is_bettered() -> None:
    """Everything bought singly, from whichever source comes first."""
    asked = catalogue(20, seed=4)
    packs: dict[tuple[str, str], int] = {}
    for kind, wanted in asked.want.items():
        name, sold = next(each for each in asked.packs() if kind in each[1].holds)
        packs[name] = packs.get(name, 0) + -(-wanted // sold.holds[kind])
    assert shortcomings(asked, packs) == ()
    *_, last = better_orders(asked, packs, until=clock(2))
    assert priced(asked, last).total < priced(asked, packs).total
