"""Why no legal force holds an entry: it is too dear for every roll, or it is ruled out."""

from collections.abc import Mapping, Sequence

from paradestate.chance.force.diagram import MOST_POINTS, Diagram, diagram
from paradestate.chance.force.legal_count import legal_forces
from paradestate.chance.proof.dominance import chance_of_at_least
from paradestate.chance.proof.entry_count import levels_without
from paradestate.core.certainty import NotComputed
from paradestate.core.support.force_map import LevelForces
from paradestate.core.support.offer import Offer
from paradestate.core.support.proof import Reach
from paradestate.core.support.terms import Terms

FIRST_PIECE = 8
"""Numbers of points that are looked through first."""

Reached = tuple[Reach, str]
"""Whether an entry can be taken, and why not in words."""


def numbers_never_allowed(offer: Offer) -> tuple[int, ...]:
    """The priced numbers of which the roll never allows as many as are asked for."""
    return tuple(
        number
        for number in offer.cost
        if number > 0 and not chance_of_at_least(offer, number, asked=number)
    )


def out_of_reach(terms: Terms, names: Sequence[str], *, greatest: int) -> Mapping[str, Reached]:
    """For each of these entries, that no legal force of at most `greatest` points holds, why.

    A second diagram is drawn, of as many points as the dearest way to have one could cost.
    """
    if not names:
        return {}
    most = min(MOST_POINTS, max(greatest, 0) + _dearest(terms))
    drawn = diagram(terms, greatest=most)
    if isinstance(drawn, NotComputed):
        reason = f"no legal force holds it; why wasn't computed: {drawn.reason}"
        return dict.fromkeys(names, (Reach.NOT_SETTLED, reason))
    fewest = _fewest(drawn, names, points=range(greatest + 1, most + 1))
    return {
        name: (
            Reach.NEVER_AFFORDABLE,
            f"a force that holds it needs {fewest[name]} points, and {greatest} is the most",
        )
        if name in fewest
        else (Reach.NEVER_AVAILABLE, why_ruled_out(terms, terms.offers[name]))
        for name in names
    }


def _fewest(drawn: Diagram, names: Sequence[str], *, points: range) -> Mapping[str, int]:
    """For each of these entries the fewest of these points with which a legal force holds it.

    Most entries are only a little too dear: so the points are looked through in pieces, each twice
    as long as the one before, and no further than the last entry is found.
    """
    found: dict[str, int] = {}
    length = FIRST_PIECE
    while points and len(found) < len(names):
        piece, points = points[:length], points[length:]
        length *= 2
        every = legal_forces(drawn, points=piece)
        without = levels_without(drawn, points=piece)
        for name in names:
            first = _first_holding(every, without.get(name, every))
            if first is not None:
                found.setdefault(name, first)
    return found


def _first_holding(every: Sequence[LevelForces], without: Sequence[LevelForces]) -> int | None:
    """The first points with which there are more forces than those without an entry."""
    pairs = zip(every, without, strict=True)
    return next((level.points for level, others in pairs if level.legal > others.legal), None)


def _dearest(terms: Terms) -> int:
    """As many points as one of everything that may have to be had together could cost."""
    dearest = {
        name: max(
            offer.price(number, choice=each) for number in offer.cost for each in offer.choices
        )
        for name, offer in terms.offers.items()
    }
    return sum(
        max(0, dearest[name]) * max(1, offer.least, _asked_of(terms, name))
        for name, offer in terms.offers.items()
    )


def _asked_of(terms: Terms, name: str) -> int:
    """The most purchases of an entry that one purchase of another may need."""
    return max(
        needs.get(name, 0)
        for offer in terms.offers.values()
        for needs in (offer.needs, offer.needs_any_of, offer.needs_for_each)
    )


def why_ruled_out(terms: Terms, offer: Offer) -> str:
    """The plainest reason for which an entry on offer can never be held, in words."""
    if offer.most == 0:
        return "its limit allows none"
    for needed in (*offer.needs, *offer.needs_for_each):
        if needed not in terms.offers:
            return _not_on_offer(terms, needed)
        if needed in offer.bars:
            return f"it needs and bars {needed}"
    for needed, number in offer.needs.items():
        most = terms.offers[needed].most
        if most is not None and most < number:
            return f"it needs {needed} taken {number} times, and {most} is its limit"
    ways = offer.needs_any_of
    if ways and not any(way in terms.offers for way in ways):
        return f"it needs {' or '.join(ways)}, and none of them is on offer"
    if ways and set(ways) <= offer.bars:
        return f"it bars all that it may need: {', '.join(ways)}"
    held = next((name for name in offer.bars if _must_be_held(terms, name)), None)
    if held is not None:
        return f"it bars {held}, which every force must hold"
    return "its conditions, limits and groups exclude one another"


def _not_on_offer(terms: Terms, needed: str) -> str:
    why = terms.absent.get(needed)
    return f"it needs {needed}, which isn't on offer{f': {why}' if why else ''}"


def _must_be_held(terms: Terms, name: str) -> bool:
    return name in terms.offers and terms.offers[name].least > 0
