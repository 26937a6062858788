"""Who is with whom before the game and during it: attached, loaded, kept back, missions allotted.

What is told of it is checked against the force and what was taken; the rules of hosts and reserves
are those of a plan.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from paradestate.core.choice import unknown_choice
from paradestate.core.finding import Finding
from paradestate.core.log_finding import log_stop, unwritten
from paradestate.core.play.brought import brought_stands
from paradestate.core.play.event import Subject
from paradestate.core.sentence.wording import listed, several
from paradestate.core.support.attachment import (
    INDEPENDENT,
    Attaching,
    barrier_of,
    hosts_of,
    sections_of,
)
from paradestate.core.support.reserve import Reserve, reserve_findings
from paradestate.core.support.room import Fielded

ATTACHED, LOADED, RESERVE, MISSIONS = "attached to", "loaded on", "reserve", "missions allotted"
TAKEN, USED = "missions taken", "missions used"

TO_REPAIR = "to repair"
"""What is broken on the model itself, in the owner's words."""

ASPECTS = (
    "out",
    "leader hit",
    "ammunition",
    TAKEN,
    USED,
    "observer in contact",
    "due",
    "arrived",
    "turn",
    TO_REPAIR,
    ATTACHED,
    LOADED,
    RESERVE,
    MISSIONS,
)
"""What may be told of things; the owner's own states come beside them."""

FREE = frozenset({"turn"})
"""Aspects that are of the whole game, and of no stand, body or entry: they have no name."""

NUMBERS = frozenset({"turn", "due", TAKEN, USED, MISSIONS})
"""Aspects that are told as whole numbers."""

MOST_DIGITS = 9
"""Digits of a number that is told."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposed:
    """Something that is to be told, with how all stands before it."""

    subject: Subject
    value: str
    values: Mapping[Subject, str]
    """What is told of everything so far; of what is disputed the first."""

    def named(self, aspect: str) -> Mapping[str, str]:
        """Name to value of one aspect, this one told, without what is as at the start."""
        every = {**self.values, self.subject: self.value}
        return {
            each.name: value for each, value in every.items() if each.aspect == aspect and value
        }


def subject_of(aspect: str, *, name: str) -> Subject:
    """What is told of; what is of the whole game has no name, whatever was said."""
    return Subject(aspect, "" if aspect in FREE else name)


def proposed_findings(proposed: Proposed, fielded: Fielded) -> Iterator[Finding]:
    """Why it can't be told, as stops; and what is doubtful about it."""
    aspect, name = proposed.subject
    known = (*ASPECTS, *fielded.force.states)
    if aspect not in known:
        yield unwritten(unknown_choice(aspect, known, what="thing to be told"))
        return
    names = tuple(names_to_tell(fielded))
    if aspect not in FREE and name not in names:
        yield unwritten(unknown_choice(name, names, what="stand, body or entry"))
        return
    if aspect in NUMBERS and proposed.value and not is_number(proposed.value):
        yield _no_number(proposed.value)
        return
    check = CHECKS.get(aspect)
    if check is not None and proposed.value:
        yield from check(proposed, fielded)


def is_number(value: str) -> bool:
    """Whether it is a whole number from 0 up, of not too many digits."""
    return value.isascii() and value.isdigit() and len(value) <= MOST_DIGITS


def _no_number(value: str) -> Finding:
    return log_stop(
        code="not-a-whole-number",
        message=f"'{value}' is no whole number.",
        hint=f"Write a whole number from 0 up, of at most {MOST_DIGITS} digits.",
    )


def names_to_tell(fielded: Fielded) -> Iterator[str]:
    """Everything that something can be told of, each once; of troops also those not taken."""
    entries = fielded.force.supporting_troops
    yield from dict.fromkeys(
        (
            *(each.name for each in fielded.made.stands),
            *(each.name or fielded.made.formation for each in fielded.made.bodies),
            *(each.name for each in sections_of(fielded.plan, entries=entries)),
            *(each.name for each in brought_stands(fielded.plan, entries=entries)),
            *entries,
        )
    )


def stand_patterns(fielded: Fielded) -> Mapping[str, str]:
    """Each stand at the table, those that supporting troops bring among them, and its pattern."""
    brought = brought_stands(fielded.plan, entries=fielded.force.supporting_troops)
    own = {each.name: each.pattern for each in fielded.made.stands}
    return own | {each.name: each.pattern for each in brought}


def carriers(fielded: Fielded) -> Mapping[str, int]:
    """Each stand that others can be loaded on, and how many."""
    stands = fielded.force.stands
    return {
        name: stands[pattern].carries
        for name, pattern in stand_patterns(fielded).items()
        if pattern in stands and stands[pattern].carries
    }


