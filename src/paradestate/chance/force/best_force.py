"""The best legal forces by the worths of their owner, for every number of points."""

import heapq
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import count, islice, product
from typing import NamedTuple

from paradestate.chance.force.diagram import Diagram
from paradestate.chance.force.taking import ValuedTaking
from paradestate.chance.force.weighing import Weighing, Weights, weighing
from paradestate.core.game import Purchase
from paradestate.core.support.force_map import ValuedForce

Tables = tuple[Weights, ...]
"""For each row, and the end, the weights at its nodes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BestForces:
    """The best forces of a diagram, found as they are asked for."""

    weighed: Weighing
    rest: Tables
    """From the row on at which all shares of the points are known."""

    def worths(self, points: Sequence[int]) -> tuple[Fraction | None, ...]:
        """The greatest worth of a force with each of these numbers of points; None: none is legal.

        Each number of points is judged by its own shares.
        """
        reached, rest = reached_weights(self.weighed), self.rest[0]
        return greatest_worths(self.weighed, reached=reached, rest=rest, points=points)

    def best(self, *, points: int) -> ValuedForce | None:
        """A force of the greatest worth, of those one with the fewest points."""
        return next(self.ranked(points=points), None)

    def ranked(self, *, points: int) -> Iterator[ValuedForce]:
        """All legal forces, the greatest worth first, of the same worth the fewest points first."""
        yield from self._ranked(points=points, steps=False)

    def steps(self, *, points: int) -> Iterator[ValuedForce]:
        """For each worth that a force can have, the greatest first, one with the fewest points."""
        yield from self._ranked(points=points, steps=True)

    def _ranked(self, *, points: int, steps: bool) -> Iterator[ValuedForce]:
        slot = _slot(self.weighed.drawn, points=points)
        if points < 0:
            worth = _worth_of_nothing(self.weighed.drawn, points=points)
            if worth is not None:
                yield ValuedForce(purchases=(), points=0, worth=worth)
        elif slot is not None:
            yield from _ranked(self.weighed, self.tables(points=points), slot=slot, steps=steps)

    def tables(self, *, points: int) -> Tables:
        """The weights at all nodes, with the shares of a game of so many points."""
        tables = [self.weighed.judged(self.rest[0], points=points)]
        for row in reversed(range(self.weighed.drawn.judged)):
            tables.append(self.weighed.before(row, tables[-1]))
        return (*reversed(tables), *self.rest[1:])


def best_forces(drawn: Diagram) -> BestForces:
    """The best forces of a diagram, for every number of points up to its greatest."""
    return best_of(weighing(drawn))


def best_of(weighed: Weighing) -> BestForces:
    """The best of the forces that are weighed."""
    drawn = weighed.drawn
    tables = [weighed.end()]
    for row in reversed(range(drawn.judged, len(drawn.rows))):
        tables.append(weighed.before(row, tables[-1]))
    return BestForces(weighed=weighed, rest=tuple(reversed(tables)))


def greatest_worths(
    weighed: Weighing, *, reached: Weights, rest: Weights, points: Sequence[int]
) -> tuple[Fraction | None, ...]:
    """The greatest worths by the weights before and after all shares are known; None: none."""
    there: dict[tuple[int, ...], Weights] = {}
    found: list[Fraction | None] = []
    for number in points:
        if number < 0:
            found.append(_worth_of_nothing(weighed.drawn, points=number))
            continue
        slot = _slot(weighed.drawn, points=number)
        allowed = weighed.drawn.allowed(points=number)
        if slot is None or not allowed:
            found.append(None)
            continue
        if allowed not in there:
            there[allowed] = reached[list(allowed), 0].max(axis=0)
        both = there[allowed][: slot + 1] + rest[0, 0][slot::-1]
        found.append(weighed.worth(int(both.max())))
    return tuple(found)


def _worth_of_nothing(drawn: Diagram, *, points: int) -> Fraction | None:
    """With less than no points nothing may be taken; None where even that isn't legal."""
    return Fraction(0) if drawn.allows_nothing(points=points) else None


