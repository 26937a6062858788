"""Doubts about the plans of games: what the judge says of them, however the allowance falls."""

from collections.abc import Iterator
from dataclasses import replace

from paradestate.core.choice import Choice, chosen
from paradestate.core.dice import Dice
from paradestate.core.establishment import Establishment, LayerTotals, establishment
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.game import Allowance, Game
from paradestate.core.number import NONE
from paradestate.core.review.rule import Rule
from paradestate.core.rollup import Rollup
from paradestate.core.span import ALWAYS, Hold
from paradestate.core.support.entry import Entry
from paradestate.core.support.judge import judged
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.terms import terms_of

SLIPS = {"number-not-priced", "choice-unknown", "choice-missing", "not-in-force"}
"""Codes of slips in one purchase, whatever is raised: there is no such thing to be bought."""


def plans(force: Force) -> Iterator[Finding]:
    """Plans that aren't legal in their games at the usual grades, however the allowance falls."""
    for game in force.games.values():
        if game.plan and _is_whole(game.allowance):
            yield from _plan(force, game)


def _is_whole(allowance: Allowance) -> bool:
    """Whether every roll of it gives something; where one doesn't, the rolls are stopped at."""
    return isinstance(allowance, Dice) or all(
        any(row.holds(total) for row in allowance.gives) for total in allowance.roll.totals()
    )


def _plan(force: Force, game: Game) -> Iterator[Finding]:
    picked, findings = chosen(_with_the_benefit_of_the_doubt(force), Choice(game=game.name))
    made, _ = establishment(picked) if not findings else (None, ())
    terms, _ = terms_of(picked, made or _unraised(picked), game=game.name, grades={})
    if terms is None or any(each.entry not in force.supporting_troops for each in game.plan):
        return
    known = Known(are_most=True, places=force.places, at=("games", game.name, "plan"))
    judgement = judged(terms, game.plan, points=terms.most_points, known=known)
    for found in judgement.findings:
        if found.code in SLIPS:
            yield found
        elif found.level is Level.STOP and made is not None:
            yield replace(
                found,
                level=Level.WARN,
                message=f"{game.name}: {found.message}",
                effect="The plan isn't legal; everything else is worked out all the same.",
            )


def _unraised(force: Force) -> Establishment:
    """An establishment of nothing, for slips that don't rest on what is raised."""
    nothing = LayerTotals(stands={}, printed={}, figures={}, by_sort={}, men=NONE)
    return Establishment(
        formation="",
        date=force.raise_.date if force.raise_ else None,
        theatre=force.raise_.theatre if force.raise_ else "",
        stands=(),
        bodies=(),
        rollup=Rollup(stands={}, figures={}, number_of_things=0, chains={}, paper_men={}),
        must=nothing,
        wished=nothing,
    )


def _with_the_benefit_of_the_doubt(force: Force) -> Force:
    """The force with entries to be had of which the date doesn't say whether they can."""
    troops = {name: _doubted(force, entry) for name, entry in force.supporting_troops.items()}
    return replace(force, supporting_troops=troops)


def _doubted(force: Force, entry: Entry) -> Entry:
    date = force.raise_.date if force.raise_ else None
    if date is None or entry.window.holds(date) is Hold.PARTLY:
        return replace(entry, window=ALWAYS)
    return entry


RULES: tuple[Rule, ...] = (plans,)