def _attached(proposed: Proposed, fielded: Fielded) -> Iterator[Finding]:
    sections = sections_of(fielded.plan, entries=fielded.force.supporting_troops)
    section = next((each for each in sections if each.name == proposed.subject.name), None)
    if section is None:
        names = [each.name for each in sections]
        yield unwritten(unknown_choice(proposed.subject.name, names, what="section to attach"))
        return
    hosts = hosts_of(fielded.made, formations=(each.rule.to for each in sections))
    told = proposed.named(ATTACHED)
    attached = {each.name: told.get(each.name, INDEPENDENT) for each in sections}
    question = Attaching(sections=sections, hosts=hosts)
    barrier = barrier_of(question, attached, section=section, host=proposed.value)
    if barrier is None:
        return
    if barrier.rule == "no-host-of-its-kind":
        fitting = [each.name for each in question.hosts_for(section)]
        yield unwritten(unknown_choice(proposed.value, fitting, what="host of its kind"))
        return
    yield log_stop(
        code="host-full",
        message=f"{proposed.value} has {listed(barrier.with_)} attached already; "
        f"{section.name} finds no room there.",
        hint="Attach it elsewhere, or move the other first.",
    )


def _loaded(proposed: Proposed, fielded: Fielded) -> Iterator[Finding]:
    """What is loaded on a stand that carries nothing, or less, or that is loaded on it."""
    carries = carriers(fielded)
    if proposed.value not in carries:
        yield unwritten(unknown_choice(proposed.value, carries, what="stand that carries"))
        return
    loaded = proposed.named(LOADED)
    if proposed.subject.name in _carriers(proposed.value, loaded):
        yield log_stop(
            code="loaded-on-itself",
            message=f"{proposed.subject.name} would be loaded on itself, by way of "
            f"{proposed.value}.",
            hint="Load it on another stand, or unload the one below it first.",
        )
        return
    riders = [name for name, on in loaded.items() if on == proposed.value]
    if len(riders) > carries[proposed.value]:
        yield log_stop(
            code="load-too-large",
            message=f"{proposed.value} carries {several(carries[proposed.value], 'stand')}; "
            f"{listed(riders)} would be {len(riders)}.",
            hint="Load it elsewhere, or unload one first.",
        )


def _carriers(name: str, loaded: Mapping[str, str]) -> Iterator[str]:
    """A stand, what it is loaded on, what that is loaded on ..., each once."""
    seen: set[str] = set()
    while name and name not in seen:
        yield name
        seen.add(name)
        name = loaded.get(name, "")


def _kept_back(proposed: Proposed, fielded: Fielded) -> Iterator[Finding]:
    """More named as reserve than may be."""
    back = proposed.named(RESERVE)
    bodies = {each.name: each.formation for each in fielded.made.bodies}
    formations = Counter(bodies[name] for name in back if name in bodies)
    formation = bodies.get(proposed.subject.name)
    if formation is not None:
        reserve = Reserve(formations={formation: formations[formation]})
        for found in reserve_findings(
            reserve, force=fielded.force, made=fielded.made, plan=fielded.plan
        ):
            yield unwritten(found) if found.code == "reserve-too-large" else found


def _allotted(proposed: Proposed, fielded: Fielded) -> Iterator[Finding]:
    """More fire missions allotted than were taken."""
    entries = fielded.force.supporting_troops
    taken = sum(each.number for each in fielded.plan if entries[each.entry].is_fire_mission)
    told = proposed.named(MISSIONS).values()
    allotted = sum(int(each) for each in told if is_number(each))
    if allotted > taken:
        yield log_stop(
            code="missions-too-many",
            message=f"{several(allotted, 'mission')} would be allotted; {taken} were taken.",
            hint="Allot fewer, or take some from another first.",
        )


def _bought(name: str, fielded: Fielded) -> int:
    return sum(each.number for each in fielded.plan if each.entry == name)


def _taken(proposed: Proposed, fielded: Fielded) -> Iterator[Finding]:
    """More fire missions than were bought, in a game in which anything was."""
    name, told = proposed.subject.name, int(proposed.value)
    bought = _bought(name, fielded)
    if fielded.plan and told > bought:
        yield log_stop(
            code="missions-too-many",
            message=f"{several(told, 'mission')} of {name} would be there; {bought} were bought.",
            hint=f'Buy them first: play FOLDER take "{name}=N"; or tell fewer.',
        )


def _used(proposed: Proposed, fielded: Fielded) -> Iterator[Finding]:
    """More fire missions used than there are; where nobody said how many there are, any number."""
    name, used = proposed.subject.name, int(proposed.value)
    told = proposed.named(TAKEN).get(name, "")
    if not fielded.plan and not is_number(told):
        return
    there = int(told) if is_number(told) else _bought(name, fielded)
    if used > there:
        yield log_stop(
            code="missions-too-many",
            message=f"{several(used, 'mission')} of {name} would be used; {there} were taken.",
            hint="Tell fewer, or say first how many were taken.",
        )


CHECKS: Mapping[str, Callable[[Proposed, Fielded], Iterator[Finding]]] = {
    ATTACHED: _attached,
    LOADED: _loaded,
    RESERVE: _kept_back,
    MISSIONS: _allotted,
    TAKEN: _taken,
    USED: _used,
}
"""What is held against what, where a value is told; of all else anything may be told."""
