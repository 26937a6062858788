"""What a game says of the force before the first shot: taken, kept back, and who is with whom.

So that what is printed agrees with what was told. What befalls anything in the game is no part of
it: that is crossed on the paper as it happens.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.game import Purchase
from paradestate.core.play.arrangement import (
    ATTACHED,
    LOADED,
    MISSIONS,
    RESERVE,
    TAKEN,
    is_number,
)
from paradestate.core.play.board import Standing
from paradestate.core.play.brought import brought_stands
from paradestate.core.play.event import Subject
from paradestate.core.sentence.wording import capital, listed, several
from paradestate.core.support.attachment import sections_of
from paradestate.core.support.entry import Entry
from paradestate.core.support.room import Fielded
from paradestate.core.unfolding import SEPARATOR, spoken

BEFORE = frozenset({ATTACHED, LOADED, MISSIONS, RESERVE, TAKEN})
"""Aspects that are told before the first shot."""

Board = Mapping[Subject, Standing]


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldForce:
    """The force as a game says that it begins."""

    plan: tuple[Purchase, ...]
    """What was taken, with as many fire missions as were told to be there."""
    reserve: Mapping[str, int]
    """Formation or entry to how many of it are kept back."""
    arranged: tuple[str, ...]
    """Who is with whom and kept back, a sentence each."""
    findings: tuple[Finding, ...]
    """A warning for each thing that is told differently."""


def told_force(board: Board, fielded: Fielded) -> ToldForce:
    """The force as it was told; `fielded` has what was bought as its plan.

    Of what is told differently the first counts, as in every check of what is told.
    """
    told = {
        subject: standing.values[0]
        for subject, standing in board.items()
        if subject.aspect in BEFORE and standing.values[0]
    }
    missions = {each.name: int(value) for each, value in told.items() if _is_missions(each, value)}
    plan = _with_missions(fielded.plan, missions, entries=fielded.force.supporting_troops)
    back = [each.name for each in told if each.aspect == RESERVE]
    words = (_words(subject, value) for subject, value in told.items())
    return ToldForce(
        plan=plan,
        reserve=_kept_back(back, replace(fielded, plan=plan)),
        arranged=tuple(each for each in words if each),
        findings=tuple(_told_differently(board)),
    )


def _is_missions(subject: Subject, value: str) -> bool:
    return subject.aspect == TAKEN and is_number(value)


def _with_missions(
    bought: Sequence[Purchase], told: Mapping[str, int], *, entries: Mapping[str, Entry]
) -> tuple[Purchase, ...]:
    """What was bought, and of fire missions as many of each entry as were told to be there."""
    left = {
        name: number
        for name, number in told.items()
        if name in entries and entries[name].is_fire_mission
    }
    plan = []
    for each in bought:
        number = min(each.number, left.get(each.entry, each.number))
        if each.entry in left:
            left[each.entry] -= number
        if number:
            plan.append(replace(each, number=number))
    more = (Purchase(entry=name, number=number) for name, number in left.items() if number)
    return (*plan, *more)


def _kept_back(names: Iterable[str], fielded: Fielded) -> Mapping[str, int]:
    """How many are kept back of each formation and entry, from what was told by name.

    One stand keeps back the one taken that it came with: what is in doubt is hidden.
    """
    entries = fielded.force.supporting_troops
    bodies = {each.name or fielded.made.formation: each.formation for each in fielded.made.bodies}
    sections = {each.name: each.entry for each in sections_of(fielded.plan, entries=entries)}
    stands = {each.name: each.pattern for each in brought_stands(fielded.plan, entries=entries)}
    taken = Counter[str]()
    for each in fielded.plan:
        taken[each.entry] += each.number
    back, by_stand = Counter[str](), Counter[tuple[str, str]]()
    for name in names:
        if name in bodies:
            back[bodies[name]] += 1
        elif name in taken:
            back[name] += taken[name]
        elif name in sections:
            back[sections[name]] += 1
        elif name in stands:
            by_stand[name.partition(SEPARATOR)[0], stands[name]] += 1
    for (entry, pattern), number in by_stand.items():
        of_one = entries[entry].each.get(pattern, number)
        back[entry] = max(back[entry], -(-number // of_one))
    return {name: min(number, taken.get(name, number)) for name, number in back.items()}


def _words(subject: Subject, value: str) -> str:
    """One thing that was arranged, as a sentence; empty for a number of missions that was told."""
    who = capital(spoken(subject.name))
    if subject.aspect in {ATTACHED, LOADED}:
        return f"{who}: {subject.aspect} {spoken(value)}."
    if subject.aspect == RESERVE:
        return f"{who}: in reserve."
    if subject.aspect == MISSIONS and is_number(value):
        return f"{who}: {several(int(value), 'fire mission')} allotted."
    return ""


def _told_differently(board: Board) -> Iterator[Finding]:
    for subject, standing in board.items():
        if subject.aspect in BEFORE and standing.is_disputed:
            values = listed(f"'{each}'" for each in standing.values)
            yield Finding(
                level=Level.WARN,
                code="told-differently",
                message=f"{capital(spoken(subject.name))}, {subject.aspect}: two devices told it "
                f"differently: {values}.",
                effect=f"It is printed as '{standing.values[0]}'.",
                hint="Say which is right on the evening's page or with 'play mark', and print it "
                "anew.",
                place=CHOSEN_HERE,
            )
