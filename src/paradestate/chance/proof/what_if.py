"""What a changed price, limit or worth does to the legal forces of a list, and to the best ones.

All that goes in and comes out are plain frozen values, so that many changes can be looked at by
many processes at once: `list_forces` once, then `what_if` for each of them.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import islice

from paradestate.chance.force.best_force import best_forces
from paradestate.chance.force.diagram import diagram
from paradestate.chance.force.legal_count import legal_forces
from paradestate.chance.proof.both_lists import legal_in_both
from paradestate.core.certainty import NotComputed
from paradestate.core.support.amendment import Amendment, PriceAmendment, amended
from paradestate.core.support.chances import Chances
from paradestate.core.support.comparison import BEST, ListComparison, ListForces
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms


def list_forces(
    terms: Terms, *, points: Sequence[int], at: int, allowance: Chances | None = None
) -> ListForces | NotComputed:
    """The legal forces with these numbers of points left, rising; most is said of those with `at`.

    `at` must be one of them.
    """
    drawn = diagram(terms, greatest=points[-1])
    if isinstance(drawn, NotComputed):
        return drawn
    levels = legal_forces(drawn, points=points)
    if not terms.has_worths:
        nothing = (None,) * len(points)
        return ListForces(
            terms=terms,
            allowance=allowance,
            at=at,
            levels=levels,
            best=nothing,
            first=(),
            is_cut=False,
        )
    best = best_forces(drawn)
    first = tuple(islice(best.ranked(points=at), BEST + 1))
    cut = first[BEST - 1 :]
    return ListForces(
        terms=terms,
        allowance=allowance,
        at=at,
        levels=levels,
        best=tuple(best.best(points=number) for number in points),
        first=first[:BEST],
        is_cut=len({(force.worth, force.points) for force in cut}) < len(cut),
    )


def what_if(old: ListForces, amendments: Iterable[Amendment]) -> ListComparison | NotComputed:
    """A list as it is, and as it would be; the amendments must fit it (see `misfits`)."""
    terms = amended(old.terms, amendments)
    new = list_forces(terms, points=old.points, at=old.at, allowance=old.allowance)
    return new if isinstance(new, NotComputed) else compared(old, new)


def compared(old: ListForces, new: ListForces) -> ListComparison:
    """Two versions of a list with the same numbers of points left."""
    payable = tuple(points for points in old.points if points >= 0)
    both = legal_in_both(old.terms, new.terms, points=payable) if payable else ()
    if isinstance(both, NotComputed):
        return ListComparison(old=old, new=new, both=both)
    # Below nought only the empty force may be legal, and it is the same in both.
    empty = tuple(
        min(was.legal, now.legal)
        for was, now in zip(old.levels, new.levels, strict=True)
        if was.points < 0
    )
    return ListComparison(old=old, new=new, both=(*empty, *both))


def only_price(old: Terms, new: Terms) -> PriceAmendment | None:
    """The one price in which two versions of a list differ; None where they differ otherwise."""
    if replace(old, offers={}, game=new.game) != replace(new, offers={}):
        return None
    changed = [
        (old.offers[name], offer)
        for name, offer in new.offers.items()
        if name in old.offers and old.offers[name] != offer
    ]
    if old.offers.keys() != new.offers.keys() or len(changed) != 1:
        return None
    return _only_price(*changed[0])


def _only_price(old: Offer, new: Offer) -> PriceAmendment | None:
    if replace(old, cost=new.cost) != new or old.cost.keys() != new.cost.keys():
        return None
    other = [number for number in new.cost if new.cost[number] != old.cost[number]]
    if len(other) != 1:
        return None
    (number,) = other
    return PriceAmendment(entry=new.name, number=number, points=new.cost[number])
