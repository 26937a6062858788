"""The greatest worth for every way in which availability may turn out, all of them at once.

A pattern says of each entry that is rolled for whether it is to be had or not. The weights of all
patterns stand side by side; each entry that is rolled for doubles them: once without it, once with.

Only measured: no command asks for it. What a roll allows in part, what a refusal costs and in which
order to ask it doesn't know; the fall-back does.
"""

from dataclasses import dataclass
from fractions import Fraction

import numpy

from paradestate.chance.force.diagram import Diagram
from paradestate.chance.force.weighing import Weighing, Weights, weighing
from paradestate.core.certainty import NotComputed


@dataclass(frozen=True, slots=True, kw_only=True)
class PatternWorths:
    """The greatest worth of a legal force for each pattern, in a game of so many points."""

    rolled: tuple[str, ...]
    """The entries that are rolled for; the first decides in which half of the weights a pattern
    stands, the second in which half of that, and so on."""
    weighed: Weighing
    weights: Weights
    """One for each pattern."""

    def worth(self, available: frozenset[str]) -> Fraction | None:
        """The greatest worth when just these are to be had; None: no force is legal then."""
        place = 0
        for name in self.rolled:
            place = 2 * place + (name in available)
        return self.weighed.worth(int(self.weights[place]))


MOST_CELLS = 32_000_000
"""Patterns times numbers of points; of more the sums would fill the memory."""


def worths_by_pattern(
    drawn: Diagram, *, points: int, rolled: frozenset[str]
) -> PatternWorths | NotComputed:
    """The greatest worths with so many points. Refused where the patterns are too many."""
    slot = points - drawn.lowest
    if slot < 0 or not drawn.is_legal:
        return NotComputed(reason="nothing is legal, whatever is to be had")
    if drawn.slots << len(rolled) > MOST_CELLS:
        return NotComputed(reason=f"{len(rolled)} entries are rolled for, which is too many")
    weighed = weighing(drawn)
    found = weighed.end()
    for row in reversed(range(len(drawn.rows))):
        if row + 1 == drawn.judged:
            found = weighed.judged(found, points=points)
        found = _before(weighed, row, after=found, is_rolled=drawn.rows[row].entry in rolled)
    if not drawn.judged:
        found = weighed.judged(found, points=points)
    return PatternWorths(
        rolled=tuple(row.entry for row in drawn.rows if row.entry in rolled),
        weighed=weighed,
        weights=found[0, :, slot],
    )


def _before(weighed: Weighing, row: int, *, after: Weights, is_rolled: bool) -> Weights:
    found = weighed.before(row, after)
    if not is_rolled:
        return found
    without = weighed.before(row, after, empty=True)
    return numpy.concatenate((without, found), axis=1)
