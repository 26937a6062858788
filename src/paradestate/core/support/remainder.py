"""What remains of a plan once some of it was refused: what needs that goes with it."""

from collections import Counter
from collections.abc import Collection, Mapping, Sequence

from paradestate.core.game import Purchase
from paradestate.core.support.need import are_needs_met
from paradestate.core.support.offer import Offer


def remaining(
    offers: Mapping[str, Offer], plan: Sequence[Purchase], *, gone: Collection[int]
) -> frozenset[int]:
    """The places in the plan of all that can stay without those that are gone.

    It is the greatest part of the rest in which every need holds. Where fewer purchases of an entry
    may stay than there are, the first ones in the plan do.
    """
    left = [place for place in range(len(plan)) if place not in gone]
    while True:
        there = Counter(plan[place].entry for place in left)
        room = {
            entry: _most_that_stay(offers[entry], there, number=n) for entry, n in there.items()
        }
        stay = []
        for place in left:
            entry = plan[place].entry
            if room[entry] > 0:
                room[entry] -= 1
                stay.append(place)
        if len(stay) == len(left):
            return frozenset(stay)
        left = stay


def _most_that_stay(offer: Offer, there: Counter[str], *, number: int) -> int:
    """How many of `number` purchases their needs let stay, when so many of each entry are there."""
    fewer = range(number, 0, -1)
    return next((n for n in fewer if are_needs_met(offer, there.__getitem__, times=n)), 0)


def needed_before(
    offers: Mapping[str, Offer], plan: Sequence[Purchase]
) -> Mapping[str, frozenset[str]]:
    """Entry of the plan to all of its entries that it may need, directly or through others.

    An entry among its own stands in a circle of needs.
    """
    entries = dict.fromkeys(purchase.entry for purchase in plan)
    direct = {
        entry: {
            other
            for needs in (
                offers[entry].needs,
                offers[entry].needs_any_of,
                offers[entry].needs_for_each,
            )
            for other in needs
            if other in entries
        }
        for entry in entries
    }
    return {entry: frozenset(_reached(direct, entry)) for entry in entries}


def _reached(direct: Mapping[str, Collection[str]], entry: str) -> set[str]:
    found: set[str] = set()
    open_ = list(direct[entry])
    while open_:
        other = open_.pop()
        if other not in found:
            found.add(other)
            open_.extend(direct[other])
    return found
