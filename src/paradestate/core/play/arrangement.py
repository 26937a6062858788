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

ASPECTS = (
    "out",
    "leader hit",
    "ammunition",
    "missions taken",
    "missions used",
    "observer in contact",
    "due",
    "arrived",
    "turn",
    ATTACHED,
    LOADED,
    RESERVE,
    MISSIONS,
)
"""What may be told of things; the owner's own states come beside them."""

FREE = frozenset({"turn"})
"""Aspects that are not of a stand, a body or an entry."""


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


def proposed_findings(proposed: Proposed, fielded: Fielded) -> Iterator[Finding]:
    """Why it can't be told, as stops; and what is doubtful about it."""
    aspect, name = proposed.subject
    known = (*ASPECTS, *fielded.force.states)
    if aspect not in known:
        yield unwritten(unknown_choice(aspect, known, what="thing to be told"))
        return
    names = tuple(_names(fielded))
    if aspect not in FREE and name not in names:
        yield unwritten(unknown_choice(name, names, what="stand, body or entry"))
        return
    check = CHECKS.get(aspect)
    if check is not None:
        yield from check(proposed, fielded)


def _names(fielded: Fielded) -> Iterator[str]:
    """Everything that something can be told of, each once."""
    entries = fielded.force.supporting_troops
    yield from dict.fromkeys(
        (
            *(each.name for each in fielded.made.stands),
            *(each.name for each in fielded.made.bodies if each.name),
            *(each.name for each in sections_of(fielded.plan, entries=entries)),
            *(each.entry for each in fielded.plan),
        )
    )


def _attached(proposed: Proposed, fielded: Fielded) -> Iterator[Finding]:
    sections = sections_of(fielded.plan, entries=fielded.force.supporting_troops)
    section = next((each for each in sections if each.name == proposed.subject.name), None)
    if section is None:
        names = [each.name for each in sections]
        yield unwritten(unknown_choice(proposed.subject.name, names, what="section to attach"))
        return
    if not proposed.value:
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
    """What is loaded on a stand that carries nothing, or less."""
    if not proposed.value:
        return
    patterns = {each.name: each.pattern for each in fielded.made.stands}
    stands = fielded.force.stands
    carries = {
        name: stands[pattern].carries
        for name, pattern in patterns.items()
        if pattern in stands and stands[pattern].carries
    }
    if proposed.value not in carries:
        yield unwritten(unknown_choice(proposed.value, carries, what="stand that carries"))
        return
    riders = [name for name, on in proposed.named(LOADED).items() if on == proposed.value]
    if len(riders) > carries[proposed.value]:
        yield log_stop(
            code="load-too-large",
            message=f"{proposed.value} carries {several(carries[proposed.value], 'stand')}; "
            f"{listed(riders)} would be {len(riders)}.",
            hint="Load it elsewhere, or unload one first.",
        )


def _kept_back(proposed: Proposed, fielded: Fielded) -> Iterator[Finding]:
    """More named as reserve than may be."""
    if not proposed.value:
        return
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
    if not all(each.isascii() and each.isdigit() for each in proposed.named(MISSIONS).values()):
        yield log_stop(
            code="not-a-whole-number",
            message=f"'{proposed.value}' isn't a number of missions.",
            hint="Write a whole number from 0 up.",
        )
        return
    entries = fielded.force.supporting_troops
    taken = sum(each.number for each in fielded.plan if entries[each.entry].is_fire_mission)
    allotted = sum(map(int, proposed.named(MISSIONS).values()))
    if allotted > taken:
        yield log_stop(
            code="missions-too-many",
            message=f"{several(allotted, 'mission')} would be allotted; {taken} were taken.",
            hint="Allot fewer, or take some from another first.",
        )


CHECKS: Mapping[str, Callable[[Proposed, Fielded], Iterator[Finding]]] = {
    ATTACHED: _attached,
    LOADED: _loaded,
    RESERVE: _kept_back,
    MISSIONS: _allotted,
}
"""What is held against what; of all else anything may be told."""
