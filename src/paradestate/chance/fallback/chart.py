"""The chart of a fall-back, drawn from the likeliest continuations down."""

from dataclasses import dataclass, field
from fractions import Fraction
from heapq import heappop, heappush
from typing import NamedTuple

from paradestate.chance.fallback.completion import BestSet
from paradestate.chance.fallback.decision import Decider, Decision, Outcome
from paradestate.chance.fallback.standing import UNSEEN
from paradestate.core.support.policy import Ask, Granted, Step, Take

MOST_ASKS = 150
"""Requests on one chart; a longer one would be read by nobody, and may be asked for from there."""


class Spot(NamedTuple):
    """A standing with points: what stands to be decided there is always the same."""

    standing: int
    """Its number."""
    points: int


Path = tuple[int, ...]
"""The outcomes that lead to a place on the chart, by number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartMaker:
    """Draws charts of one play. It remembers what it read."""

    decider: Decider
    unit: int
    """Whole numbers to one of the owner's worth."""
    worth_held: int
    """Of what is held and was rolled for, in whole numbers."""
    read: dict[Spot, tuple[Decision, ...]] = field(default_factory=dict)
    ends: dict[int, tuple[BestSet | None, ...]] = field(default_factory=dict)

    def chart(self, start: Spot, *, most: int = MOST_ASKS) -> Step:
        """The chart from a standing on, with at most so many requests followed."""
        followed: set[Path] = set()
        waiting: list[tuple[Fraction, Path, Spot]] = [(Fraction(-1), (), start)]
        while waiting and len(followed) < most:
            chance, path, spot = heappop(waiting)
            best = self.decisions(spot)[0]
            if best.asked is None:
                continue
            followed.add(path)
            outcomes = self._outcomes(best)
            ways = sum(outcome.ways for outcome in outcomes)
            for number, outcome in enumerate(outcomes):
                likely = chance * Fraction(outcome.ways, ways)
                heappush(waiting, (likely, (*path, number), Spot(outcome.standing, outcome.points)))
        return self._step(start, path=(), followed=followed)

    def decisions(self, spot: Spot) -> tuple[Decision, ...]:
        """Everything that may be decided at a spot, the best first."""
        if spot not in self.read:
            self.read[spot] = self.decider.decisions(spot.standing, points=spot.points)
        return self.read[spot]

    def worth(self, decision: Decision, *, at: int) -> Fraction:
        """What a decision comes to, in the owner's worth, what is held counted in."""
        scale = self.decider.scale(at)
        return Fraction(decision.value + self.worth_held * scale, scale * self.unit)

    def _outcomes(self, decision: Decision) -> tuple[Outcome, ...]:
        assert decision.asked is not None  # noqa: S101 - only requests have outcomes
        return self.decider.outcomes(
            decision.standing, index=decision.index, asked=decision.asked, points=decision.points
        )

    def _step(self, spot: Spot, *, path: Path, followed: set[Path]) -> Step:
        best, *others = self.decisions(spot)
        scale = self.decider.scale(spot.standing)
        to_come = Fraction(best.value, scale * self.unit)
        if best.asked is None:
            return Take(purchases=self._end(spot).purchases, points=spot.points, worth=to_come)
        outcomes = self._outcomes(best) if path in followed else ()
        ways = sum(outcome.ways for outcome in outcomes)
        return Ask(
            purchase=best.asked.purchase,
            points=spot.points,
            worth=to_come,
            outcomes=tuple(
                self._granted(
                    best,
                    outcome,
                    ways=ways,
                    scale=scale,
                    then=self._step(
                        Spot(outcome.standing, outcome.points),
                        path=(*path, number),
                        followed=followed,
                    ),
                )
                for number, outcome in enumerate(outcomes)
            ),
            before=best.before,
            is_tied=any(
                other.value == best.value and other.index != best.index for other in others
            ),
        )

    def _granted(
        self, decision: Decision, outcome: Outcome, *, ways: int, scale: int, then: Step
    ) -> Granted:
        whole = scale // ways * self.unit
        return Granted(
            allowed=outcome.allowed,
            chance=Fraction(outcome.ways, ways),
            takes=outcome.taken.purchase if outcome.taken else None,
            then=then,
            also=self._also(decision, outcome),
            is_tied=outcome.is_tied,
            worth=Fraction(outcome.value, whole),
            if_all=None if outcome.if_all is None else Fraction(outcome.if_all, whole),
        )

    def _also(self, decision: Decision, outcome: Outcome) -> dict[str, int]:
        prospect = self.decider.rules.prospect
        if outcome.case == UNSEEN:
            return {}
        roll = prospect.rolls[prospect.rolled[decision.index].roll]
        allowed = roll.cases[outcome.case].allowed
        asked = self.decider.values.play.standing(outcome.standing).asked
        return {
            prospect.rolled[member].offer.name: number
            for member, number in zip(roll.members, allowed, strict=True)
            if not asked >> member & 1
        }

    def _end(self, spot: Spot) -> BestSet:
        values = self.decider.values
        place = int(values.held_in[spot.standing])
        if place not in self.ends:
            held, opinion = values.held[place], values.opinions[0]
            self.ends[place] = self.decider.completions.best_sets(held, opinion)
        best = self.ends[place][spot.points]
        assert best is not None  # noqa: S101 - buying nothing is always possible
        return best
