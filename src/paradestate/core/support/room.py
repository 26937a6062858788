"""Room: whether what is attached finds a host, and what rides finds a place.

None of this makes a plan illegal: a section without a host stands alone, and a stand without a
place walks.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.establishment import Establishment
from paradestate.core.figure import Sort
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.game import Purchase
from paradestate.core.sentence.support import purchase_words, purchases_words
from paradestate.core.sentence.wording import capital, listed, several, spelled
from paradestate.core.support.entry import Entry
from paradestate.core.support.host_shortage import alone_without_host
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.reserve import in_front
from paradestate.core.unfolding import Body, Stand

WALKING = {Sort.FOOT, Sort.GUN}
"""Sorts of figures that ride on something else (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fielded:
    """A plan with the force that it is added to. Every purchase is of a known entry."""

    force: Force
    made: Establishment
    plan: tuple[Purchase, ...]

    def entry(self, purchase: Purchase) -> Entry:
        """What the purchase is one of."""
        return self.force.supporting_troops[purchase.entry]


def room_findings(
    fielded: Fielded, *, known: Known, kept_back: tuple[Purchase, ...] = ()
) -> Iterator[Finding]:
    """Sections without a host, and stands without a place; what is kept back needs no host."""
    yield from _hosts(fielded, known=known, front=in_front(fielded.plan, kept_back))
    yield from _transport(fielded, known=known)


def _hosts(fielded: Fielded, *, known: Known, front: tuple[Purchase, ...]) -> Iterator[Finding]:
    by_host: dict[str, list[Purchase]] = {}
    for purchase in front:
        attach = fielded.entry(purchase).attach
        if attach is not None:
            by_host.setdefault(attach.to, []).append(purchase)
    for to, purchases in by_host.items():
        sections: dict[str, int] = {}
        for each in purchases:
            sections[each.entry] = sections.get(each.entry, 0) + each.number
        hosts = fielded.made.number_of.get(to, 0)
        rules = {
            name: rule
            for name in sections
            if (rule := fielded.force.supporting_troops[name].attach) is not None
        }
        alone = alone_without_host(sections, rules=rules, hosts=hosts)
        if alone:
            number = sum(sections.values())
            yield Finding(
                level=Level.WARN,
                code="hosts-short",
                message=f"{several(number, 'section')} to attach "
                f"({purchases_words(purchases)}), "
                f"{several(hosts, to)} with room for {number - alone}: "
                f"{spelled(alone)} must stand alone.",
                effect="Those have no host's orders; what is legal doesn't rest on it.",
                hint=f"Take {spelled(alone)} fewer, or keep {'it' if alone == 1 else 'them'} "
                "in support.",
                place=known.place_of(fielded.plan, purchases[-1].entry),
            )


def _transport(fielded: Fielded, *, known: Known) -> Iterator[Finding]:
    for about, riders, places, place in _loads(fielded):
        number = sum(riders.values())
        short = number - places
        if short <= 0:
            continue
        names = listed(_named(riders, after=places))
        more = f" and {short - MOST_NAMED} more" if short > MOST_NAMED else ""
        yield Finding(
            level=Level.WARN,
            code="transport-short",
            message=f"{about}: {several(number, 'stand')}, {several(places, 'place')} to "
            f"ride: {several(short, 'stand')} {'walks' if short == 1 else 'walk'} "
            f"({names}{more}).",
            effect="Counted by stands; who rides is for you to say.",
            hint=f"Take transport for {spelled(short)} more, or let them walk.",
            place=known.place_of(fielded.plan, place),
        )


MOST_NAMED = 4
"""Stands that walk which one message names."""

Load = tuple[str, Mapping[str, int], int, str]
"""What is to be carried, the stands of it by name, the places there are, the entry that it is
about. Stands are counted, not listed: a plan may have any number of them."""


def _named(riders: Mapping[str, int], *, after: int) -> Iterator[str]:
    """The names of the first few that walk, where so many ride."""
    left = MOST_NAMED
    for name, number in riders.items():
        walk = max(0, number - after)
        after = max(0, after - number)
        yield from [name] * min(walk, left)
        left -= min(walk, left)


def _loads(fielded: Fielded) -> Iterator[Load]:
    """Stands that something is there to carry: of one body, of one purchase, of a formation."""
    yield from _of_bodies(fielded)
    brought: dict[str, int] = {}
    for purchase in fielded.plan:
        entry = fielded.entry(purchase)
        places, riders = _carried(fielded.force, entry.each, times=purchase.number)
        if places and riders:
            yield purchase_words(purchase), riders, places, purchase.entry
        elif places:
            brought[purchase.entry] = brought.get(purchase.entry, 0) + places
    for name, places in brought.items():
        yield from _of_formation(fielded, name, places=places)


def _of_bodies(fielded: Fielded) -> Iterator[Load]:
    """Must stands that stand in one body with something that carries."""
    together: dict[int, list[Stand]] = {}
    for stand in _must(fielded.made.stands):
        together.setdefault(stand.within, []).append(stand)
    for within, stands in together.items():
        places = sum(
            fielded.force.stands[each.pattern].carries for each in _defined(fielded, stands)
        )
        riders = Counter(
            each.name for each in _defined(fielded, stands) if _rides(fielded.force, each.pattern)
        )
        if places and riders:
            yield _body_name(fielded.made.bodies[within]), riders, places, ""


def _of_formation(fielded: Fielded, name: str, *, places: int) -> Iterator[Load]:
    """The stands of as many bodies as there are purchases of what carries one body each."""
    entry = fielded.force.supporting_troops[name]
    of = entry.attach.to if entry.attach else entry.limit.of
    purchases = sum(purchase.entry == name for purchase in fielded.plan)
    bodies = fielded.made.bodies
    hosts = [
        place
        for place, body in enumerate(bodies)
        if body.formation == of and body.layer is Need.MUST
    ][:purchases]
    riders = Counter(
        stand.name
        for stand in _must(fielded.made.stands)
        if _rides(fielded.force, stand.pattern)
        and _is_in(bodies, stand.within, hosts=frozenset(hosts))
    )
    if riders:
        names = listed(_body_name(bodies[place]) for place in hosts)
        yield f"{name} for {names}", riders, places, name


def _is_in(bodies: Sequence[Body], within: int, *, hosts: frozenset[int]) -> bool:
    """Whether a body is one of those, or inside one of them."""
    place: int | None = within
    while place is not None and place not in hosts:
        place = bodies[place].within
    return place is not None


def _body_name(body: Body) -> str:
    return body.name or capital(body.formation)


def _must(stands: Iterable[Stand]) -> Iterator[Stand]:
    return (stand for stand in stands if stand.layer is Need.MUST and not stand.printed)


def _defined(fielded: Fielded, stands: Iterable[Stand]) -> list[Stand]:
    """Stands with a pattern of their own; those by a fixed ratio have none."""
    return [stand for stand in stands if stand.pattern in fielded.force.stands]


def _carried(force: Force, each: Mapping[str, int], *, times: int) -> tuple[int, Mapping[str, int]]:
    """Places on what a purchase puts down, and the stands of it that ride."""
    places = sum(force.stands[name].carries * number * times for name, number in each.items())
    riders = {
        name: number * times for name, number in each.items() if number and _rides(force, name)
    }
    return places, riders


def _rides(force: Force, pattern: str) -> bool:
    """Whether a stand is one that other things carry: on foot or a gun, and not printed."""
    stand = force.stands.get(pattern)
    if stand is None:
        return True
    sorts = {force.figures[kind].sort for kind in stand.figures if kind in force.figures}
    return not stand.carries and not stand.printed and sorts <= WALKING
