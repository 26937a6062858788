"""The attachment that is worth most where the room of each host is settled: the cheapest flow.

Worths are whole numbers once they are scaled, so nothing is rounded, and of attachments that are
worth the same it is always the same one.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from paradestate.core.flow import Arc, cheapest_flow
from paradestate.core.support.attachment import INDEPENDENT, Attaching, Host, Section

SOURCE, SINK = "source", "sink"


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """All sections that may be attached to one formation, with its bodies as hosts."""

    question: Attaching
    to: str
    sections: tuple[Section, ...]
    hosts: tuple[Host, ...]
    rooms: tuple[int, ...]
    """The rooms that some section asks for, rising."""
    scale: int
    """What makes every worth a whole number."""
    top: Fraction
    """No place is worth more."""

    def room_of(self, section: Section) -> int:
        """How many a host has room for where this section is the narrowest of them."""
        return room_asked(section.rule.most_per_host, of=len(self.sections))

    def cost(self, section: Section, host: str) -> int:
        """How much less a place is worth than the best of all, as a whole number."""
        worth = self.question.worth(section.name, host=host)
        return int((self.top - worth) * self.scale)


def room_asked(most: int | None, *, of: int) -> int:
    """The room that `most per host` asks for where there are `of` sections in all."""
    return of if most is None else min(most, of)


def kinds_of(question: Attaching) -> Iterator[Kind]:
    """The question taken apart by the formation of the hosts: none has to do with another."""
    for to in dict.fromkeys(section.rule.to for section in question.sections):
        sections = tuple(each for each in question.sections if each.rule.to == to)
        hosts = tuple(host for host in question.hosts if host.formation == to)
        places = (*(host.name for host in hosts), INDEPENDENT)
        worths = [question.worth(each.name, host=place) for each in sections for place in places]
        asked = {room_asked(each.rule.most_per_host, of=len(sections)) for each in sections}
        yield Kind(
            question=question,
            to=to,
            sections=sections,
            hosts=hosts,
            rooms=tuple(sorted(asked)),
            scale=lcm(*(worth.denominator for worth in worths)),
            top=max(worths),
        )


def best_with_rooms(kind: Kind, rooms: Mapping[str, int]) -> dict[str, str] | None:
    """Section to its place; None where some that must be attached find no host.

    `rooms` is host to how many it has room for; only sections that ask for that much or more are
    attached to it. Of the best it is the one in which the sections, in their order, have the first
    hosts in theirs.
    """
    places = tuple(_places(kind, rooms))
    arcs = _network(kind, rooms, places=places)
    units = cheapest_flow(arcs, source=SOURCE, sink=SINK)
    found = {
        place.section.name: place.host
        for place, number in zip(places, units, strict=False)
        if number
    }
    return found if len(found) == len(kind.sections) else None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    """A section at a host, or independent."""

    section: Section
    host: str
    cost: int


def _places(kind: Kind, rooms: Mapping[str, int]) -> Iterator[_Place]:
    """Every place that is open to a section.

    Beside its worth each has a cost of its own, so small that all of them together are less than
    one of worth, and each greater than all those of the sections behind it together.
    """
    steps = len(kind.hosts) + 1
    for number, section in enumerate(kind.sections, start=1):
        rank = steps ** (len(kind.sections) - number)
        names = [host.name for host in kind.hosts]
        for place, host in enumerate((*names, INDEPENDENT)):
            has_room = host != INDEPENDENT and kind.room_of(section) >= rooms[host]
            if has_room or (host == INDEPENDENT and not section.must):
                worth = kind.cost(section, host) * steps ** len(kind.sections)
                yield _Place(section=section, host=host, cost=worth + place * rank)


def _network(kind: Kind, rooms: Mapping[str, int], *, places: Sequence[_Place]) -> tuple[Arc, ...]:
    """The arcs: first those of the places, in their order."""
    ends = dict(_ends(kind, places))
    first = tuple(
        Arc(tail=f"section {each.section.name}", head=ends[each], room=1, cost=each.cost)
        for each in places
    )
    starts = (Arc(tail=SOURCE, head=f"section {each.name}", room=1) for each in kind.sections)
    alike = (
        Arc(tail=ends[each], head=f"host {each.host}", room=1)
        for each in places
        if each.host != INDEPENDENT and each.section.rule.no_two_alike
    )
    last = (Arc(tail=f"host {host.name}", head=SINK, room=rooms[host.name]) for host in kind.hosts)
    return (*first, *starts, *dict.fromkeys(alike), *last)


def _ends(kind: Kind, places: Iterable[_Place]) -> Iterator[tuple[_Place, str]]:
    """Where the arc of a place leads: to the host, by way of its entry where no two are alike."""
    entries = {each.entry: f"{number}" for number, each in enumerate(kind.sections)}
    for each in places:
        if each.host == INDEPENDENT:
            yield each, SINK
        elif each.section.rule.no_two_alike:
            yield each, f"entry {entries[each.section.entry]} {each.host}"
        else:
            yield each, f"host {each.host}"
