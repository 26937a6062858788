"""The greatest worth of the ways on from a node, for all numbers of points at once.

A row of numbers stands at each node: for each slot of points the greatest worth of what can still
be taken for no more. Worths are whole numbers of a unit in which all of them are whole; each is
lessened by its points, of which so many make less than a unit, so that of forces with the same
worth the one with the fewest points is the greatest. Sums are exact: where they could pass the 64
bits of a machine's numbers, Python's own numbers are used.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import lcm
from typing import Any, NamedTuple, TypeAlias

import numpy
from numpy.typing import NDArray

from paradestate.chance.force.diagram import Diagram, Row
from paradestate.chance.force.taking import ValuedTaking

Weights = NDArray[Any]
"""For each node and pattern of availability (one, where none is asked about) the weights of all
slots."""

Places: TypeAlias = slice | NDArray[Any]
"""Some nodes of a row."""

Among: TypeAlias = frozenset[ValuedTaking]
"""Takings of one entry that may be taken, of all that it has."""

GREATEST_SUM = 1 << 60
"""Sums of greater weights leave the numbers of the machine."""
MOST_TOGETHER = 4_096
"""Nodes with more weights than this are moved one by one, where they stand."""


class Term(NamedTuple):
    """One taking of a bundle."""

    slots: int
    weight: int
    taking: ValuedTaking


class Passage(NamedTuple):
    """All ways on from the nodes of a row by one bundle."""

    bundle: int
    nodes: list[int]
    """Of the row, each once."""
    onward: list[int]
    """For each of them the node of the next row."""

    def places(self, *, together: bool) -> Sequence[tuple[Places, Places]]:
        """The nodes from which and to which it leads, all at once or one by one."""
        if together:
            return [(_places(self.nodes), _places(self.onward))]
        return [
            (_places([node]), _places([after]))
            for node, after in zip(self.nodes, self.onward, strict=True)
        ]


def _places(nodes: Sequence[int]) -> Places:
    """The nodes, as a slice where they follow one another: nothing is copied then."""
    first, number = nodes[0], len(nodes)
    if number == 1 or nodes == list(range(first, first + number)):
        return slice(first, first + number)
    return numpy.array(nodes)


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighing:
    """How worths of the forces of a diagram are weighed."""

    drawn: Diagram
    scale: int
    """The unit of worth is one over this."""
    slots: int
    """How many numbers of points a force may have; so many points weigh as much as a unit."""
    lost: int
    """The weight of what is impossible; half of it is below every sum of weights."""
    is_small: bool
    """Whether all sums fit the machine's numbers."""
    terms: tuple[tuple[tuple[Term, ...], ...], ...]
    """For each row and bundle all takings."""
    useful: tuple[tuple[tuple[tuple[int, int], ...], ...], ...]
    """The same, slots and weight of those alone that are worth more than all that cost less."""
    passages: tuple[tuple[Passage, ...], ...]
    """For each row the ways on, bundle by bundle."""

    def end(self) -> Weights:
        """Behind the last row nothing is left to gain."""
        return self._filled(0, nodes=1, patterns=1)

    def none(self, nodes: int, *, patterns: int = 1) -> Weights:
        """Where no way is left."""
        return self._filled(self.lost, nodes=nodes, patterns=patterns)

    def _filled(self, weight: int, *, nodes: int, patterns: int) -> Weights:
        shape = (nodes, patterns, self.slots)
        return numpy.full(shape, weight, dtype=numpy.int64 if self.is_small else object)

    def judged(self, weights: Weights, *, points: int) -> Weights:
        """These weights at the nodes at which all shares hold in a game of so many points."""
        drawn = self.drawn
        found = self.none(len(drawn.spent), patterns=weights.shape[1])
        found[list(drawn.allowed(points=points))] = weights[0]
        return found

    def is_lost(self, weight: int) -> bool:
        """Whether no way is left to a weight."""
        return weight < self.lost // 2

    def worth(self, weight: int) -> Fraction | None:
        """The worth that a weight stands for; None where no way is left."""
        if self.is_lost(weight):
            return None
        return Fraction(self.units(weight), self.scale)

    def units(self, weight: int) -> int:
        """The units of worth in a weight that its points have lessened."""
        return -(-int(weight) // self.slots)

    def among(self, row: int, among: Among) -> "Weighing":
        """The same forces with no takings of a row's entry but these."""
        terms = tuple(
            tuple(term for term in bundle if term.taking in among) for bundle in self.terms[row]
        )
        useful = tuple(_useful(bundle) for bundle in terms)
        return replace(
            self,
            terms=(*self.terms[:row], terms, *self.terms[row + 1 :]),
            useful=(*self.useful[:row], useful, *self.useful[row + 1 :]),
        )

    def takings(self, row: int) -> Among:
        """Every taking of a row's entry that the points can pay for."""
        return frozenset(term.taking for bundle in self.terms[row] for term in bundle)

    def before(self, row: int, after: Weights) -> Weights:
        """The weights at each node of a row."""
        useful = self.useful[row]
        patterns = after.shape[1]
        found = self.none(len(self.drawn.rows[row].ways), patterns=patterns)
        together = patterns * self.slots <= MOST_TOGETHER
        for passage in self.passages[row]:
            for nodes, onward in passage.places(together=together):
                part = found[nodes]
                self._reach(part, after[onward], terms=useful[passage.bundle])
                if not isinstance(nodes, slice):
                    found[nodes] = part
        return found

    def after(self, row: int, before: Weights, *, nodes: int) -> Weights:
        """The greatest weights of what leads to each of the `nodes` after a row."""
        found = self.none(nodes)
        for weights, ways in zip(before, self.drawn.rows[row].ways, strict=True):
            for bundle, node in ways:
                self._reach(found[node], weights, terms=self.useful[row][bundle])
        return found

    def _reach(self, found: Weights, weights: Weights, *, terms: Sequence[tuple[int, int]]) -> None:
        """Raises what was found to what these takings bring."""
        for shift, weight in terms:
            reached = found[..., shift:]
            numpy.maximum(reached, weights[..., : self.slots - shift] + weight, out=reached)


def weighing(drawn: Diagram) -> Weighing:
    """How the forces of a diagram are weighed by the worths of their owner."""
    scale = lcm(
        *(
            worth.denominator
            for row in drawn.rows
            for table in row.takings.offer.worths.values()
            for worth in table.values()
        )
    )
    terms = tuple(_terms(row, row.takings.valued(scale), slots=drawn.slots) for row in drawn.rows)
    most = drawn.slots + sum(
        max((abs(term.weight) for bundle in row for term in bundle), default=0) for row in terms
    )
    is_small = most < GREATEST_SUM
    return Weighing(
        drawn=drawn,
        scale=scale,
        slots=drawn.slots,
        lost=-4 * (GREATEST_SUM if is_small else most),
        is_small=is_small,
        terms=terms,
        useful=tuple(tuple(_useful(bundle) for bundle in row) for row in terms),
        passages=tuple(_passages(row) for row in drawn.rows),
    )


def _passages(row: Row) -> tuple[Passage, ...]:
    found = [Passage(bundle, [], []) for bundle in range(len(row.bundles))]
    for node, ways in enumerate(row.ways):
        for bundle, after in ways:
            found[bundle].nodes.append(node)
            found[bundle].onward.append(after)
    return tuple(found)


def _terms(
    row: Row, takings: Sequence[ValuedTaking], *, slots: int
) -> tuple[tuple[Term, ...], ...]:
    move_of = {
        (taking.purchases, taking.number, taking.points): move
        for taking, move in zip(row.plain, row.move_of, strict=True)
    }
    by_move: dict[int, list[Term]] = {}
    for taking in takings:
        shift = taking.points - row.lowest
        move = move_of[taking.purchases, taking.number, taking.points]
        reached = by_move.setdefault(move, [])
        if shift < slots:
            reached.append(Term(shift, taking.worth * slots - shift, taking))
    return tuple(tuple(term for move in bundle for term in by_move[move]) for bundle in row.bundles)


def _useful(terms: Sequence[Term]) -> tuple[tuple[int, int], ...]:
    found: list[tuple[int, int]] = []
    for term in sorted(terms, key=lambda term: (term.slots, -term.weight)):
        if not found or term.weight > found[-1][1]:
            found.append((term.slots, term.weight))
    return tuple(found)
