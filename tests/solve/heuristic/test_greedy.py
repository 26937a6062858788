"""Orders from relaxations, rounded and filled."""

from bench.price_lists import catalogue
from paradestate.core.order import shortcomings
from paradestate.solve.clock import clock
from paradestate.solve.heuristic.greedy import LIFTS, greedily_filled, greedy_orders
from paradestate.solve.heuristic.relaxation import cheapest_steps, good_steps, pool_of, sifted
from paradestate.solve.heuristic.shelf import shelf_of


def test_greedy_orders_are_enough_and_the_cheapest_comes_first() -> None:
    asked = catalogue(20, seed=5)
    shelf = shelf_of(asked)
    found = sifted(shelf, steps=cheapest_steps(shelf), until=clock(9))
    assert found is not None
    lots = pool_of(shelf, found[1])
    tried = good_steps(shelf, lots, found=found[0], until=clock(0.3))
    orders = greedy_orders(shelf, tried, until=clock(9))
    totals = [each.total for each in orders]
    assert totals
    assert totals == sorted(totals)
    for each in orders:
        assert shortcomings(asked, shelf.basket(each.packs)) == ()
        assert shelf.total(each.packs) == each.total


def test_no_pack_can_be_left_out_of_a_greedy_order() -> None:
    """Its figures would lack, where none of them stand in."""
    asked = catalogue(20, seed=6)
    shelf = shelf_of(asked)
    found = sifted(shelf, steps=cheapest_steps(shelf), until=clock(9))
    assert found is not None
    for lift in LIFTS:
        packs = greedily_filled(shelf, found[0], lift=lift)
        for pack, number in packs.items():
            assert not shelf.is_enough({**packs, pack: number - 1}) or shelf.places
