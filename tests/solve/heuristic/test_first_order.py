"""A first order at once: enough always, cheap often, proved never."""

from hypothesis import given, settings

from bench.price_lists import catalogue
from paradestate.core.order import OrderProblem, netted, priced, shortcomings
from paradestate.core.order_outcome import OrderAnswer
from paradestate.solve.clock import clock
from paradestate.solve.heuristic.first_order import first_order
from paradestate.solve.order import cheapest_order
from tests.solve.drawn import problems_with_stand_ins


@settings(max_examples=25)
@given(problems_with_stand_ins())
def test_a_first_order_is_enough_and_never_below_the_least_total(asked: OrderProblem) -> None:
    asked = netted(asked)
    packs = first_order(asked, until=clock(9))
    if not packs:
        return
    assert shortcomings(asked, packs) == ()
    least = cheapest_order(asked)
    assert isinstance(least, OrderAnswer)
    assert least.order.total <= priced(asked, packs).total


def test_the_first_order_of_a_catalogue_is_enough() -> None:
    asked = catalogue(20, seed=1)
    packs = first_order(asked, until=clock(9))
    assert packs
    assert shortcomings(asked, packs) == ()


def test_without_time_there_is_no_first_order_or_one_that_is_enough() -> None:
    asked = catalogue(20, seed=2)
    packs = first_order(asked, until=clock(0.001))
    assert not packs or shortcomings(asked, packs) == ()


def test_where_nothing_sold_is_of_use_there_is_no_first_order() -> None:
    asked = catalogue(5, seed=1)
    others = OrderProblem(want={"nobody": 3}, sources=asked.sources, currency=asked.currency)
    assert first_order(others, until=clock(9)) == {}
