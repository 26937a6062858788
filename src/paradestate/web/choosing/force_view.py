"""How many legal forces there are, the share that can be fielded, and the best of them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from paradestate.core.certainty import NotComputed
from paradestate.core.sentence.chance import hundredths_words, near_text
from paradestate.core.sentence.searched_force import FIELDABLE, searched_sentence
from paradestate.core.sentence.support import purchases_words
from paradestate.core.sentence.wording import several
from paradestate.core.support.force_map import SearchedForce, ValuedForce
from paradestate.journeys.forces import BestAlone, ForcesAsked, ForcesFound, forces
from paradestate.sheet import force_map
from paradestate.sheet.force_frame import PHONE, WIDE
from paradestate.sheet.force_map import ForceRow, force_rows
from paradestate.sheet.long_number import number_words
from paradestate.sheet.svg import Drawing
from paradestate.web.choosing.question import Question
from paradestate.web.visit import Visit

STEPS = 100_000
"""How far the best force is searched for, so that a page doesn't wait: half a second."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceLine:
    """One legal force, as a plan that can be made the one on the sheet."""

    words: str
    points: int
    worth: str
    """Empty where nothing has a worth."""
    query: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceView:
    """The legal forces of a game."""

    sentences: tuple[str, ...]
    drawings: tuple[Drawing, Drawing] | None
    rows: tuple[ForceRow, ...]
    best: tuple[ForceLine, ...]
    """The best by the owner's worths, then the next; empty without worths."""
    best_in_hand: ForceLine | None
    """The best that can be fielded; None where that isn't known."""
    every: tuple[ForceLine, ...]
    """All of them, where they are few."""


def force_view(visit: Visit, *, points: int | None, asked: Question) -> ForceView:
    """The legal forces with so many points left, or with all that the dice may leave."""
    answer = forces(
        visit.folder,
        today=visit.today,
        choice=asked.choice,
        grades=asked.grades,
        asked=ForcesAsked(points=points, steps=STEPS),
        memory=visit.memory,
    )
    found = answer.found
    assert found is not None  # noqa: S101 - the terms of the game are there
    if isinstance(found, NotComputed):
        return _without_number(f"How many there are wasn't computed: {found.reason}.")
    if isinstance(found, BestAlone):
        return _alone(found, asked=asked)
    known = found.fieldable
    in_hand = _best(found.searched) if isinstance(known, NotComputed) else known.best
    return ForceView(
        sentences=tuple(_sentences(found)),
        drawings=_drawings(found),
        rows=_rows(found),
        best=_lines(found, found.best, asked=asked),
        best_in_hand=_line(in_hand, has_worth=True, asked=asked)
        if in_hand is not None and found.has_worths
        else None,
        every=_lines(found, found.every, asked=asked),
    )


def _alone(found: BestAlone, *, asked: Question) -> ForceView:
    """The best force of those that are too many to be told apart."""
    known = None if isinstance(found.fieldable, NotComputed) else found.fieldable
    best, in_hand = _best(found.best), _best(known)
    return replace(
        _without_number(
            f"How many there are with {several(found.points, 'point')} wasn't computed: "
            f"{found.reason}.",
            searched_sentence(found.best),
            *_how_sure(known),
        ),
        best=() if best is None else (_line(best, has_worth=True, asked=asked),),
        best_in_hand=None if in_hand is None else _line(in_hand, has_worth=True, asked=asked),
    )


def _without_number(*sentences: str) -> ForceView:
    return ForceView(
        sentences=sentences, drawings=None, rows=(), best=(), best_in_hand=None, every=()
    )


def _best(found: SearchedForce | None) -> ValuedForce | None:
    return None if found is None else found.force


def _how_sure(in_hand: SearchedForce | None) -> tuple[str, ...]:
    """How sure the best is that can be fielded."""
    return () if in_hand is None else (searched_sentence(in_hand, among=FIELDABLE),)


def _fielded(found: ForcesFound) -> dict[int, int] | None:
    known = found.fieldable
    if isinstance(known, NotComputed):
        return None
    return {level.points: level.legal for level in known.levels}


def _drawings(found: ForcesFound) -> tuple[Drawing, Drawing] | None:
    wide, phone = (
        force_map.force_map(
            found.levels, fieldable=_fielded(found), marked=found.points, width=width
        )
        for width in (WIDE, PHONE)
    )
    return (wide, phone) if wide and phone else None


def _rows(found: ForcesFound) -> tuple[ForceRow, ...]:
    return force_rows(found.levels, fieldable=_fielded(found))


def _sentences(found: ForcesFound) -> Iterator[str]:
    level = found.level
    middle = "" if found.allowance is None else ", the middle of what the dice leave"
    word = "legal force" if level.legal == 1 else "legal forces"
    yield (
        f"{number_words(level.legal)} {word} with {several(level.points, 'point')}{middle}; "
        f"{number_words(level.spending_all)} of them spend all. Exact."
    )
    known = found.fieldable
    if isinstance(known, NotComputed):
        yield f"How many can be fielded wasn't computed: {known.reason}."
        yield from _how_sure(found.searched)
        return
    number = known.at(found.points)
    if level.legal:
        share = hundredths_words(Fraction(number, level.legal))
        yield f"{number_words(number)} can be fielded with what is owned: {share}."
    if known.must_lacks:
        yield f"The must layer itself lacks {several(known.must_lacks, 'figure')}."
    if not found.has_worths:
        yield "Nothing has a worth yet, so none is said to be the best: add 'worths' to the files."


def _lines(
    found: ForcesFound, valued: Sequence[ValuedForce], *, asked: Question
) -> tuple[ForceLine, ...]:
    return tuple(_line(each, has_worth=found.has_worths, asked=asked) for each in valued)


def _line(force: ValuedForce, *, has_worth: bool, asked: Question) -> ForceLine:
    return ForceLine(
        words=purchases_words(force.purchases) or "nothing",
        points=force.points,
        worth=near_text(force.worth) if has_worth else "",
        query=asked.with_plan(force.purchases),
    )
