"""A first order for large price lists, in a quarter of a second.

It comes from relaxations on several steps of the tills, rounded and filled greedily; then from
narrow programs over what the best of them takes or nearly takes. In the time that is left packs
are taken out and the gap is filled anew.
"""

import random
from collections.abc import Sequence

import numpy

from paradestate.core.order import Basket, OrderProblem
from paradestate.solve.clock import Clock
from paradestate.solve.heuristic.filling import filled, gap_of, with_filling
from paradestate.solve.heuristic.greedy import greedy_orders
from paradestate.solve.heuristic.refill import Rival, Search, moved_on
from paradestate.solve.heuristic.relaxation import (
    Relaxation,
    cheapest_steps,
    good_steps,
    pool_of,
    sifted,
)
from paradestate.solve.heuristic.shelf import Packs, Shelf, shelf_of
from paradestate.solve.program import Ending

FIRST_SECONDS = 0.25
FIRST_SLICE, FIRST_SIZE = 0.05, 7.0
NARROW = (0.55, 0.25)
"""Shares of the time left for narrow programs on the steps of the two best greedy orders."""
A_MOMENT = 0.01
"""Seconds in which nothing more can be found."""

MOST_GREEDY = 12
"""Relaxations of which greedy orders are made."""


def first_order(problem: OrderProblem, *, until: Clock) -> Basket:
    """An order that is enough, seldom the cheapest; empty where none was found."""
    until = until.within(FIRST_SECONDS)
    shelf = shelf_of(problem)
    found = sifted(shelf, steps=cheapest_steps(shelf), until=until.share(0.35))
    if found is None:
        return {}
    lots = pool_of(shelf, found[1])
    tried = good_steps(shelf, lots, found=found[0], until=until.share(0.3))
    greedy = greedy_orders(shelf, tried[:MOST_GREEDY], until=until.share(0.35))
    if not greedy:
        return shelf.basket(_any_order(shelf, tried, until=until))
    best = greedy[0].packs
    left = until.left
    for each, share in zip(greedy, NARROW, strict=False):
        if until.left > A_MOMENT:
            best = _narrowly(shelf, best, found=each.found, seconds=share * left)
    search = Search(
        shelf=shelf,
        lots=lots,
        draw=random.Random(1),  # noqa: S311 - the same order each time
        until=until,
        bounds={},
        slice=FIRST_SLICE,
    )
    rival = Rival(packs=best, total=shelf.total(best), size=FIRST_SIZE)
    while until.left > A_MOMENT:
        rival = moved_on(search, rival)
    return shelf.basket(rival.packs)


def _any_order(shelf: Shelf, tried: Sequence[Relaxation], *, until: Clock) -> Packs:
    """Some whole order, where greedy ones miss a limit such as the least order of a source."""
    for each in tried:
        filling = filled(each.gap, whole=True, seconds=until.left)
        if not isinstance(filling, Ending):
            packs = with_filling(each.gap, filling, kept={})
            if shelf.is_enough(packs):
                return packs
        if not until.left:
            break
    return {}


def _narrowly(shelf: Shelf, best: Packs, *, found: Relaxation, seconds: float) -> Packs:
    """The best of the lots that a relaxation takes or nearly takes, if that is cheaper."""
    lots = found.gap.lots
    near = numpy.argsort(found.filling.reduced[: len(lots)], kind="stable")[: 2 * len(shelf.want)]
    gap = gap_of(shelf, lots.only(numpy.sort(near)), kept={}, steps=found.gap.steps)
    total = shelf.total(best)
    filling = filled(gap, whole=True, seconds=seconds, below=total - shelf.carriage(gap.steps))
    if isinstance(filling, Ending):
        return best
    other = with_filling(gap, filling, kept={})
    return other if shelf.total(other) <= total and shelf.is_enough(other) else best
