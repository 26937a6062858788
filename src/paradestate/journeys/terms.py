"""What may be bought in a game, and what is left to spend.

folder -> count -> game -> terms
"""

import datetime
import shlex
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.chance.dice import allowance_chances
from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.sentence.support import typed_words
from paradestate.core.support.chances import Chances, chances
from paradestate.core.support.offer import NO_CHOICE
from paradestate.core.support.terms import Terms, terms_of
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.count import Count, count_read
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class GameTerms:
    """The terms of a game with the force that plays it, or None with the stops in the way."""

    checked: Checked
    count: Count | None = None
    terms: Terms | None = None


def game_terms(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    grades: Mapping[str, str],
    ordered_too: bool = False,
    memory: Memory = NOTHING,
) -> GameTerms:
    """The terms of the chosen game; where a force has one game only, of that one.

    `grades` is scale to grade for those that aren't as usual. The holdings of the count leave out
    what is lent, which can't be fielded; with `ordered_too` what is on order counts as there.
    """
    read = checked(folder, today=today, memory=memory)
    if read.is_stopped:
        return GameTerms(checked=read)
    game, findings = game_of(read.force, choice.game)
    if findings:
        return GameTerms(checked=read.with_findings(*findings))
    chosen = replace(choice, game=game)
    counted = count_read(
        read, folder, today=today, choice=chosen, ordered_too=ordered_too, memory=memory
    )
    if counted.count is None:
        return GameTerms(checked=counted.checked)
    terms, more = terms_of(counted.count.force, counted.count.made, game=game, grades=grades)
    whole = counted.checked.with_findings(*more)
    return GameTerms(checked=whole, count=counted.count, terms=terms)


def plan_unsaid(terms: Terms, *, effect: str) -> tuple[Finding, ...]:
    """A remark how a plan is typed, where a game with something on offer has none."""
    if terms.game.plan or not terms.offers:
        return ()
    offers = list(terms.offers.values())
    with_choice = [each for each in offers if NO_CHOICE not in each.choices]
    shown = dict.fromkeys(each.name for each in (offers[0], *with_choice[:1]))
    typed = (
        Purchase(entry=name, number=min(offer.cost), choice=next(iter(offer.choices)))
        for name, offer in ((name, terms.offers[name]) for name in shown)
    )
    plan = ", ".join(map(typed_words, typed))
    return (
        Finding(
            level=Level.REMARK,
            code="plan-unsaid",
            message=f"No plan is made of supporting troops for {terms.game.name}.",
            effect=effect,
            hint=f"Type one, such as --plan {shlex.quote(plan)}, "
            "or write it under 'plan' of the game.",
            place=CHOSEN_HERE,
        ),
    )


def game_of(force: Force, chosen: str | None) -> tuple[str, tuple[Finding, ...]]:
    """The chosen game, or the only one; a stop where neither is there."""
    if chosen or len(force.games) == 1:
        return chosen or next(iter(force.games)), ()
    listed = ", ".join(f"'{name}'" for name in force.games)
    return "", (
        Finding(
            level=Level.STOP,
            code="game-unsaid",
            message="It isn't said which game is played." if listed else "The force has no game.",
            effect="Nothing is worked out.",
            hint=f"Choose one with --game: {listed}." if listed else "Add one under 'games'.",
            place=CHOSEN_HERE,
        ),
    )


def points_left(terms: Terms, *, rolled: int | None = None) -> Chances:
    """The chances of the points left, or the one number that was rolled."""
    if rolled is not None:
        return chances({rolled: 1})
    return allowance_chances(terms.game.allowance).moved(-terms.taken_off)
