"""Tows: a gun that nothing carries or tows stays where it starts (common practice, no source).

Places to ride count as tows; whether there are enough of them `room` says.
"""

from collections.abc import Iterator, Mapping

from paradestate.core.figure import Sort
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.place import Place, nearest_place
from paradestate.core.sentence.wording import capital, counted
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.room import Fielded
from paradestate.core.unfolding import Body


def tow_findings(fielded: Fielded, *, known: Known) -> Iterator[Finding]:
    """Guns of the must layer and of the plan that nothing tows."""
    force = fielded.force
    for formation, guns in _raised(fielded).items():
        place = nearest_place(force.places, ("formations", formation, "parts"))
        yield _without_tow(capital(formation), guns, place=place)
    for entry, guns in _bought(fielded).items():
        yield _without_tow(capital(entry), guns, place=known.place_of(fielded.plan, entry))


def _without_tow(about: str, guns: Mapping[str, int], *, place: Place) -> Finding:
    one = sum(guns.values()) == 1
    return Finding(
        level=Level.REMARK,
        code="gun-without-tow",
        message=f"{about}: nothing tows {counted(guns)}.",
        effect="It stays where it starts." if one else "They stay where they start.",
        hint="Add a stand that carries, 'needs for each' with its team, or 'stays: yes' to the "
        "stand.",
        place=place,
    )


def _bought(fielded: Fielded) -> Mapping[str, Mapping[str, int]]:
    """Entry to the guns that its purchases bring without anything to tow them.

    What is needed for each purchase may be its teams.
    """
    found: dict[str, dict[str, int]] = {}
    for purchase in fielded.plan:
        entry = fielded.entry(purchase)
        if entry.needs_for_each or _places(fielded.force, entry.each):
            continue
        for name, number in entry.each.items():
            if number and needs_tow(fielded.force, name):
                guns = found.setdefault(purchase.entry, {})
                guns[name] = guns.get(name, 0) + number * purchase.number
    return found


def _raised(fielded: Fielded) -> Mapping[str, Mapping[str, int]]:
    """Formation to the guns that stand directly in it, with nothing there to tow them."""
    force, bodies = fielded.force, fielded.made.bodies
    must = [each for each in fielded.made.stands if each.layer is Need.MUST and not each.printed]
    carried = {
        each.within
        for each in must
        if each.pattern in force.stands and force.stands[each.pattern].carries
    }
    served = frozenset(_served(fielded))
    found: dict[str, dict[str, int]] = {}
    for stand in must:
        if stand.within in carried or not needs_tow(force, stand.pattern):
            continue
        if served.isdisjoint(_around(bodies, stand.within)):
            guns = found.setdefault(bodies[stand.within].formation, {})
            guns[stand.pattern] = guns.get(stand.pattern, 0) + 1
    return found


def _served(fielded: Fielded) -> Iterator[str]:
    """Formations for which the plan brings something that carries."""
    for purchase in fielded.plan:
        entry = fielded.entry(purchase)
        if _places(fielded.force, entry.each):
            yield entry.attach.to if entry.attach else entry.limit.of


def _around(bodies: tuple[Body, ...], within: int) -> Iterator[str]:
    """The formations of a body and of all that it stands in."""
    place: int | None = within
    while place is not None:
        yield bodies[place].formation
        place = bodies[place].within


def _places(force: Force, each: Mapping[str, int]) -> int:
    return sum(force.stands[name].carries * number for name, number in each.items())


def needs_tow(force: Force, pattern: str) -> bool:
    """Whether a stand is a gun on its own, with no team or vehicle of its own on it."""
    stand = force.stands.get(pattern)
    if stand is None or stand.printed or stand.carries or stand.stays:
        return False
    sorts = {force.figures[kind].sort for kind in stand.figures if kind in force.figures}
    return Sort.GUN in sorts and sorts.isdisjoint({Sort.MOUNTED, Sort.VEHICLE})
