"""The attachment that is worth most, and how sure that is.

sections and hosts of one kind -> rooms settled -> cheapest flow -> checked by the plain rules

Where all sections of a kind of host ask for the same room the rules are those of a network, and
the flow in `core` is the answer. Where they differ, a host has the room of the narrowest section
attached to it, which no network says: a whole-number program settles the rooms, and the flow then
gives the attachment, so that of equals it is the same one in either case.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from paradestate.core.certainty import Certainty, Exact, Within
from paradestate.core.support.attachment import (
    INDEPENDENT,
    Attached,
    Attaching,
    barriers,
    total_worth,
)
from paradestate.core.support.best_attachment import Kind, best_with_rooms, kinds_of
from paradestate.solve.error import SolverError
from paradestate.solve.program import Ending, Program, Solution

SECONDS = 10.0
"""How long the program of one kind of host may take."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BestAttachment:
    """The best that was found, and how sure it is that nothing is better."""

    attached: Attached
    total: Fraction
    certainty: Certainty


def best_attachment(question: Attaching, *, seconds: float = SECONDS) -> BestAttachment | None:
    """What is worth most; None where some that must be attached find no host.

    Of attachments that are worth the same it is the one in which the sections, in their order,
    have the first hosts in theirs, as far as the rooms of the hosts allow. Raises SolverError
    where the solver breaks down or breaks a rule.
    """
    attached: dict[str, str] = {}
    bound = Fraction(0)
    for kind in kinds_of(question):
        found = _best_of_kind(kind, seconds=seconds)
        if found is None:
            return None
        attached |= found.attached
        bound += found.bound
    ordered = {section.name: attached[section.name] for section in question.sections}
    for broken in barriers(question, ordered):
        raise SolverError(f"the attachment breaks a rule: {broken.rule} ({broken.section})")
    total = total_worth(question, ordered)
    return BestAttachment(
        attached=ordered,
        total=total,
        certainty=Exact() if bound == total else Within(bound=ceil(bound)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    attached: Attached
    bound: Fraction
    """Nothing is worth more."""


def _best_of_kind(kind: Kind, *, seconds: float) -> _Found | None:
    if len(kind.rooms) == 1 or not kind.hosts:
        attached = best_with_rooms(kind, {host.name: kind.rooms[0] for host in kind.hosts})
        return None if attached is None else _proved(kind, attached)
    program = _RoomProgram(kind)
    solution = program.solved(seconds=seconds)
    if solution.ending is Ending.INFEASIBLE:
        return None
    if not solution.values:
        raise SolverError("no attachment was found in time")
    attached = best_with_rooms(kind, program.rooms(solution))
    if attached is None:
        raise SolverError("the rooms that were found don't hold the sections")
    least = solution.bound
    cost = sum(kind.cost(each, attached[each.name]) for each in kind.sections)
    if solution.ending is Ending.OPTIMAL:
        return _proved(kind, attached)
    return _Found(
        attached=attached,
        bound=_worth(kind, attached) + Fraction(max(0, cost - least), kind.scale),
    )


def _proved(kind: Kind, attached: Attached) -> _Found:
    return _Found(attached=attached, bound=_worth(kind, attached))


def _worth(kind: Kind, attached: Attached) -> Fraction:
    return total_worth(kind.question, attached)


class _RoomProgram:
    """Sections at hosts, and for each host one of the rooms that some section asks for."""

    def __init__(self, kind: Kind) -> None:
        self.kind = kind
        self.program = Program()
        self.rooms_of: dict[str, dict[int, int]] = {}
        """Host to room to the variable that says it has that room."""
        self.at: dict[tuple[str, str], int] = {}
        """Section and place to the variable that says it is there."""
        self._hosts()
        self._sections()
        self._held()

    def solved(self, *, seconds: float) -> Solution:
        """The least that is lost against the best place for every section."""
        costs = {
            self.at[section.name, place]: self.kind.cost(section, place)
            for section in self.kind.sections
            for place in self._places()
            if (section.name, place) in self.at
        }
        self.program.minimise(costs)
        return self.program.solved(seconds=seconds)

    def rooms(self, solution: Solution) -> Mapping[str, int]:
        """Host to the room that it has in a solution."""
        return {
            host: next(room for room, number in rooms.items() if solution.values[number])
            for host, rooms in self.rooms_of.items()
        }

    def _places(self) -> tuple[str, ...]:
        return (*(host.name for host in self.kind.hosts), INDEPENDENT)

    def _hosts(self) -> None:
        for host in self.kind.hosts:
            rooms = {room: self.program.variable(most=1) for room in self.kind.rooms}
            self.rooms_of[host.name] = rooms
            self.program.row(dict.fromkeys(rooms.values(), 1), least=1, most=1)

    def _sections(self) -> None:
        for section in self.kind.sections:
            for place in self._places():
                if place != INDEPENDENT or not section.must:
                    self.at[section.name, place] = self.program.variable(most=1)
            there = [self.at[section.name, place] for place in self._places_of(section.name)]
            self.program.row(dict.fromkeys(there, 1), least=1, most=1)

    def _places_of(self, section: str) -> list[str]:
        return [place for place in self._places() if (section, place) in self.at]

    def _held(self) -> None:
        """What asks for little room is held by it, and no two of an entry stand together."""
        for host, rooms in self.rooms_of.items():
            for most in self.kind.rooms:
                asking = [each for each in self.kind.sections if self.kind.room_of(each) <= most]
                there = {self.at[each.name, host]: 1 for each in asking}
                room = {number: -held for held, number in rooms.items() if held <= most}
                self.program.row({**there, **room}, most=0)
            for entry in dict.fromkeys(each.entry for each in self.kind.sections):
                alike = [
                    self.at[each.name, host]
                    for each in self.kind.sections
                    if each.entry == entry and each.rule.no_two_alike
                ]
                if len(alike) > 1:
                    self.program.row(dict.fromkeys(alike, 1), most=1)
