"""The game that papers are made for, with its plan, its reserve, and its terms where they matter.

folder -> counted -> game as it was typed, or written down -> plan, reserve, terms
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.choice import CHOSEN_HERE, Choice, unknown_choice
from paradestate.core.finding import Finding, Level, stops
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.paper.ground import NO_RESERVE
from paradestate.core.play.told_force import told_force
from paradestate.core.sentence.wording import capital, listed
from paradestate.core.support.reserve import Reserve, reserve_findings, reserve_of
from paradestate.core.support.room import Fielded
from paradestate.core.support.terms import Terms, terms_of
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.choosing import agreed_choice, typed_finding
from paradestate.journeys.count import Count, count
from paradestate.journeys.game.played_game import played_game
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.paper.paper_kind import Asked
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
    points: int | None = None
    """Points left before anything is bought; None: not rolled yet."""
    arranged: tuple[str, ...] = ()
    """Who is with whom, as it was told."""


def game_meant(
    folder: Path, *, today: datetime.date, choice: Choice, asked: Asked, memory: Memory = NOTHING
) -> GameMeant:
    """The game of a folder as it was typed, or as it was written down where `asked.of` says so.

    With grades its only one is meant, where none is named. Raises FileError, and StoreError.
    """
    if asked.of is not None:
        return _as_told(folder, today=today, choice=choice, asked=asked, memory=memory)
    read = checked(folder, today=today, memory=memory)
    if asked.grades and not read.is_stopped:
        game, unsaid = game_of(read.force, choice.game)
        if unsaid:
            return GameMeant(checked=read.with_findings(*unsaid), choice=choice)
        choice = replace(choice, game=game)
    answer = count(folder, today=today, choice=choice, memory=memory)
    if answer.count is None:
        return GameMeant(checked=answer.checked, choice=choice)
    force, game = answer.count.force, choice.game or ""
    plan, findings = _plan(force, asked.plan, game=game)
    terms, of_grades = _at_grades(answer.count, game=game, grades=asked.grades)
    meant = GameMeant(
        checked=answer.checked.with_findings(*findings, *of_grades),
        choice=choice,
        count=None if stops((*findings, *of_grades)) else answer.count,
        plan=plan,
        points=asked.points,
        terms=terms,
    )
    return _with_reserve(meant, asked.reserve, counted=answer.count)


def _at_grades(
    counted: Count, *, game: str, grades: Mapping[str, str]
) -> tuple[Terms | None, tuple[Finding, ...]]:
    """The terms at the grades that were chosen; none where nobody chose any."""
    if not grades:
        return None, ()
    return terms_of(counted.force, counted.made, game=game, grades=grades)


def _as_told(
    folder: Path, *, today: datetime.date, choice: Choice, asked: Asked, memory: Memory
) -> GameMeant:
    """The game as it was written down; what it can't say is a stop, and what was typed beside it.

    What is doubtful in its record is told where the game is, and not on its papers.
    """
    game = played_game(folder, today=today, of=asked.of or "", advises=False, memory=memory)
    read = checked(folder, today=today, memory=memory)
    beside = tuple(said_beside(choice, asked))
    if game.record is None or game.account is None or beside:
        absent = () if game.record is not None else (_not_written_down(asked.of or ""),)
        halts = [each for each in stops(game.findings) if each not in read.findings]
        return GameMeant(checked=read.with_findings(*absent, *halts, *beside), choice=choice)
    choice = agreed_choice(game.record.terms)
    answer = count(folder, today=today, choice=choice, memory=memory)
    if answer.count is None:
        return GameMeant(checked=answer.checked, choice=choice)
    force, made = answer.count.force, answer.count.made
    told = told_force(game.record.board, Fielded(force=force, made=made, plan=game.account.bought))
    meant = GameMeant(
        checked=answer.checked.with_findings(*told.findings),
        choice=choice,
        count=answer.count,
        plan=told.plan,
        points=game.account.start,
        terms=game.account.terms,
        arranged=told.arranged,
    )
    return _with_reserve(meant, told.reserve, counted=answer.count)


def _with_reserve(meant: GameMeant, named: Mapping[str, int], *, counted: Count) -> GameMeant:
    """The game with what is kept back; nothing is counted where that can't be."""
    force = counted.force
    reserve = reserve_of(named, purchases=(), plan=meant.plan, formations=force.formations)
    doubts = tuple(reserve_findings(reserve, force=force, made=counted.made, plan=meant.plan))
    return replace(
        meant,
        checked=meant.checked.with_findings(*doubts),
        count=None if stops(doubts) else meant.count,
        reserve=reserve,
    )


def _not_written_down(of: str) -> Finding:
    about = f"No game has an id that begins with '{of}'." if of else "No game is written down."
    return Finding(
        level=Level.STOP,
        code="no-game",
        message=about,
        effect="No paper is made.",
        hint="Begin one: play FOLDER start.",
        place=CHOSEN_HERE,
    )


def said_beside(choice: Choice, asked: Asked) -> Iterator[Finding]:
    """A stop where something is typed that the record of the game says."""
    typed = {
        "game": choice.game,
        "numbers": choice.numbers,
        "date": choice.date,
        "theatre": choice.theatre,
        "wished": choice.wished is not None,
        "grades": asked.grades,
        "plan": asked.plan,
        "points": asked.points is not None,
        "reserve": asked.reserve,
    }
    said = [name for name, value in typed.items() if value]
    if said:
        yield Finding(
            level=Level.STOP,
            code="said-by-game",
            message=f"{capital(listed(said))} typed for papers of a game that was written down.",
            effect="No paper is made.",
            hint="Leave it out: the game says it. Write down there what is missing.",
            place=CHOSEN_HERE,
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
