"""The game that papers are made for, with its plan, its reserve, and its terms where they matter.

folder -> counted -> game as it was typed -> plan, reserve, terms
"""

import datetime
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.choice import Choice, unknown_choice
from paradestate.core.finding import Finding, stops
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.paper.ground import NO_RESERVE
from paradestate.core.support.reserve import Reserve, reserve_findings, reserve_of
from paradestate.core.support.terms import Terms, terms_of
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.choosing import typed_finding
from paradestate.journeys.count import Count, count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.paper_kind import Asked
from paradestate.journeys.terms import game_of
from paradestate.text.slip import Slip
from paradestate.text.typed import read_purchases


@dataclass(frozen=True, slots=True, kw_only=True)
class GameMeant:
    """The game, or the force alone where none is chosen; no count where stops prevent it."""

    checked: Checked
    choice: Choice
    count: Count | None = None
    plan: tuple[Purchase, ...] = ()
    reserve: Reserve = NO_RESERVE
    terms: Terms | None = None
    """Those at the grades that were chosen; None where nobody chose any."""


def game_meant(
    folder: Path, *, today: datetime.date, choice: Choice, asked: Asked, memory: Memory = NOTHING
) -> GameMeant:
    """The game of a folder as it was typed; with grades its only one, where none is named.

    Raises FileError.
    """
    read = checked(folder, today=today, memory=memory)
    if asked.grades and not read.is_stopped:
        game, unsaid = game_of(read.force, choice.game)
        if unsaid:
            return GameMeant(checked=read.with_findings(*unsaid), choice=choice)
        choice = replace(choice, game=game)
    answer = count(folder, today=today, choice=choice, memory=memory)
    if answer.count is None:
        return GameMeant(checked=answer.checked, choice=choice)
    force, made, game = answer.count.force, answer.count.made, choice.game or ""
    plan, findings = _plan(force, asked.plan, game=game)
    reserve = reserve_of(asked.reserve, purchases=(), plan=plan, formations=force.formations)
    terms, of_grades = None, ()
    if asked.grades:
        terms, of_grades = terms_of(force, made, game=game, grades=asked.grades)
    doubts = (
        *findings,
        *reserve_findings(reserve, force=force, made=made, plan=plan),
        *of_grades,
    )
    return GameMeant(
        checked=answer.checked.with_findings(*doubts),
        choice=choice,
        count=None if stops(doubts) else answer.count,
        plan=plan,
        reserve=reserve,
        terms=terms,
    )


def _plan(
    force: Force, text: str, *, game: str
) -> tuple[tuple[Purchase, ...], tuple[Finding, ...]]:
    """The plan that was typed, or else the game's own."""
    if not text:
        return (force.games[game].plan if game else ()), ()
    read = read_purchases(text, entries=force.supporting_troops)
    if isinstance(read, Slip):
        return (), (typed_finding(read),)
    known = force.supporting_troops
    unknown = [each.entry for each in read if each.entry not in known]
    return read, tuple(unknown_choice(name, known, what="entry") for name in unknown)
