"""The proof of a list in one game: all that its author should know, from one diagram."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from paradestate.chance.force.best_force import best_forces
from paradestate.chance.force.diagram import diagram
from paradestate.chance.force.legal_count import least_unspent, legal_forces
from paradestate.chance.proof.dominance import dominances
from paradestate.chance.proof.entry_best import places_in_best
from paradestate.chance.proof.entry_count import levels_without
from paradestate.chance.proof.reach import numbers_never_allowed, out_of_reach
from paradestate.core.certainty import NotComputed
from paradestate.core.support.chances import Chances
from paradestate.core.support.entry import Entry
from paradestate.core.support.force_map import LevelForces
from paradestate.core.support.offer import Offer
from paradestate.core.support.price_table import price_doubts, price_steps
from paradestate.core.support.proof import EntryLevel, EntryProof, GameProof, InBest, Reach
from paradestate.core.support.terms import Terms


def game_proof(
    terms: Terms,
    entries: Mapping[str, Entry],
    *,
    points: Sequence[int],
    allowance: Chances | None,
) -> GameProof | NotComputed:
    """The proof of a list for these numbers of points, rising; `entries` is what its file says."""
    drawn = diagram(terms, greatest=points[-1])
    if isinstance(drawn, NotComputed):
        return drawn
    levels = legal_forces(drawn, points=points)
    without = levels_without(drawn, points=points)
    best = places_in_best(best_forces(drawn), points=points) if terms.has_worths else {}
    by_level = {
        name: _levels(levels, without=without.get(name), best=best.get(name))
        for name in terms.offers
    }
    never = [name for name, found in by_level.items() if not any(each.holding for each in found)]
    reasons = out_of_reach(terms, never, greatest=points[-1])
    better = dominances(terms, entries)
    return GameProof(
        terms=terms,
        allowance=allowance,
        levels=levels,
        unspent=least_unspent(drawn, points=points),
        cheapest=cheapest_purchase(terms),
        has_worths=terms.has_worths,
        entries=tuple(
            replace(
                _on_offer(terms.offers[name], reached=reasons.get(name)),
                dominated=better.get(name),
                levels=by_level[name],
            )
            if name in terms.offers
            else EntryProof(entry=name, reach=Reach.NEVER_AVAILABLE, reason=terms.absent[name])
            for name in entries
        ),
    )


def cheapest_purchase(terms: Terms) -> int | None:
    """The fewest points above nought that anything on offer costs."""
    prices = (
        offer.price(number, choice=choice)
        for offer in terms.offers.values()
        for number in offer.cost
        for choice in offer.choices
    )
    return min((price for price in prices if price > 0), default=None)


def _on_offer(offer: Offer, *, reached: tuple[Reach, str] | None) -> EntryProof:
    never = numbers_never_allowed(offer)
    reach, reason = reached or (Reach.CAN_BE_TAKEN, "")
    if reached is None and never and not _comes_in_part(offer):
        reach, reason = Reach.NEVER_AVAILABLE, "its roll never allows any"
    return EntryProof(
        entry=offer.name,
        reach=reach,
        reason=reason,
        doubts=price_doubts(offer),
        prices=offer.cost,
        steps=price_steps(offer),
        never_allowed=never,
    )


def _comes_in_part(offer: Offer) -> bool:
    """Whether the roll ever allows as many as one priced number, whatever was asked for."""
    return len(numbers_never_allowed(offer)) < len([number for number in offer.cost if number > 0])


def _levels(
    levels: Sequence[LevelForces],
    *,
    without: Sequence[LevelForces] | None,
    best: Sequence[InBest | None] | None,
) -> tuple[EntryLevel, ...]:
    """An entry level by level; where nothing is legal at all there are no counts without it."""
    found = []
    for place, level in enumerate(levels):
        others = level.legal if without is None else without[place].legal
        found.append(
            EntryLevel(
                points=level.points,
                holding=level.legal - others,
                legal=level.legal,
                in_best=None if best is None else best[place],
            )
        )
    return tuple(found)
