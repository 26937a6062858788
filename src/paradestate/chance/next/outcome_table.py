"""The best forces of now and of then for everything that may come of the dice of a game."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import TypeAlias

from paradestate.chance.force.allowed import Profile
from paradestate.chance.force.best_force import BestForces, best_of
from paradestate.chance.next.game_worth import GameWorth
from paradestate.chance.next.reach import ReachKey
from paradestate.core.advice.advice import OutcomeRow
from paradestate.core.support.force_map import ValuedForce

Place: TypeAlias = int | None
"""An outcome of the rolls; None: they allow everything."""

MOST_OUTCOMES = 8
"""Outcomes of the rolls that are told apart; of more only what comes if all is allowed is said."""


def outcome_rows(game: GameWorth, *, now: ReachKey, then: ReachKey) -> Iterator[OutcomeRow]:
    """For each number of points and outcome of the rolls both forces.

    Outcomes with the same forces stand together.
    """
    rolls = _Rolls(game)
    forces = {key: [rolls.best(key, outcome) for outcome in rolls.places] for key in {now, then}}
    found: dict[tuple[int, ValuedForce | None, ValuedForce | None], list[Place]] = {}
    for level in game.levels:
        for at, outcome in enumerate(rolls.places):
            one, other = (
                rolls.force(forces[key][at], outcome, points=level) for key in (now, then)
            )
            found.setdefault((level, one, other), []).append(outcome)
    for level in game.play.points.counts:
        if level < 0:
            force = _without_points(game, now, points=level)
            yield OutcomeRow(
                game=game.play.terms.game.name,
                points=level,
                chance=game.play.points.of(level),
                allowed=({},),
                now=force,
                then=force,
            )
    for (level, one, other), outcomes in found.items():
        yield OutcomeRow(
            game=game.play.terms.game.name,
            points=level,
            chance=game.play.points.of(level) * sum(map(rolls.chance, outcomes)),
            allowed=tuple(map(rolls.allowed, outcomes)) if rolls.are_few else (),
            now=one,
            then=other,
        )


def _without_points(game: GameWorth, key: ReachKey, *, points: int) -> ValuedForce | None:
    """The force of nothing, where there are less than no points; None where it isn't legal."""
    weighed = game.weighing_of(key)
    if weighed is None or not weighed.drawn.allows_nothing(points=points):
        return None
    return ValuedForce(worth=Fraction(0), points=0, purchases=())


class _Rolls:
    """The outcomes of the rolls that are told apart, or one in which all is allowed."""

    def __init__(self, game: GameWorth) -> None:
        self._game = game
        self._rolls = game.outcomes
        number = len(self._rolls.ways)
        self.are_few = self._rolls.lot is None and number <= MOST_OUTCOMES
        self.places: Sequence[Place] = range(number) if self.are_few else (None,)

    def chance(self, outcome: Place) -> Fraction:
        """How likely it is."""
        ways = self._rolls.ways
        return Fraction(1) if outcome is None else Fraction(ways[outcome], sum(ways))

    def allowed(self, outcome: Place) -> Mapping[str, int]:
        """Entry to the greatest number of it, over all purchases; where it is always that, none."""
        return {
            entry: max(map(sum, numbers))
            for entry, numbers in self._numbers(outcome).items()
            if len(self._rolls.numbers[entry]) > 1
        }

    def best(self, key: ReachKey, outcome: Place) -> BestForces | None:
        """The best forces that can be fielded by stocks with a key; None where none is legal."""
        weighed = self._game.weighing_of(key)
        if weighed is None:
            return None
        for row, each in enumerate(weighed.drawn.rows):
            if outcome is not None and each.entry in self._rolls.classes:
                place = int(self._rolls.chosen[each.entry][outcome])
                weighed = weighed.among(row, self._rolls.classes[each.entry][place])
        return best_of(weighed)

    def force(
        self, forces: BestForces | None, outcome: Place, *, points: int
    ) -> ValuedForce | None:
        """The best of these forces that the rolls allow; purchases of like worth may be barred."""
        numbers = self._numbers(outcome)
        every = forces.ranked(points=points) if forces else ()
        return next((force for force in every if _is_allowed(force, numbers)), None)

    def _numbers(self, outcome: Place) -> Mapping[str, frozenset[Profile]]:
        """Entry that is rolled for to the numbers of purchases that are allowed."""
        if outcome is None:
            return {}
        return {
            entry: every[int(self._rolls.chosen[entry][outcome])]
            for entry, every in self._rolls.numbers.items()
        }


def _is_allowed(force: ValuedForce, numbers: Mapping[str, frozenset[Profile]]) -> bool:
    taken: dict[str, list[int]] = {entry: [] for entry in numbers}
    for each in force.purchases:
        if each.entry in taken:
            taken[each.entry].append(each.number)
    return all(tuple(sorted(each, reverse=True)) in numbers[entry] for entry, each in taken.items())
