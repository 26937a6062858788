"""What to ask for first in a game when the dice may refuse, and what then.

folder -> terms of the game -> what is held already -> best play by points -> its chart
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from paradestate.chance.fallback.best_play import fallback, level_choices
from paradestate.chance.fallback.prospect import Held
from paradestate.core.certainty import Certainty, Exact, NotComputed
from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.finding import Finding, Level, stops
from paradestate.core.place import nearest_place
from paradestate.core.support.breach import is_priced
from paradestate.core.support.chances import Chances
from paradestate.core.support.judge import judged
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.plan import plan_points
from paradestate.core.support.policy import Fallback, FirstChoice, LevelChoice
from paradestate.core.support.terms import Terms
from paradestate.journeys.check import Checked
from paradestate.journeys.choosing import plan_of
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.terms import GameTerms, game_terms, points_left


@dataclass(frozen=True, slots=True, kw_only=True)
class SoFar:
    """What was typed of an evening that has begun: plans of what was taken and what was refused."""

    taken: str = ""
    refused: str = ""


NOTHING_YET = SoFar()

LEASTS = {"below-least", "below-group", "below-group-points"}
"""Rules that what is taken so far needn't keep yet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FallbackJourney:
    """The best play, or no terms with the stops that prevent it."""

    checked: Checked
    terms: Terms | None = None
    allowance: Chances | None = None
    """The points left that may come of the allowance, or the one number that was given."""
    levels: tuple[LevelChoice, ...] = ()
    """For each of them the best play in short."""
    fallback: Fallback | None = None
    """The whole play, where the points are known."""
    certainty: Certainty = Exact()

    @property
    def value(self) -> Fraction | None:
        """The mean worth by the best play; None where it was not computed."""
        if self.allowance is None or not self.levels:
            return None
        return sum(
            (self.allowance.of(level.points) * level.worth for level in self.levels), Fraction(0)
        )


def best_fallback(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    grades: Mapping[str, str],
    points: int | None = None,
    so_far: SoFar = NOTHING_YET,
    memory: Memory = NOTHING,
) -> FallbackJourney:
    """The best play with these points left; None: with all that the allowance may come to.

    Where it can come to one number only, it is known without a roll.

    Points are those left before anything is bought, also where the evening has begun.
    """
    found = game_terms(folder, today=today, choice=choice, grades=grades, memory=memory)
    if found.terms is None:
        return FallbackJourney(checked=found.checked)
    held, findings = _held(found.terms, so_far, points=points)
    if not found.terms.offers:
        return FallbackJourney(checked=_with_a_stop(found.checked, code="nothing-on-offer"))
    findings = (*findings, *_without_worths(found, found.terms))
    checked = found.checked.with_findings(*findings)
    if stops(findings):
        return FallbackJourney(checked=checked)
    allowance = points_left(found.terms, rolled=points)
    if len(allowance.counts) == 1:
        (points,) = allowance.counts
    begun = FallbackJourney(checked=checked, terms=found.terms, allowance=allowance)
    levels = level_choices(found.terms, points=allowance.counts, held=held)
    if isinstance(levels, NotComputed):
        return replace(begun, certainty=levels)
    if points is None:
        return replace(begun, levels=levels)
    play = fallback(found.terms, points=points, held=held)
    if isinstance(play, NotComputed):
        return replace(begun, certainty=play)
    return replace(begun, levels=levels, fallback=play)


def shown_choices(play: Fallback) -> tuple[FirstChoice, ...]:
    """The first choices with each entry once, by the best number of it."""
    best: dict[str, FirstChoice] = {}
    for choice in play.first_choices:
        best.setdefault(choice.purchase.entry if choice.purchase else "", choice)
    return tuple(best.values())


def _held(terms: Terms, so_far: SoFar, *, points: int | None) -> tuple[Held, tuple[Finding, ...]]:
    """What is taken and may not be asked again, and the points that are gone for it."""
    taken, findings = plan_of(so_far.taken, entries=terms.offers)
    refused, more = plan_of(so_far.refused, entries=terms.offers)
    known = Known(are_most=points is None)
    left = terms.most_points if points is None else points
    judgements = [
        *((judged(terms, taken, points=left, known=known),) if taken else ()),
        *(
            judged(terms, (each,), points=terms.most_points, known=known)
            for each in refused
            if not is_priced(terms, each)
        ),
    ]
    findings = (
        *findings,
        *more,
        *(
            replace(finding, effect="It isn't said what to ask for.")
            for judgement in judgements
            for finding in stops(judgement.findings)
            if finding.code not in LEASTS
        ),
    )
    if findings:
        return Held(), findings
    lost = (
        each
        for each in refused
        if terms.offers[each.entry].is_prepaid(each.number, choice=each.choice)
    )
    return Held(
        taken=taken,
        asked=frozenset(each.entry for each in refused),
        paid=plan_points(terms.offers, taken) + plan_points(terms.offers, lost),
    ), ()


def _with_a_stop(checked: Checked, *, code: str) -> Checked:
    """The findings, of which this one leaves nothing to be worked out."""
    return replace(
        checked,
        findings=tuple(
            replace(each, level=Level.STOP) if each.code == code else each
            for each in checked.findings
        ),
    )


def _without_worths(found: GameTerms, terms: Terms) -> Iterator[Finding]:
    """A stop where nothing that is on offer has a worth."""
    worths = (
        worth
        for offer in terms.offers.values()
        for table in offer.worths.values()
        for worth in table.values()
    )
    if any(worth > 0 for worth in worths):
        return
    places = found.checked.force.places
    yield Finding(
        level=Level.STOP,
        code="worths-missing",
        message="Nothing that is on offer in this game has a worth.",
        effect="It can't be said what to ask for.",
        hint="Add 'worths:', your own opinion by number taken: {light tanks: {2: 10}}.",
        place=nearest_place(places, ("worths",)) if places else CHOSEN_HERE,
    )
