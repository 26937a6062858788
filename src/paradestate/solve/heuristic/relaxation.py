"""The order in parts of packs: which lots are worth a thought, and which steps of the tills.

Steps are tried with each source on one step of its till, which makes the relaxation honest: free
of steps it would take every discount for next to no goods.
"""

import heapq
from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy

from paradestate.solve.clock import Clock
from paradestate.solve.heuristic.filling import NEARLY_NOUGHT, Filling, Gap, filled, gap_of
from paradestate.solve.heuristic.shelf import (
    CLOSED,
    ENDLESS,
    Amounts,
    Lots,
    Numbers,
    Shelf,
    Steps,
    reached,
)
from paradestate.solve.program import Ending

POOL = 8
"""Lots for each kind that are worth a thought; with five the best orders found were dearer."""

NEARLY_REACHED = 1.25
STILL_NEAR = 0.3
"""Lots stay while they cost no more than so much of their price above what they are worth."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Relaxation:
    """The order in parts of packs on some steps of the tills."""

    gap: Gap
    filling: Filling
    bound: float
    """No order on these steps costs less, among the lots of the gap."""


def relaxed(shelf: Shelf, lots: Lots, *, steps: Steps, dreaming: bool = False) -> Relaxation | None:
    """The cheapest order in parts on these steps, if there is any.

    `dreaming` forgets what goods the steps ask for.
    """
    gap = gap_of(shelf, lots, kept={}, steps=steps)
    if dreaming:
        gap = replace(gap, goods=numpy.full(len(shelf.sellers), ENDLESS))
    filling = filled(gap, whole=False)
    if isinstance(filling, Ending):
        return None
    return Relaxation(gap=gap, filling=filling, bound=filling.cost + shelf.carriage(steps))


DIRECT = 700
"""Up to so many lots all are taken at once; beyond, a few and those that their worths ask for."""


def sifted(shelf: Shelf, *, steps: Steps, until: Clock) -> tuple[Relaxation, Numbers] | None:
    """The relaxation over all lots, and the lots from the most to the least useful.

    None where nothing is of use, or no order is enough whatever is bought.
    """
    lots = shelf.lots
    if not len(lots):
        return None
    cost = shelf.cost(lots, steps)
    rows = len(shelf.want)
    chosen = _promising(lots, cost, each=4) if len(lots) > DIRECT else numpy.arange(len(lots))
    while True:
        found = relaxed(shelf, lots.only(chosen), steps=steps, dreaming=True)
        if found is None:
            return None
        reduced = _reduced(shelf, found, cost=cost)
        order = numpy.argsort(reduced, kind="stable")
        better = order[: 2 * rows]
        better = better[reduced[better] < -NEARLY_NOUGHT]
        better = better[~numpy.isin(better, chosen)]
        if not len(better) or not until.left:
            return found, order
        used = chosen[found.filling.reduced[: len(chosen)] < STILL_NEAR * cost[chosen]]
        chosen = numpy.union1d(used, better)


def _reduced(shelf: Shelf, found: Relaxation, *, cost: Amounts) -> Amounts:
    """What each lot of the shelf costs more than it is worth in a relaxation."""
    lots, rows, worth = shelf.lots, len(shelf.want), found.filling.worth
    paid = worth[2 * rows :]
    figures = worth[:rows].copy()
    if shelf.problem.substitutes.bought_too:
        figures -= worth[rows : 2 * rows]
    return cost - lots.worth(figures) - lots.price * paid[lots.seller]


def pool_of(shelf: Shelf, order: Numbers) -> Lots:
    """The lots that are worth a thought: those first in order, and some for each kind."""
    cost = shelf.cost(shelf.lots, cheapest_steps(shelf))
    some = _promising(shelf.lots, cost, each=2)
    return shelf.lots.only(numpy.union1d(order[: POOL * len(shelf.want)], some))


def _promising(lots: Lots, cost: Amounts, *, each: int) -> Numbers:
    """For each kind some lots that are cheap for what they hold."""
    figures = numpy.add.reduceat(lots.number, lots.start[:-1])
    dear = cost / numpy.maximum(figures, 1.0)
    column = numpy.repeat(numpy.arange(len(lots)), numpy.diff(lots.start))
    order = numpy.lexsort((dear[column], lots.row))
    row = lots.row[order]
    first = numpy.searchsorted(row, row)
    rank = numpy.arange(len(row)) - first
    return numpy.unique(column[order[rank < each]])


def cheapest_steps(shelf: Shelf) -> Steps:
    """The step of each source at which least is paid of the goods."""
    return tuple(
        min(range(len(steps)), key=lambda step: (steps[step].share, steps[step].carriage))
        for steps in shelf.steps
    )


def good_steps(shelf: Shelf, lots: Lots, *, found: Relaxation, until: Clock) -> list[Relaxation]:
    """Relaxations on different steps of the tills, the best first, as many as there is time for.

    From the best so far on, always one source is moved to another step.
    """
    bought = found.gap.lots
    goods = numpy.zeros(len(shelf.sellers))
    numpy.add.at(goods, bought.seller, found.filling.number[: len(bought)] * bought.price)
    start = tuple(
        reached(terms, worth * NEARLY_REACHED) if worth > NEARLY_NOUGHT else CLOSED
        for terms, worth in zip(shelf.steps, goods, strict=True)
    )
    tried = {start: relaxed(shelf, lots, steps=start)}
    waiting = [(0.0, start)]
    while waiting and until.left:
        _, steps = heapq.heappop(waiting)
        for near in near_steps(shelf, steps):
            if near in tried or not until.left:
                continue
            found_near = relaxed(shelf, lots, steps=near)
            tried[near] = found_near
            if found_near is not None:
                heapq.heappush(waiting, (found_near.bound, near))
    most = _most_parcels(shelf)
    answers = [
        each for steps, each in tried.items() if each is not None and _parcels(steps) <= most
    ]
    return sorted(answers, key=lambda each: each.bound)


def _most_parcels(shelf: Shelf) -> float:
    most = shelf.problem.most_parcels
    return ENDLESS if most is None else most


def near_steps(shelf: Shelf, steps: Steps) -> Iterator[Steps]:
    """The same steps but for one source, which may close as well."""
    most = _most_parcels(shelf)
    for seller, terms in enumerate(shelf.steps):
        for step in (CLOSED, *range(len(terms))):
            near = (*steps[:seller], step, *steps[seller + 1 :])
            fewer = _parcels(near) < _parcels(steps)
            if step != steps[seller] and (fewer or _parcels(near) <= most):
                yield near


def _parcels(steps: Steps) -> int:
    return sum(step != CLOSED for step in steps)
