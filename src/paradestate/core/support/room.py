"""Room: whether what is attached finds a host, what rides finds a place, the reserve is in bounds.

None of this makes a plan illegal but the reserve: a section without a host stands alone, and a
stand without a place walks.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import floor

from paradestate.core.choice import CHOSEN_HERE, unknown_choice
from paradestate.core.establishment import Establishment
from paradestate.core.figure import Sort
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.game import Purchase
from paradestate.core.place import nearest_place
from paradestate.core.sentence.support import purchase_words, purchases_words
from paradestate.core.sentence.wording import capital, listed, plural, several, spelled
from paradestate.core.support.entry import Entry
from paradestate.core.support.host_shortage import alone_without_host
from paradestate.core.support.judge_finding import Known
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
    fielded: Fielded, *, reserve: Mapping[str, int], known: Known
) -> Iterator[Finding]:
    """Sections without a host, stands without a place, and a reserve that is too large."""
    yield from _hosts(fielded, known=known)
    yield from _transport(fielded, known=known)
    for formation, number in reserve.items():
        yield from _reserve(fielded, formation, number=number)


def _hosts(fielded: Fielded, *, known: Known) -> Iterator[Finding]:
    by_host: dict[str, list[Purchase]] = {}
    for purchase in fielded.plan:
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


def _reserve(fielded: Fielded, formation: str, *, number: int) -> Iterator[Finding]:
    """A reserve against the share that may be kept back."""
    force, made = fielded.force, fielded.made
    if formation not in force.formations:
        yield unknown_choice(formation, force.formations, what="formation")
        return
    rule = force.reserves
    there = made.number_of.get(formation, 0)
    is_ruled = rule is not None and rule.of == formation
    most = floor(rule.most * there) if rule is not None and is_ruled else there
    if number > most:
        share = f"; {most} of {there} is the most" if is_ruled else f"; there are {there}"
        yield Finding(
            level=Level.STOP,
            code="reserve-too-large",
            message=f"{several(number, formation)} named as reserve{share}.",
            effect="The plan isn't legal with this reserve.",
            hint=f"Keep back at most {several(most, formation)}.",
            place=CHOSEN_HERE,
            related=(nearest_place(force.places, ("reserves",)),) if force.places else (),
        )
    elif not is_ruled:
        yield Finding(
            level=Level.REMARK,
            code="reserve-unsaid",
            message=f"Nothing says how many {plural(formation)} may be kept back.",
            effect="The reserve is taken as it is.",
            hint="Add 'reserves' to the folder, or agree it with your opponent.",
            place=CHOSEN_HERE,
        )
