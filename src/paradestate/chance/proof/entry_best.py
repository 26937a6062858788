"""Whether an entry stands in every best force, in some of them or in none, all of them considered.

An entry is in no best force where the best of those that hold it is worth less than the best of
all, and in every one where the best of those without it is. Both are found for all entries from one
walk of the diagram forward and one back.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

import numpy

from paradestate.chance.force.best_force import BestForces, greatest_worths, reached_weights
from paradestate.chance.force.weighing import Weighing, Weights
from paradestate.core.support.proof import InBest

Worths = tuple[Fraction | None, ...]


def places_in_best(
    best: BestForces, *, points: Sequence[int]
) -> Mapping[str, tuple[InBest | None, ...]]:
    """Entry to where it stands with each of these numbers of points; None: nothing is legal."""
    weighed = best.weighed
    drawn = weighed.drawn
    greatest = best.worths(points)
    before = _forward(weighed, first=0, last=drawn.judged)
    behind = _forward(weighed, first=drawn.judged, last=len(drawn.rows))
    reached = reached_weights(weighed)
    found = {}
    for place, row in enumerate(drawn.rows):
        worths = []
        for held in (True, False):
            only = _only(weighed, place, held=held)
            if place < drawn.judged:
                there, rest = _early(only, place, before=before[place]), best.rest[0]
            else:
                after = best.rest[place + 1 - drawn.judged]
                there = reached
                rest = _joined(
                    weighed,
                    before=behind[place - drawn.judged],
                    after=only.before(place, after),
                )
            worths.append(greatest_worths(weighed, reached=there, rest=rest, points=points))
        found[row.entry] = _places(points, greatest, holding=worths[0], without=worths[1])
    return found


def _places(
    points: Sequence[int], greatest: Worths, *, holding: Worths, without: Worths
) -> tuple[InBest | None, ...]:
    found: list[InBest | None] = []
    for number, best, held, left in zip(points, greatest, holding, without, strict=True):
        if best is None:
            found.append(None)
        elif number < 0 or held != best:
            found.append(InBest.NONE)
        else:
            found.append(InBest.SOME if left == best else InBest.EVERY)
    return tuple(found)


def _only(weighed: Weighing, place: int, *, held: bool) -> Weighing:
    """The same where one entry is always held, or never."""
    row = tuple(
        tuple((t.slots, t.weight) for t in terms if (t.taking.purchases > 0) is held)
        for terms in weighed.terms[place]
    )
    return replace(weighed, useful=(*weighed.useful[:place], row, *weighed.useful[place + 1 :]))


def _forward(weighed: Weighing, *, first: int, last: int) -> Sequence[Weights]:
    """The weights of what leads to each node of the rows from the first to the last."""
    tables = [weighed.end()]
    for row in range(first, last - 1):
        tables.append(weighed.after(row, tables[-1], nodes=weighed.drawn.nodes_after(row)))
    return tables


def _early(only: Weighing, place: int, *, before: Weights) -> Weights:
    """The weights at the nodes at which all shares are known, by way of one row as it stands."""
    found = before
    for row in range(place, only.drawn.judged):
        found = only.after(row, found, nodes=only.drawn.nodes_after(row))
    return found


def _joined(weighed: Weighing, *, before: Weights, after: Weights) -> Weights:
    """For all numbers of points the greatest of what leads to a node and what leads on from it."""
    found = weighed.none(1)
    for slot in range(weighed.slots):
        both = before[:, 0, slot, None] + after[:, 0, : weighed.slots - slot]
        numpy.maximum(found[0, 0, slot:], both.max(axis=0), out=found[0, 0, slot:])
    return found
