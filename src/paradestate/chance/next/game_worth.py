"""The greatest worths that many stocks have in one game, for everything that may come of its dice.

Points left and what availability allows are counted out together. All stocks that differ only in
how much of single entries they let be fielded go through the decision diagram in one walk.
"""

from collections.abc import Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeAlias

import numpy
from numpy.typing import NDArray

from paradestate.chance.force.allowed import Lot, Outcomes, outcomes_of
from paradestate.chance.force.diagram import Diagram, diagram
from paradestate.chance.force.fielding import Depot, Fielding
from paradestate.chance.force.pattern import (
    MOST_CELLS,
    Numbers,
    Patterns,
    greatest_weights,
    most_side_by_side,
)
from paradestate.chance.force.weighing import Among, Weighing, weighing
from paradestate.chance.next.reach import Ground, Reach, ReachKey
from paradestate.core.certainty import NotComputed
from paradestate.core.support.chances import Chances
from paradestate.core.support.entry import Entry
from paradestate.core.support.terms import Terms

Units: TypeAlias = NDArray[Any]
"""Worths in units of one over the scale: stock by stock, outcome by outcome, points by points."""

GREATEST_SUM = 1 << 62
"""Sums that may be greater are made with Python's own numbers."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Play:
    """One game as it is played."""

    terms: Terms
    entries: Mapping[str, Entry]
    """Those on offer."""
    points: Chances
    """Points left."""
    share: Fraction
    """Of all games."""
    most: Depot
    """A stock that lets be fielded whatever any stock that is asked about does."""
    asked: frozenset[str]
    """Entries of which stocks let more or less be fielded."""

    @property
    def greatest(self) -> int:
        """The most points left, none below nought."""
        return max(0, *self.points.counts)

    def drawn(self, reach: Reach | None = None) -> Diagram | NotComputed:
        """The diagram of all forces, or of those that hold the ties of a reach."""
        ties = tuple(reach.ties.values()) if reach else ()
        return diagram(self.terms, greatest=self.greatest, more=lambda _: ties, asked=self.asked)


class GameWorth:
    """Worths of stocks in one game."""

    def __init__(
        self, play: Play, *, weighed: Weighing, outcomes: Outcomes, ground: Ground
    ) -> None:
        self.play = play
        self.outcomes = outcomes
        self.ground = ground
        self.levels = [number for number in play.points.counts if number >= 0]
        """Points left with which anything may be taken."""
        self.scale = weighed.scale
        self._weighed: dict[Hashable, Weighing | NotComputed | None] = {frozenset(): weighed}

    def refusal(self, keys: Iterable[ReachKey]) -> NotComputed | None:
        """Why the worths of some stocks can't be worked out; None where they can."""
        for key in keys:
            reach = self.ground.reach(key)
            ties = frozenset(reach.ties)
            if ties not in self._weighed:
                self._weighed[ties] = self._weighing(reach)
            weighed = self._weighed[ties]
            if isinstance(weighed, NotComputed):
                return weighed
        return None

    def units(self, keys: Iterable[ReachKey]) -> Iterator[tuple[Sequence[ReachKey], Units]]:
        """The worths of stocks, part by part of them in any order; nought where none is legal.

        Of stocks that aren't refused.
        """
        alike: dict[Hashable, list[ReachKey]] = {}
        for key in dict.fromkeys(keys):
            alike.setdefault(frozenset(self.ground.reach(key).ties), []).append(key)
        for ties, together in alike.items():
            yield from self._units(self._weighed[ties], together)

    def weighing_of(self, key: ReachKey) -> Weighing | None:
        """How forces are weighed that can be fielded with a stock, of those asked about before.

        None where no force is legal.
        """
        reach = self.ground.reach(key)
        weighed = self._weighed[frozenset(reach.ties)]
        if not isinstance(weighed, Weighing):
            return None
        for row, each in enumerate(weighed.drawn.rows):
            if each.entry in reach.among:
                weighed = weighed.among(row, reach.among[each.entry])
        return weighed

    def _weighing(self, reach: Reach) -> Weighing | NotComputed | None:
        """How forces are weighed that hold some ties; None where none does."""
        drawn = self.play.drawn(reach)
        if isinstance(drawn, NotComputed):
            return drawn
        return weighing(drawn) if drawn.is_legal else None

    def _units(
        self, weighed: Weighing | NotComputed | None, keys: Sequence[ReachKey]
    ) -> Iterator[tuple[Sequence[ReachKey], Units]]:
        rolls, levels = len(self.outcomes.ways), len(self.levels)
        if not isinstance(weighed, Weighing):
            yield keys, numpy.zeros((len(keys), rolls, levels), dtype=numpy.int64)
            return
        patterns = self._patterns(keys)
        if len(keys) > 1 and most_side_by_side(weighed, patterns) > MOST_CELLS:
            half = len(keys) // 2
            yield from self._units(weighed, keys[:half])
            yield from self._units(weighed, keys[half:])
            return
        weights = greatest_weights(weighed, patterns, points=self.levels)
        units = -(-weights // weighed.slots)
        units[(weights < weighed.lost // 2) | (units < 0)] = 0
        yield keys, units.reshape(len(keys), rolls, levels)

    def _patterns(self, keys: Sequence[ReachKey]) -> Patterns:
        """Every stock with every outcome of the rolls."""
        rolls = self.outcomes
        reaches = [self.ground.reach(key) for key in keys]
        limited = {entry: None for reach in reaches for entry in reach.among}
        classes: dict[str, Sequence[Among]] = {}
        chosen: dict[str, Numbers] = {}
        for entry in limited | dict.fromkeys(rolls.classes):
            every = self.ground.every[entry]
            fielded = [reach.among.get(entry, every) for reach in reaches]
            allowed = rolls.classes.get(entry, (every,))
            at = rolls.chosen.get(entry, numpy.zeros(len(rolls.ways), dtype=numpy.int64))
            sets: dict[Among, int] = {}
            place = [
                [sets.setdefault(one & other, len(sets)) for other in allowed] for one in fielded
            ]
            classes[entry] = tuple(sets)
            chosen[entry] = numpy.array(place, dtype=numpy.int64)[:, at].ravel()
        return Patterns(number=len(keys) * len(rolls.ways), classes=classes, chosen=chosen)


def game_worth(play: Play, *, lot: Lot) -> GameWorth | NotComputed | None:
    """Worths in a game; refused where it is too large; None where nothing is legal in it."""
    refusal = Fielding(play.most, play.entries).refusal
    drawn = play.drawn()
    if refusal is not None:
        return refusal
    if isinstance(drawn, NotComputed):
        return drawn
    if not drawn.is_legal:
        return None
    weighed = weighing(drawn)
    ground = Ground(drawn, play.entries, most=play.most, scale=weighed.scale)
    most = ground.reach(ground.key(play.most))
    outcomes = outcomes_of(
        weighed,
        within={name: most.among.get(name, every) for name, every in ground.every.items()},
        lot=lot,
    )
    if isinstance(outcomes, NotComputed):
        return outcomes
    return GameWorth(play, weighed=weighed, outcomes=outcomes, ground=ground)
