"""One move of the improvement."""

import random

from bench.price_lists import catalogue
from paradestate.core.order import shortcomings
from paradestate.solve.clock import clock
from paradestate.solve.heuristic.first_order import first_order
from paradestate.solve.heuristic.refill import FEWEST_OPEN, Rival, Search, moved_on, on_other_steps
from paradestate.solve.heuristic.relaxation import relaxed
from paradestate.solve.heuristic.shelf import shelf_of


def test_moves_keep_an_order_enough_and_no_dearer() -> None:
    asked = catalogue(20, seed=7)
    shelf = shelf_of(asked)
    numbers = {name: number for number, name in enumerate(shelf.names)}
    packs = {numbers[name]: each for name, each in first_order(asked, until=clock(9)).items()}
    draw = random.Random(7)  # noqa: S311 - the same moves each time
    search = Search(shelf=shelf, lots=shelf.lots, draw=draw, until=clock(60), bounds={})
    rival = Rival(packs=packs, total=shelf.total(packs), size=5.0)
    for _ in range(12):
        after = moved_on(search, rival)
        assert after.total <= rival.total
        assert after.total == shelf.total(after.packs)
        assert shortcomings(asked, shelf.basket(after.packs)) == ()
        assert FEWEST_OPEN <= after.size <= len(shelf.want)
        rival = after
    found = relaxed(shelf, shelf.lots, steps=shelf.steps_of(rival.packs))
    assert found is not None
    other = on_other_steps(search, rival, found=found)
    assert other.total <= rival.total
    assert shortcomings(asked, shelf.basket(other.packs)) == ()


def test_steps_that_can_only_be_dearer_are_not_tried() -> None:
    asked = catalogue(20, seed=7)
    shelf = shelf_of(asked)
    draw = random.Random(7)  # noqa: S311 - as above
    search = Search(shelf=shelf, lots=shelf.lots, draw=draw, until=clock(60), bounds={})
    found = relaxed(shelf, shelf.lots, steps=(0,) * len(shelf.sellers))
    assert found is not None
    rival = Rival(packs={}, total=int(found.bound), size=5.0)
    assert on_other_steps(search, rival, found=found) is rival
