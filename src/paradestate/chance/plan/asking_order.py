"""In which order to ask for what is rolled for.

What is needed comes before what needs it; by that alone as few points are lost on average as can
be, where every roll is its own: whether something is asked hangs on what it needs, and on nothing
else that was asked before. Where entries that lose points share a roll, whoever is asked first
makes it, and the others are only asked for what comes: so these orders are tried.
"""

from collections.abc import Sequence
from fractions import Fraction
from itertools import permutations, product
from math import factorial, prod

from paradestate.chance.plan.turnout import Asked, Fall, mean_lost, places_rolled_for
from paradestate.core.certainty import Certainty, Exact, NotComputed
from paradestate.core.support.entry import Asking
from paradestate.core.support.remainder import needed_before

MOST_TRIED = 20_000
"""Orders times ways for the rolls to fall, above which not all orders are tried."""


def asking_order(asked: Asked, every: Sequence[Fall]) -> tuple[tuple[int, ...], Certainty]:
    """Places of the plan in the best order to ask, and how sure that is.

    No other order in which what is needed comes first loses fewer points on average. Of those as
    good: what keeps its points before what loses them, then what is likeliest refused, so that a
    refusal is known before points are at stake. `every` is empty where there were too many ways.
    """
    usual = _ordered(asked, chains=())
    sharing = _sharing(asked)
    if not sharing:
        return usual, Exact()
    number = prod(factorial(len(places)) for places in sharing)
    if not every or number * len(every) > MOST_TRIED:
        return usual, NotComputed(reason="too many orders of those that share a roll")
    best, least = usual, mean_lost(asked, every, order=usual)
    for chains in product(*(permutations(places) for places in sharing)):
        order = _ordered(asked, chains=chains)
        if order and (lost := mean_lost(asked, every, order=order)) < least:
            best, least = order, lost
    return best, Exact()


def _sharing(asked: Asked) -> list[tuple[int, ...]]:
    """The places of each roll whose order matters."""
    if asked.asking is Asking.ALL_DECLARED_FIRST:
        return []
    return [
        roll.places
        for roll in asked.rolls
        if len(roll.places) > 1 and any(asked.is_prepaid(place) for place in roll.places)
    ]


def _ordered(asked: Asked, *, chains: Sequence[Sequence[int]]) -> tuple[int, ...]:
    """All that is rolled for, each of `chains` in its order; empty where that can't be."""
    waits = _waits(asked)
    for chain in chains:
        for at, place in enumerate(chain):
            waits[place] |= set(chain[:at])
    ranks = {place: _rank(asked, place) for place in waits}
    order: list[int] = []
    while waits:
        ready = [place for place, before in waits.items() if before <= set(order)]
        if not ready:
            return ()
        first = min(ready, key=lambda place: ranks[place])
        order.append(first)
        del waits[first]
    return tuple(order)


def _waits(asked: Asked) -> dict[int, set[int]]:
    """Place to the places that are asked before it, since it may need them."""
    before = needed_before(asked.offers, asked.plan)
    places = tuple(places_rolled_for(asked))
    return {
        place: {
            other
            for other in places
            if other not in asked.circles[place]
            and asked.plan[other].entry in before[asked.plan[place].entry]
        }
        for place in places
    }


def _rank(asked: Asked, place: int) -> tuple[bool, Fraction, int]:
    purchase = asked.plan[place]
    roll = next(roll for roll in asked.rolls if place in roll.places)
    whole = roll.chances_of(place).at_least(purchase.number)
    return asked.is_prepaid(place), whole, place
