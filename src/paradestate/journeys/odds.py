"""The odds of a plan in a game: does it suffice, does it come, and what may turn up.

folder -> terms of the game -> plan -> chances of the points left -> odds
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.chance.missions import mission_odds
from paradestate.chance.plan.plan_odds import plan_odds
from paradestate.core.choice import Choice
from paradestate.core.finding import Finding, stops
from paradestate.core.game import Purchase
from paradestate.core.place import KeyPath
from paradestate.core.support.breach import bill_of, breaches
from paradestate.core.support.chances import Chances
from paradestate.core.support.judge import judged
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.mission import MissionOdds
from paradestate.core.support.terms import Terms
from paradestate.core.support.turnout import PlanOdds
from paradestate.journeys.check import Checked
from paradestate.journeys.choosing import plan_of
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.terms import game_terms, plan_unsaid, points_left

BY_POINTS = {"over-points", "over-group-points", "below-group-points"}
"""Rules that hold or don't by how many points are rolled: of these the odds speak themselves."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OddsJourney:
    """The odds, or None with the stops that prevent them."""

    checked: Checked
    terms: Terms | None = None
    odds: PlanOdds | None = None
    missions: tuple[MissionOdds, ...] = ()
    """How many fire missions are fired, if all of the plan comes."""


def odds(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    grades: Mapping[str, str],
    plan: str = "",
    points: int | None = None,
    memory: Memory = NOTHING,
) -> OddsJourney:
    """The odds of the plan that was typed, or where none was of that of the game.

    `points` are those left once the allowance is rolled; None: not rolled yet.
    """
    found = game_terms(folder, today=today, choice=choice, grades=grades, memory=memory)
    if found.terms is None or found.count is None:
        return OddsJourney(checked=found.checked)
    terms, force = found.terms, found.count.force
    purchases, findings = plan_of(plan, entries=force.supporting_troops)
    at: KeyPath = ()
    if not plan.strip():
        purchases, at = terms.game.plan, ("games", terms.game.name, "plan")
        unsaid = plan_unsaid(terms, effect="The odds are those of the points alone.")
        found = replace(found, checked=found.checked.with_findings(*unsaid))
    allowance = points_left(terms, rolled=points)
    known = Known(are_most=points is None, places=force.places, at=at)
    findings = (*findings, *_broken(terms, purchases, allowance=allowance, known=known))
    if findings:
        return OddsJourney(checked=found.checked.with_findings(*findings), terms=terms)
    return OddsJourney(
        checked=found.checked,
        terms=terms,
        odds=plan_odds(terms, purchases, allowance=allowance),
        missions=tuple(mission_odds(purchases, entries=force.supporting_troops)),
    )


def _broken(
    terms: Terms, plan: tuple[Purchase, ...], *, allowance: Chances, known: Known
) -> Iterator[Finding]:
    """A stop for each rule that a plan breaks with any roll of its points; none without a plan."""
    points = max(allowance.counts)
    broken = breaches(bill_of(terms, plan, points=points))
    if not plan or all(breach.code in BY_POINTS for breach in broken):
        return  # the ways out, which take long to find, would not be told
    made = judged(terms, plan, points=points, known=known)
    for finding in stops(made.findings):
        if finding.code not in BY_POINTS:
            yield replace(finding, effect="It has no odds.")