def _slot(drawn: Diagram, *, points: int) -> int | None:
    """The slot of a number of points; None where nothing at all is legal with so few."""
    slot = points - drawn.lowest
    return slot if slot >= 0 and drawn.is_legal else None


def reached_weights(weighed: Weighing) -> Weights:
    """The greatest weights before all shares are known, for each node at which they are."""
    found = weighed.end()
    for row in range(weighed.drawn.judged):
        found = weighed.after(row, found, nodes=weighed.drawn.nodes_after(row))
    return found


class _Step(NamedTuple):
    """A taking on the way to a node, and what was taken before it."""

    before: "_Step | None"
    row: int
    taking: ValuedTaking


class _Open(NamedTuple):
    """A node from which the search may go on; the first to be looked at is the least."""

    bound: int
    """The greatest weight that a force through here can have, below nought."""
    rows_left: int
    number: int
    """Tells those that are alike apart, in the order in which they were found."""
    node: int
    slot: int
    """Points that are left."""
    weight: int
    """Of what was taken."""
    steps: _Step | None


def _ranked(
    weighed: Weighing, tables: Tables, *, slot: int, steps: bool = False
) -> Iterator[ValuedForce]:
    """Forces by falling weight: a best-first search whose bounds are exact, so none is in vain.

    With `steps` ways that come to one node with the same worth are followed once: the first of them
    has the fewest points.
    """
    rows = len(weighed.drawn.rows)
    numbers = count()
    bound = int(tables[0][0, 0, slot])
    waiting = [_Open(-bound, rows, next(numbers), 0, slot, 0, None)]
    if weighed.is_lost(bound):
        return
    seen: set[tuple[int, int, int]] = set()
    while waiting:
        here = heapq.heappop(waiting)
        if steps:
            known = (here.rows_left, here.node, weighed.units(here.weight))
            if known in seen:
                continue
            seen.add(known)
        if not here.rows_left:
            yield from islice(_forces(weighed, here), 1 if steps else None)
            continue
        after = tables[rows - here.rows_left + 1]
        for each in _onward(weighed, after, here=here, numbers=numbers):
            heapq.heappush(waiting, each)


def _onward(
    weighed: Weighing, after: Weights, *, here: _Open, numbers: Iterator[int]
) -> Iterator[_Open]:
    """Every way on by one taking after which a legal force can still be had."""
    drawn = weighed.drawn
    row = len(drawn.rows) - here.rows_left
    joins = row + 1 == drawn.judged
    for bundle, node in drawn.rows[row].ways[here.node]:
        weights = after[node, 0]
        for slots, more, taking in weighed.terms[row][bundle]:
            slot = here.slot - slots
            if slot < 0:
                continue
            still = int(weights[slot])
            if weighed.is_lost(still):
                continue
            weight = here.weight + more
            yield _Open(
                -weight - still,
                here.rows_left - 1,
                next(numbers),
                0 if joins else node,
                slot,
                weight,
                _Step(here.steps, row, taking),
            )


def _forces(weighed: Weighing, end: _Open) -> Iterator[ValuedForce]:
    """Every force on a path: each multiset of a taking with each of the others."""
    drawn = weighed.drawn
    taken: list[_Step] = []
    step = end.steps
    while step is not None:
        if step.taking.purchases:
            taken.append(step)
        step = step.before
    for places in product(*(range(step.taking.ways) for step in taken)):
        purchases: list[Purchase] = []
        for step, place in zip(taken, places, strict=True):
            purchases.extend(
                drawn.rows[step.row].takings.valued_purchases_of(
                    step.taking, place, scale=weighed.scale
                )
            )
        yield ValuedForce(
            purchases=drawn.force(purchases),
            points=sum(step.taking.points for step in taken),
            worth=Fraction(sum(step.taking.worth for step in taken), weighed.scale),
        )
