"""The greatest worths for many patterns at once: what may be taken of each entry in each of them.

A pattern says of some entries which of their takings there may be: what the dice allow of them,
what can be fielded. The weights of all patterns stand side by side, and patterns that end alike
share them: before a row there are as many weights as patterns differ from that row on. Whoever asks
for every way in which n entries may turn out, 2^n of them, pays for all only at the last row.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple, TypeAlias

import numpy
from numpy.typing import NDArray

from paradestate.chance.force.weighing import Among, Weighing, Weights

Numbers: TypeAlias = NDArray[Any]
"""Whole numbers, one for each pattern."""

MOST_CELLS = 4_000_000
"""Weights that stand side by side at the nodes of a row; those who ask for more ask in parts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Patterns:
    """What there may be of some entries, pattern after pattern; of all others everything."""

    number: int
    """How many patterns there are."""
    classes: Mapping[str, Sequence[Among]]
    """Entry to sets of its takings."""
    chosen: Mapping[str, Numbers]
    """Entry to the place of its set, for each pattern."""


class _Start(NamedTuple):
    """Ends of patterns that have the same takings at a row."""

    among: Among
    onward: Numbers
    """Their places among the ends that begin with the next row."""


def greatest_weights(weighed: Weighing, patterns: Patterns, *, points: Sequence[int]) -> Weights:
    """For each pattern and each number of points the greatest weight of a legal force.

    Points are nought or more, and no more than the greatest of the diagram.
    """
    drawn = weighed.drawn
    starts, place = _ends(weighed, patterns)
    rest = weighed.end()
    for row in reversed(range(drawn.judged, len(drawn.rows))):
        rest = _before(weighed, row, after=rest, starts=starts)
    found = numpy.empty((patterns.number, len(points)), dtype=rest.dtype)
    for level, columns in _levels(weighed, points):
        before = weighed.judged(rest, points=level)
        for row in reversed(range(drawn.judged)):
            before = _before(weighed, row, after=before, starts=starts)
        slots = [points[column] - drawn.lowest for column in columns]
        found[:, columns] = before[0][:, slots][place]
    return found


def most_side_by_side(weighed: Weighing, patterns: Patterns) -> int:
    """How many weights `greatest_weights` holds at once at the most."""
    starts, _ = _ends(weighed, patterns)
    ends = 1
    most = 0
    for row in reversed(range(len(weighed.drawn.rows))):
        if row in starts:
            ends = sum(len(start.onward) for start in starts[row])
        most = max(most, ends * len(weighed.drawn.rows[row].ways) * weighed.slots)
    return most


def _ends(weighed: Weighing, patterns: Patterns) -> tuple[Mapping[int, Sequence[_Start]], Numbers]:
    """For each row that has classes the different ends from there on, and which end patterns have.

    Ends stand class after class, in the order of their starts.
    """
    place = numpy.zeros(patterns.number, dtype=numpy.int64)
    number = 1
    starts: dict[int, Sequence[_Start]] = {}
    for row in reversed(range(len(weighed.drawn.rows))):
        entry = weighed.drawn.rows[row].entry
        if entry not in patterns.classes:
            continue
        different, place = numpy.unique(
            patterns.chosen[entry] * number + place, return_inverse=True
        )
        classes, onward = different // number, different % number
        starts[row] = [
            _Start(among, onward[classes == each])
            for each, among in enumerate(patterns.classes[entry])
            if (classes == each).any()
        ]
        number = len(different)
    return starts, place


def _before(
    weighed: Weighing, row: int, *, after: Weights, starts: Mapping[int, Sequence[_Start]]
) -> Weights:
    """The weights before a row, of all ends that begin with it."""
    if row not in starts:
        return weighed.before(row, after)
    parts = [
        weighed.among(row, start.among).before(row, after[:, start.onward]) for start in starts[row]
    ]
    return parts[0] if len(parts) == 1 else numpy.concatenate(parts, axis=1)


def _levels(weighed: Weighing, points: Sequence[int]) -> Iterator[tuple[int, list[int]]]:
    """Numbers of points that all shares judge alike: one of them, and the places of all."""
    columns: dict[tuple[int, ...], list[int]] = {}
    for column, number in enumerate(points):
        columns.setdefault(weighed.drawn.allowed(points=number), []).append(column)
    for each in columns.values():
        yield points[each[0]], each
