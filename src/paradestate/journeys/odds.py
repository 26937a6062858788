"""The odds of a plan in a game: does it suffice, does it come, and what may turn up.

folder -> terms of the game -> plan -> chances of the points left -> odds
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from paradestate.chance.dice import allowance_chances
from paradestate.chance.plan_odds import plan_odds
from paradestate.core.choice import CHOSEN_HERE, Choice, unknown_choice
from paradestate.core.finding import Finding, Level
from paradestate.core.game import Purchase
from paradestate.core.support.chances import Chances, chances
from paradestate.core.support.terms import Terms
from paradestate.core.support.turnout import PlanOdds
from paradestate.journeys.check import Checked
from paradestate.journeys.choosing import plan_of
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.terms import game_terms


@dataclass(frozen=True, slots=True, kw_only=True)
class OddsJourney:
    """The odds, or None with the stops that prevent them."""

    checked: Checked
    terms: Terms | None = None
    odds: PlanOdds | None = None


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
    if found.terms is None:
        return OddsJourney(checked=found.checked)
    terms = found.terms
    purchases, findings = plan_of(plan, entries=terms.offers)
    purchases = purchases if plan.strip() else terms.game.plan
    findings = (*findings, *_not_on_offer(terms, purchases))
    if findings:
        return OddsJourney(checked=found.checked.with_findings(*findings), terms=terms)
    allowance = points_left(terms, rolled=points)
    return OddsJourney(
        checked=found.checked, terms=terms, odds=plan_odds(terms, purchases, allowance=allowance)
    )


def points_left(terms: Terms, *, rolled: int | None = None) -> Chances:
    """The chances of the points left, or the one number that was rolled."""
    if rolled is not None:
        return chances({rolled: 1})
    return allowance_chances(terms.game.allowance).moved(-terms.taken_off)


def _not_on_offer(terms: Terms, plan: tuple[Purchase, ...]) -> Iterator[Finding]:
    """A stop for each purchase that can't be had at any price."""
    for purchase in plan:
        offer = terms.offers.get(purchase.entry)
        if purchase.entry in terms.absent:
            yield _stop("not-in-force", f"{purchase.entry}: {terms.absent[purchase.entry]}.")
        elif offer is None:
            yield unknown_choice(purchase.entry, terms.offers, what="entry")
        elif purchase.number not in offer.cost:
            numbers = " or ".join(str(number) for number in offer.cost)
            yield _stop(
                "number-not-priced",
                f"{offer.name} come in {numbers}; {purchase.number} isn't on the list.",
            )
        elif purchase.choice not in offer.choices:
            listed = ", ".join(offer.choices)
            yield _stop("choice-unknown", f"{offer.name}: choose one of {listed or 'nothing'}.")


def _stop(code: str, message: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect="Nothing is worked out.",
        hint="Take another number, or leave it out.",
        place=CHOSEN_HERE,
    )
