"""What of a game can be ticked and filled in on the sheet of papers, and what its record says."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from paradestate.core.game import Purchase
from paradestate.core.paper.opponents_sheet import may_be_found_out
from paradestate.core.play.game_record import GameRecord
from paradestate.core.sentence.journal import SHORT
from paradestate.core.sentence.play import game_words
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import capital, listed, plural, several
from paradestate.core.support.reserve import may_be_kept_back
from paradestate.journeys.choosing import plan_of
from paradestate.journeys.count import Count
from paradestate.journeys.paper.game_meant import GameMeant
from paradestate.web.papers.question import (
    GRADE,
    OF,
    POINTS,
    RESERVE,
    REVEALED,
    SIDE,
    PapersQuestion,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Choosable:
    """A field of the form."""

    field: str
    label: str
    value: str = ""
    """As it was filled in."""
    most: int = 0
    """How many may be kept back."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """All that the form offers of a game."""

    played: tuple[tuple[str, str], ...]
    """Games that were written down: what is sent, and their names."""
    told: tuple[str, ...]
    """What the record says, where papers are of one, a sentence each."""
    revealed: tuple[Choosable, ...]
    reserve: tuple[Choosable, ...]
    sides: tuple[str, ...]
    """Forces that may be the other side."""
    is_open: bool
    """Whether any of it is filled in."""


def offered(
    counted: Count,
    question: PapersQuestion,
    *,
    going: GameRecord | None,
    meant: GameMeant | None,
    sides: Iterable[str],
) -> Offered:
    """What is offered; `meant` is the game of the record, where papers are of one."""
    filled = (REVEALED, RESERVE, GRADE, POINTS, SIDE)
    return Offered(
        played=tuple(_played(question, going=going)),
        told=() if meant is None or meant.count is None else tuple(_told(meant)),
        revealed=tuple(_revealed(counted, question)),
        reserve=() if question.is_of_record else tuple(_reserve(counted, question)),
        sides=tuple(sides),
        is_open=any(key.startswith(filled) for key in question.typed),
    )


def _played(question: PapersQuestion, *, going: GameRecord | None) -> Iterator[tuple[str, str]]:
    known = "" if going is None else going.id
    if going is not None:
        yield f"{OF}{going.id}", f"played now: {game_words(going.terms)}"
    chosen = question.asked.of
    if chosen is not None and chosen != known:
        yield f"{OF}{chosen}", f"was played: {chosen[:SHORT]}"


def _told(meant: GameMeant) -> Iterator[str]:
    game = meant.choice.game or ""
    points = "" if meant.points is None else f", with {several(meant.points, 'point')} to spend"
    yield f"{capital(game)}{points}."
    taken = listed(map(purchase_words, meant.plan))
    yield f"Taken: {taken}." if taken else "Nothing is taken yet."
    yield from meant.arranged


def _revealed(counted: Count, question: PapersQuestion) -> Iterator[Choosable]:
    """What may be found out, and what was named besides."""
    for name in dict.fromkeys((*may_be_found_out(counted.force), *question.asked.revealed)):
        value = "yes" if name in question.asked.revealed else ""
        yield Choosable(field=f"{REVEALED}{name}", label=capital(name), value=value)


def _reserve(counted: Count, question: PapersQuestion) -> Iterator[Choosable]:
    """What may be kept back of the force and of the plan, and what was named besides."""
    most = may_be_kept_back(counted.force, counted.made, plan=_plan(counted, question))
    named = (key.removeprefix(RESERVE) for key in question.typed if key.startswith(RESERVE))
    for name in dict.fromkeys((*most, *named)):
        number = most.get(name, 0)
        is_formation = name in counted.force.formations
        label = capital(plural(name) if is_formation else name)
        yield Choosable(
            field=f"{RESERVE}{name}",
            label=f"{label}, of {number}" if number else label,
            value=question.typed.get(f"{RESERVE}{name}", ""),
            most=number,
        )


def _plan(counted: Count, question: PapersQuestion) -> tuple[Purchase, ...]:
    """The plan that is meant; nothing of one that can't be read."""
    entries, games = counted.force.supporting_troops, counted.force.games
    if question.asked.plan:
        plan, _ = plan_of(question.asked.plan, entries=entries)
        return tuple(each for each in plan if each.entry in entries)
    return games[question.game].plan if question.game in games else ()
