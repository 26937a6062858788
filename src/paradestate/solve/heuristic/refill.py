"""One move of the improvement: packs are taken out of an order, and the gap is filled anew."""

import random
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy

from paradestate.solve.clock import Clock
from paradestate.solve.heuristic.filling import (
    NEARLY_NOUGHT,
    Filling,
    Gap,
    filled,
    gap_of,
    with_filling,
)
from paradestate.solve.heuristic.relaxation import Relaxation, near_steps
from paradestate.solve.heuristic.shelf import CLOSED, Lots, Packs, Shelf, Steps
from paradestate.solve.program import Ending

TRY_SECONDS = 0.25
GROWS, SHRINKS = 1.04, 0.93
FEWEST_OPEN = 3.0
MOVES_TILL = 0.15
"""Share of the moves that put one source on another step of its till."""
BESIDE = 0.8
"""Share of the moves that take out packs which share kinds; the others take any."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rival:
    """An order that is being improved."""

    packs: Packs
    total: int
    size: float
    """Packs that are laid open at a time; grows while that is easy."""

    def resized(self, factor: float, *, most: int) -> "Rival":
        """The same, laying more or fewer packs open from now on."""
        return replace(self, size=min(max(self.size * factor, FEWEST_OPEN), float(most)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """What all rivals share."""

    shelf: Shelf
    lots: Lots
    draw: random.Random
    until: Clock
    bounds: Mapping[Steps, float]
    """What no order on these steps is below, where that is known."""
    slice: float = TRY_SECONDS
    """Seconds for one small program."""


def on_other_steps(search: Search, rival: Rival, *, found: Relaxation) -> Rival:
    """A whole order on the steps of a relaxation, if it is cheaper than the rival."""
    if found.bound > rival.total - 1.0 + NEARLY_NOUGHT:
        return rival
    return replace(_refilled(search, rival, gap=found.gap, kept={}), size=rival.size)


def moved_on(search: Search, rival: Rival) -> Rival:
    """The rival after one move: some packs taken out and the gap filled at the least cost."""
    shelf = search.shelf
    steps = shelf.steps_of(rival.packs)
    if search.draw.random() < MOVES_TILL:
        near = [
            each for each in near_steps(shelf, steps) if search.bounds.get(each, 0.0) < rival.total
        ]
        steps = search.draw.choice(near) if near else steps
    kept = _ruined(search, rival, steps=steps)
    gap = gap_of(shelf, search.lots, kept=kept, steps=steps)
    return _refilled(search, rival, gap=gap, kept=kept)


def _refilled(search: Search, rival: Rival, *, gap: Gap, kept: Packs) -> Rival:
    """The rival with its gap filled, if that is no dearer; lots that can't help are left out."""
    shelf, most = search.shelf, len(search.shelf.want)
    room = rival.total - gap.paid()
    useful = numpy.add.reduceat(gap.lots.number, gap.lots.start[:-1]) > 0
    gap = gap.with_lots(useful & (gap.most()[: len(gap.lots)] > 0))
    parts = filled(gap, whole=False) if len(gap.lots) else Ending.INFEASIBLE
    if isinstance(parts, Ending) or parts.cost > room - 1.0 + NEARLY_NOUGHT:
        return rival.resized(GROWS, most=most)
    gap = gap.with_lots(parts.reduced[: len(gap.lots)] <= room - parts.cost)
    left = min(search.slice, search.until.left)
    filling = filled(gap, whole=True, seconds=left, below=room)
    after = rival.resized(SHRINKS if _is_stopped(filling) else GROWS, most=most)
    if isinstance(filling, Ending):
        return after
    packs = with_filling(gap, filling, kept=kept)
    total = shelf.total(packs)
    if total > rival.total or not shelf.is_enough(packs):
        return after
    return replace(after, packs=packs, total=total)


def _ruined(search: Search, rival: Rival, *, steps: Steps) -> dict[int, int]:
    """The packs that stay; none of a source that closes."""
    shelf, draw = search.shelf, search.draw
    if rival.size >= len(shelf.want):
        return {}
    closed = {
        source.name for source, step in zip(shelf.sellers, steps, strict=True) if step == CLOSED
    }
    packs = {
        pack: number for pack, number in rival.packs.items() if shelf.names[pack][0] not in closed
    }
    count = max(2, round(rival.size * draw.uniform(0.6, 1.2)))
    if draw.random() < BESIDE:
        opened = _beside(shelf, sorted(packs), count=count, draw=draw)
    else:
        opened = set(draw.sample(sorted(packs), min(len(packs), count)))
    return {pack: number for pack, number in packs.items() if pack not in opened}


def _beside(shelf: Shelf, packs: Sequence[int], *, count: int, draw: random.Random) -> set[int]:
    """Packs that share kinds with each other, from one pack on."""
    left = list(packs)
    opened: set[int] = set()
    rows: set[int] = set()
    while left and len(opened) < count:
        near = [pack for pack in left if not rows.isdisjoint(shelf.holds[pack])] or left
        pack = draw.choice(near)
        left.remove(pack)
        opened.add(pack)
        rows.update(shelf.holds[pack])
    return opened


def _is_stopped(filling: Filling | Ending) -> bool:
    return filling is Ending.STOPPED if isinstance(filling, Ending) else not filling.proved
