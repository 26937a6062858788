"""Orders from a relaxation: parts rounded, and what then lacks filled by what figures are worth."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import product

import numpy

from paradestate.solve.clock import Clock
from paradestate.solve.heuristic.filling import NEARLY_NOUGHT, Filling, Gap, with_filling
from paradestate.solve.heuristic.relaxation import Relaxation
from paradestate.solve.heuristic.shelf import ENDLESS, Amounts, Packs, Shelf, Steps

LIFTS = (0.3, 0.5, 0.4, 0.2, 0.1, 0.0)
"""Parts that lack no more than this to a whole pack are rounded up; in trials orders were up to a
fortieth cheaper so than with all parts rounded down."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Greedy:
    """An order filled greedily from a relaxation."""

    total: int
    packs: Packs
    found: Relaxation


def greedy_orders(shelf: Shelf, tried: Sequence[Relaxation], *, until: Clock) -> tuple[Greedy, ...]:
    """The best greedy order from each relaxation, the cheapest first."""
    best: dict[Steps, Greedy] = {}
    for lift, found in product(LIFTS, tried):
        packs = greedily_filled(shelf, found, lift=lift)
        if packs and shelf.is_enough(packs):
            total, steps = shelf.total(packs), found.gap.steps
            if steps not in best or total < best[steps].total:
                best[steps] = Greedy(total=total, packs=packs, found=found)
        if not until.left:
            break
    return tuple(sorted(best.values(), key=lambda each: each.total))


def greedily_filled(shelf: Shelf, found: Relaxation, *, lift: float) -> dict[int, int]:
    """The whole packs of a relaxation, and more until nothing lacks, the best value first.

    Figures count what they are worth in the relaxation; those that stand in there do so here.
    """
    gap, filling = found.gap, found.filling
    kinds, columns = len(shelf.want), len(gap.lots)
    packs = with_filling(gap, replace(filling, number=filling.number + lift), kept={})
    need = _needed(gap, filling)
    lacks = need - shelf.held(packs)
    worth = numpy.maximum(filling.worth[:kinds], 1e-3 * max(1.0, float(filling.worth.max())))
    lots = gap.lots.only(numpy.flatnonzero(gap.most()[:columns] > 0))
    cost = shelf.cost(lots, gap.steps) + NEARLY_NOUGHT
    figures = numpy.ascontiguousarray(lots.table(kinds).T)
    open_ = numpy.maximum(lacks, 0.0)
    value = worth @ numpy.minimum(figures, open_[:, None])
    while (lacks > NEARLY_NOUGHT).any():
        best = int((value / cost).argmax())
        if value[best] <= NEARLY_NOUGHT:
            return {}
        pack, size = int(lots.pack[best]), int(lots.size[best])
        if packs.get(pack, 0) + size > _most(shelf, pack):
            cost[best] = ENDLESS
            continue
        packs[pack] = packs.get(pack, 0) + size
        for row, each in shelf.holds[pack].items():
            before = max(lacks[row], 0.0)
            lacks[row] -= each * size
            after = max(lacks[row], 0.0)
            if after < before:
                less = numpy.minimum(figures[row], before) - numpy.minimum(figures[row], after)
                value -= less * worth[row]
    return _without_padding(shelf, packs, need=need)


def _most(shelf: Shelf, pack: int) -> float:
    most = shelf.packs[pack].most
    return ENDLESS if most is None else most


def _needed(gap: Gap, filling: Filling) -> Amounts:
    """Figures to be bought of each kind if whole numbers stand in as in a filling."""
    need = gap.want.copy()
    sent = numpy.zeros(len(need))
    bought_too = gap.shelf.problem.substitutes.bought_too
    for place, number in zip(gap.shelf.places, filling.number[len(gap.lots) :], strict=True):
        whole = int(numpy.ceil(number - NEARLY_NOUGHT) if bought_too else number + NEARLY_NOUGHT)
        need[place.other] -= whole
        need[place.kind] += whole
        sent[place.kind] += whole
    return numpy.maximum(need, sent - gap.sends) if bought_too else need


def _without_padding(shelf: Shelf, packs: dict[int, int], *, need: Amounts) -> dict[int, int]:
    spare = shelf.held(packs) - numpy.maximum(need, 0.0)
    for pack in sorted(packs, key=lambda each: -shelf.packs[each].price):
        own = shelf.holds[pack]
        fewer = min(packs[pack], *(int(spare[row] // each) for row, each in own.items()))
        if fewer > 0:
            packs[pack] -= fewer
            for row, each in own.items():
                spare[row] -= each * fewer
    return {pack: number for pack, number in packs.items() if number}
