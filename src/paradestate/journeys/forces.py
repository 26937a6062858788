"""How many legal forces a game has, which is the best, and how many can be fielded.

folder -> terms of the game -> points -> diagram of all forces, and of those in hand -> answers
"""

import datetime
import random
from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import islice
from pathlib import Path

from paradestate.chance.dice import allowance_chances
from paradestate.chance.force.best_force import best_forces
from paradestate.chance.force.diagram import Diagram, diagram
from paradestate.chance.force.fielding import Fielding, depot
from paradestate.chance.force.force_draw import force_draw
from paradestate.chance.force.legal_count import legal_forces
from paradestate.core.certainty import NotComputed
from paradestate.core.choice import Choice
from paradestate.core.game import Purchase
from paradestate.core.support.chances import Chances
from paradestate.core.support.force_map import LevelForces, ValuedForce
from paradestate.core.support.plan import plan_points, plan_worth
from paradestate.core.support.terms import Terms
from paradestate.journeys.check import Checked
from paradestate.journeys.count import Count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.terms import game_terms

MOST_LISTED = 200
"""All forces are listed where there are no more."""
NEXT_BEST = 3
"""So many forces that are worth less than the best are named."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ForcesAsked:
    """What is asked of the legal forces of a game."""

    points: int | None = None
    """Points left; None: all that the dice may leave."""
    finished: bool = False
    """Whether only what is finished can be fielded, and not all that is owned."""
    seed: int | None = None
    """Where a force is drawn at random, the number from which chance starts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fieldable:
    """What can be fielded of the legal forces."""

    levels: tuple[LevelForces, ...]
    """The same numbers of points as those of all forces."""
    best: ValuedForce | None
    """With the points of which most is said."""
    every: frozenset[tuple[Purchase, ...]]
    """All with those points, where all legal forces are listed."""
    must_lacks: int
    """Figures that the must layer lacks already."""

    def at(self, points: int) -> int:
        """How many there are with so many points."""
        place = bisect_left(self.levels, points, key=lambda level: level.points)
        return self.levels[place].legal


@dataclass(frozen=True, slots=True, kw_only=True)
class ForcesFound:
    """The legal forces of a game."""

    terms: Terms
    points: int
    """Points left of which most is said; where none were given the median of the dice."""
    allowance: Chances | None
    """The points left by the dice; None where they were given."""
    levels: tuple[LevelForces, ...]
    """Points rising."""
    worths: tuple[Fraction | None, ...]
    """For each level the worth of its best force; None: nothing is legal."""
    best: tuple[ValuedForce, ...]
    """The best force; then, worth after worth, the cheapest that is worth less. Empty without
    worths, or where nothing is legal."""
    every: tuple[ValuedForce, ...]
    """All of them, by points, where they are few."""
    drawn: ValuedForce | None
    """One at random, each as likely as any other, where one was asked for."""
    finished: bool
    fieldable: Fieldable | NotComputed

    @property
    def level(self) -> LevelForces:
        """The level of which most is said."""
        return next(each for each in self.levels if each.points == self.points)

    @property
    def is_listed(self) -> bool:
        """Whether they are few enough to be listed."""
        return self.level.legal <= MOST_LISTED

    @property
    def has_worths(self) -> bool:
        """Whether the owner says a worth of anything on offer."""
        return any(table for offer in self.terms.offers.values() for table in offer.worths.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class ForcesAnswer:
    """The legal forces; why they weren't worked out; or None with the stops that prevent it."""

    checked: Checked
    found: ForcesFound | NotComputed | None = None


def forces(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    grades: Mapping[str, str],
    asked: ForcesAsked,
    memory: Memory = NOTHING,
) -> ForcesAnswer:
    """The legal forces of the chosen game of a folder, or of its only one."""
    answer = game_terms(folder, today=today, choice=choice, grades=grades, memory=memory)
    if answer.terms is None or answer.count is None:
        return ForcesAnswer(checked=answer.checked)
    terms, counted = answer.terms, answer.count
    found = memory.kept(
        ("forces", folder, repr(choice), repr(dict(grades)), asked),
        lambda: _found(terms, counted, asked=asked),
        rests_on=(counted,),
    )
    return ForcesAnswer(checked=answer.checked, found=found)


def _found(terms: Terms, counted: Count, *, asked: ForcesAsked) -> ForcesFound | NotComputed:
    allowance, points, levels = _points(terms, given=asked.points)
    drawn = diagram(terms, greatest=levels[-1])
    if isinstance(drawn, NotComputed):
        return drawn
    best = best_forces(drawn)
    every = _every(terms, drawn, points=points)
    found = ForcesFound(
        terms=terms,
        points=points,
        allowance=allowance,
        levels=legal_forces(drawn, points=levels),
        worths=best.worths(levels),
        best=(),
        every=every,
        drawn=_at_random(terms, drawn, points=points, seed=asked.seed),
        finished=asked.finished,
        fieldable=_fieldable(terms, counted, levels=levels, points=points, asked=asked),
    )
    if not found.has_worths:
        return found
    return replace(found, best=tuple(islice(best.steps(points=points), 1 + NEXT_BEST)))


def _points(terms: Terms, *, given: int | None) -> tuple[Chances | None, int, Sequence[int]]:
    """The chances of the points left, those of which most is said, and all levels, rising."""
    if given is not None:
        return None, given, range(min(0, given), given + 1)
    allowance = allowance_chances(terms.game.allowance).moved(-terms.taken_off)
    return allowance, allowance.quantile(Fraction(1, 2)), tuple(allowance.counts)


def _every(terms: Terms, drawn: Diagram, *, points: int) -> tuple[ValuedForce, ...]:
    walk = force_draw(drawn, points=points)
    if walk.number > MOST_LISTED:
        return ()
    place = {name: number for number, name in enumerate(terms.offers)}
    return tuple(
        sorted(
            (_valued(terms, purchases) for purchases in walk.every()),
            key=lambda force: (
                force.points,
                [(place[each.entry], each.number, each.choice) for each in force.purchases],
            ),
        )
    )


def _at_random(
    terms: Terms, drawn: Diagram, *, points: int, seed: int | None
) -> ValuedForce | None:
    walk = force_draw(drawn, points=points)
    if seed is None or not walk.number:
        return None
    # Not for secrets: the same number gives the same force.
    return _valued(terms, walk.at_random(random.Random(seed)))  # noqa: S311


def _valued(terms: Terms, purchases: tuple[Purchase, ...]) -> ValuedForce:
    return ValuedForce(
        purchases=purchases,
        points=plan_points(terms.offers, purchases),
        worth=plan_worth(terms.offers, purchases),
    )


def _fieldable(
    terms: Terms, counted: Count, *, levels: Sequence[int], points: int, asked: ForcesAsked
) -> Fieldable | NotComputed:
    """The legal forces that can be put on the table with what is owned, or finished."""
    owned = depot(counted.force, counted.made, finished=asked.finished)
    entries = {name: counted.force.supporting_troops[name] for name in terms.offers}
    fielding = Fielding(owned, entries)
    if fielding.refusal is not None:
        return fielding.refusal
    drawn = diagram(terms, greatest=levels[-1], more=fielding.ties)
    if isinstance(drawn, NotComputed):
        return drawn
    walk = force_draw(drawn, points=points)
    return Fieldable(
        levels=legal_forces(drawn, points=levels),
        best=best_forces(drawn).best(points=points),
        every=frozenset(walk.every() if walk.number <= MOST_LISTED else ()),
        must_lacks=owned.must_lacks,
    )
