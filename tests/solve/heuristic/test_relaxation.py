"""Orders in parts of packs: never dearer than the whole ones on the same steps."""

from hypothesis import given, settings

from bench.price_lists import catalogue
from paradestate.core.order import OrderProblem, netted
from paradestate.core.order_outcome import OrderAnswer
from paradestate.solve.clock import clock
from paradestate.solve.heuristic.filling import NEARLY_NOUGHT
from paradestate.solve.heuristic.relaxation import (
    cheapest_steps,
    good_steps,
    near_steps,
    pool_of,
    relaxed,
    sifted,
)
from paradestate.solve.heuristic.shelf import CLOSED, shelf_of
from paradestate.solve.order import cheapest_order
from tests.solve.drawn import problems_with_stand_ins


@settings(max_examples=40)
@given(problems_with_stand_ins())
def test_in_parts_an_order_costs_no_more_than_whole_on_the_same_steps(asked: OrderProblem) -> None:
    """Up to the half units by which every source's discount and exchange are rounded."""
    asked = netted(asked)
    answer = cheapest_order(asked)
    if not isinstance(answer, OrderAnswer) or not answer.order.packs:
        return
    shelf = shelf_of(asked)
    numbers = {name: number for number, name in enumerate(shelf.names)}
    if not set(answer.order.packs) <= set(numbers):
        return  # packs without any use are not on the shelf
    packs = {numbers[name]: number for name, number in answer.order.packs.items()}
    found = relaxed(shelf, shelf.lots, steps=shelf.steps_of(packs))
    assert found is not None
    rounded = sum(float(rate) / 2 + 0.5 for rate in shelf.rate)
    assert found.bound <= answer.order.total + rounded + NEARLY_NOUGHT


def test_sifting_finds_the_relaxation_of_all_lots() -> None:
    shelf = shelf_of(catalogue(120, seed=1))
    steps = cheapest_steps(shelf)
    found = sifted(shelf, steps=steps, until=clock(60))
    everything = relaxed(shelf, shelf.lots, steps=steps, dreaming=True)
    assert found is not None
    assert everything is not None
    assert abs(found[0].bound - everything.bound) < 0.01


def test_good_steps_come_best_first_and_each_once() -> None:
    shelf = shelf_of(catalogue(20, seed=1))
    found = sifted(shelf, steps=cheapest_steps(shelf), until=clock(9))
    assert found is not None
    lots = pool_of(shelf, found[1])
    tried = good_steps(shelf, lots, found=found[0], until=clock(0.5))
    bounds = [each.bound for each in tried]
    assert bounds == sorted(bounds)
    assert len({each.gap.steps for each in tried}) == len(tried) > 1


def test_near_steps_differ_in_one_source() -> None:
    shelf = shelf_of(catalogue(20, seed=1))
    steps = (CLOSED,) * len(shelf.sellers)
    near = list(near_steps(shelf, steps))
    assert len(near) == sum(len(terms) for terms in shelf.steps)
    for each in near:
        assert sum(one != other for one, other in zip(each, steps, strict=True)) == 1
