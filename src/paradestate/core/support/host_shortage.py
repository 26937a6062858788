"""Why sections find no host: which of them share too few places.

Every set that is named was tried: with one entry fewer it would be short of fewer places (the
theorem of Hall 1935, said of entries because all sections of one entry may go to the same hosts).
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import comb

from paradestate.core.flow import Arc, cheapest_flow
from paradestate.core.support.attachment import Attaching, Section
from paradestate.core.support.best_attachment import room_asked
from paradestate.core.support.entry import Attachment

MOST_WAYS = 700
"""Ways to settle the rooms of hosts that are gone through; three rooms for up to 35 hosts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shortage:
    """Sections that together have too few places."""

    to: str
    entries: tuple[str, ...]
    sections: int
    places: int
    """How many of them find a host at most."""

    @property
    def alone(self) -> int:
        """How many have no host at least."""
        return self.sections - self.places


def shortages(question: Attaching) -> tuple[Shortage, ...]:
    """For each kind of host that is short: the fewest entries that are short of as many places.

    Only sections that must be attached take part.
    """
    found = []
    for to in dict.fromkeys(each.rule.to for each in question.sections if each.must):
        bound = [each for each in question.sections if each.must and each.rule.to == to]
        hosts = sum(host.formation == to for host in question.hosts)
        shortage = _shortage(to, bound, hosts=hosts)
        if shortage.alone:
            found.append(_fewest(shortage, bound, hosts=hosts))
    return tuple(found)


def _fewest(shortage: Shortage, sections: Sequence[Section], *, hosts: int) -> Shortage:
    for entry in reversed(shortage.entries):
        fewer = [each for each in sections if each.entry != entry]
        without = _shortage(shortage.to, fewer, hosts=hosts)
        if without.alone == shortage.alone:
            shortage, sections = without, fewer
    return shortage


def _shortage(to: str, sections: Sequence[Section], *, hosts: int) -> Shortage:
    numbers: dict[str, int] = {}
    for each in sections:
        numbers[each.entry] = numbers.get(each.entry, 0) + 1
    alone = alone_without_host(
        numbers, rules={each.entry: each.rule for each in sections}, hosts=hosts
    )
    number = len(sections)
    return Shortage(to=to, entries=tuple(numbers), sections=number, places=number - alone)


def alone_without_host(
    numbers: Mapping[str, int], *, rules: Mapping[str, Attachment], hosts: int
) -> int:
    """How many of so many sections by entry find no place with so many hosts of one kind.

    Where there are more than MOST_WAYS to settle the rooms of the hosts it is as many at least.
    """
    total = sum(numbers.values())
    rooms = sorted({room_asked(rules[entry].most_per_host, of=total) for entry in numbers})
    ways = comb(hosts + len(rooms) - 1, len(rooms) - 1) if rooms else 1
    if len(rooms) == 1 or ways > MOST_WAYS:
        return total - _placed_at_most(numbers, rules=rules, hosts=hosts)
    settled = (dict(zip(rooms, each, strict=True)) for each in _shared_out(hosts, len(rooms)))
    placed = (_placed(numbers, rules=rules, hosts=each) for each in settled)
    return total - max(placed, default=0)


def _shared_out(hosts: int, ways: int) -> Iterator[tuple[int, ...]]:
    """Every way to give so many hosts, all alike, one of so many rooms each."""
    if ways < 2:  # noqa: PLR2004 - what is left has the last
        yield (hosts,) * ways
        return
    for first in range(hosts + 1):
        for others in _shared_out(hosts - first, ways - 1):
            yield (first, *others)


def _placed(
    numbers: Mapping[str, int], *, rules: Mapping[str, Attachment], hosts: Mapping[int, int]
) -> int:
    """How many find a place where so many hosts have each room: the greatest flow.

    Entries to rooms that aren't wider than they ask for; the sections at the hosts of one room are
    dealt to them in turn.
    """
    total = sum(numbers.values())
    arcs = [
        Arc(
            tail=f"entry {entry}",
            head=f"room {room}",
            room=there if rules[entry].no_two_alike else total,
        )
        for entry in numbers
        for room, there in hosts.items()
        if room <= room_asked(rules[entry].most_per_host, of=total)
    ]
    starts = [Arc(tail="", head=f"entry {entry}", room=number) for entry, number in numbers.items()]
    ends = [Arc(tail=f"room {room}", head="sink", room=room * n) for room, n in hosts.items()]
    units = cheapest_flow((*arcs, *starts, *ends), source="", sink="sink")
    return sum(units[: len(arcs)])


def _placed_at_most(
    numbers: Mapping[str, int], *, rules: Mapping[str, Attachment], hosts: int
) -> int:
    """No more than this find a place; as many do where all entries ask for the same room.

    Sections are dealt to the hosts in turn, entry after entry.
    """
    total = sum(numbers.values())
    asked = {entry: room_asked(rules[entry].most_per_host, of=total) for entry in numbers}
    placed = 0
    for room in sorted(set(asked.values())):
        for entry, number in numbers.items():
            if asked[entry] == room:
                placed += min(number, hosts) if rules[entry].no_two_alike else number
        placed = min(placed, hosts * room)
    return placed
