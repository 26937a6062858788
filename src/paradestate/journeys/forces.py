"""How many legal forces a game has, which is the best, and how many can be fielded.

folder -> terms of the game -> points -> diagram of all forces, and of those in hand -> answers

Where a diagram would be too large the best force alone is searched for.
"""

import datetime
import random
from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import islice
from pathlib import Path

from paradestate.chance.force.best_force import best_forces
from paradestate.chance.force.diagram import Diagram, diagram
from paradestate.chance.force.fielding import Depot, Fielding, depot
from paradestate.chance.force.force_draw import force_draw
from paradestate.chance.force.legal_count import legal_forces
from paradestate.chance.force.searched_force import searched_force
from paradestate.core.certainty import NotComputed
from paradestate.core.choice import Choice
from paradestate.core.game import Purchase
from paradestate.core.support.chances import Chances
from paradestate.core.support.force_map import LevelForces, SearchedForce, ValuedForce
from paradestate.core.support.plan import plan_points, plan_worth
from paradestate.core.support.terms import Terms
from paradestate.journeys.check import Checked
from paradestate.journeys.count import Count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.terms import game_terms, points_left

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
    steps: int | None = None
    """How far the best force is searched for, where the forces are too many to be told apart;
    None: as far as a command waits."""


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
    searched: SearchedForce | None = None
    """The best that can be fielded, where how many can wasn't computed and something has a worth;
    None too where it isn't known what can be fielded."""

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
        return self.terms.has_worths


@dataclass(frozen=True, slots=True, kw_only=True)
class BestAlone:
    """The best force of a game whose legal forces are too many to be told apart."""

    terms: Terms
    points: int
    """Points left; where none were given the median of the dice."""
    are_given: bool
    reason: str
    """Why the number of legal forces wasn't computed."""
    best: SearchedForce
    finished: bool
    fieldable: SearchedForce | NotComputed
    """The best that can be fielded."""
    is_draw_asked: bool
    """Whether one at random was asked for, which there can't be without their number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ForcesAnswer:
    """The legal forces, or the best alone; why neither was worked out; or None with the stops."""

    checked: Checked
    found: ForcesFound | BestAlone | NotComputed | None = None


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


def _found(
    terms: Terms, counted: Count, *, asked: ForcesAsked
) -> ForcesFound | BestAlone | NotComputed:
    allowance, points, levels = _points(terms, given=asked.points)
    drawn = diagram(terms, greatest=levels[-1])
    if isinstance(drawn, NotComputed):
        return _best_alone(terms, counted, points=points, asked=asked, drawn=drawn)
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
    return replace(
        found,
        best=tuple(islice(best.steps(points=points), 1 + NEXT_BEST)),
        searched=_searched_in_hand(found, counted, asked=asked),
    )


def _best_alone(
    terms: Terms, counted: Count, *, points: int, asked: ForcesAsked, drawn: NotComputed
) -> BestAlone | NotComputed:
    """The best of all and of those in hand; `drawn` says why there is no diagram."""
    if not terms.has_worths:
        return drawn
    best = searched_force(terms, points=points, steps=asked.steps)
    if isinstance(best, NotComputed):
        return drawn
    fielding, _ = _in_hand(terms, counted, finished=asked.finished)
    return BestAlone(
        terms=terms,
        points=points,
        are_given=asked.points is not None,
        reason=drawn.reason,
        best=best,
        finished=asked.finished,
        fieldable=fielding.refusal
        or searched_force(terms, points=points, more=fielding.ties, steps=asked.steps),
        is_draw_asked=asked.seed is not None,
    )


def _searched_in_hand(
    found: ForcesFound, counted: Count, *, asked: ForcesAsked
) -> SearchedForce | None:
    """The best that can be fielded, where how many can wasn't computed."""
    if not isinstance(found.fieldable, NotComputed):
        return None
    fielding, _ = _in_hand(found.terms, counted, finished=asked.finished)
    if fielding.refusal is not None:
        return None
    best = searched_force(found.terms, points=found.points, more=fielding.ties, steps=asked.steps)
    return None if isinstance(best, NotComputed) else best


def _points(terms: Terms, *, given: int | None) -> tuple[Chances | None, int, Sequence[int]]:
    """The chances of the points left, those of which most is said, and all levels, rising."""
    if given is not None:
        return None, given, range(min(0, given), given + 1)
    allowance = points_left(terms)
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
    fielding, owned = _in_hand(terms, counted, finished=asked.finished)
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


def _in_hand(terms: Terms, counted: Count, *, finished: bool) -> tuple[Fielding, Depot]:
    owned = depot(counted.force, counted.made, finished=finished)
    entries = {name: counted.force.supporting_troops[name] for name in terms.offers}
    return Fielding(owned, entries), owned
