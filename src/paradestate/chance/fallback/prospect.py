"""What matters to a fall-back: offers of use, what is rolled for, what may be bought before a roll.

terms, points, what is held -> a prospect, in which every limit is a whole number.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from paradestate.chance.fallback.rolled import (
    EntryRoll,
    Rolled,
    options_of,
    points_saved,
    rolled_entries,
)
from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """How an evening stands: what is taken already, and what was asked for."""

    taken: tuple[Purchase, ...] = ()
    asked: frozenset[str] = frozenset()
    """Entries that may not be asked for again; those taken are among them or needn't be."""
    paid: int = 0
    """Points that are gone for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """What a group may still take: purchases, or points."""

    members: frozenset[str]
    in_points: bool
    most: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Prospect:
    """All that a fall-back from one number of points depends on."""

    offers: Mapping[str, Offer]
    """Those that are of use, in file order; bars stand on both sides."""
    rolled: tuple[Rolled, ...]
    rolls: tuple[EntryRoll, ...]
    early: Mapping[str, int]
    """Sure entries that may be bought before a roll, to the most purchases of that sort."""
    rooms: tuple[Room, ...]
    top: int
    """The most points that can ever be there: those left and all refunds."""
    held: Held

    @property
    def sure(self) -> tuple[Offer, ...]:
        """Offers that need no roll."""
        return tuple(offer for offer in self.offers.values() if offer.availability is None)

    @property
    def shared(self) -> tuple[int, ...]:
        """Rolls that decide more than one entry."""
        return tuple(place for place, each in enumerate(self.rolls) if len(each.members) > 1)


def prospect_of(terms: Terms, *, points: int, shared: int, held: Held) -> Prospect:
    """The prospect with `points` to spend; `shared` is what shares of groups are shares of."""
    offers = _useful(_with_bars_both_ways(terms.offers), held=held)
    rolled, rolls = rolled_entries(offers.values())
    return Prospect(
        offers=offers,
        rolled=rolled,
        rolls=rolls,
        early=_early(offers, held=held),
        rooms=tuple(_rooms(terms, offers, shared=shared)),
        top=points + points_saved(offers),
        held=held,
    )


def _with_bars_both_ways(offers: Mapping[str, Offer]) -> Mapping[str, Offer]:
    bars: dict[str, set[str]] = {name: set(offer.bars) for name, offer in offers.items()}
    for name, offer in offers.items():
        for other in offer.bars & bars.keys():
            bars[other].add(name)
    return {name: replace(offer, bars=frozenset(bars[name])) for name, offer in offers.items()}


def _useful(offers: Mapping[str, Offer], *, held: Held) -> Mapping[str, Offer]:
    """Offers with a worth or a refund, what those need, and what shares a roll with any of them."""
    bought = {purchase.entry for purchase in held.taken}
    possible = {
        name: offer
        for name, offer in offers.items()
        if name in bought or (offer.most != 0 and name not in offer.bars)
    }
    found: set[str] = set()
    open_ = {name for name, offer in possible.items() if name in bought or _has_use(offer)}
    while open_:
        found |= open_
        partners = {partner for name in open_ for partner in _partners(possible, possible[name])}
        open_ = partners - found
    return {
        name: replace(offer, bars=offer.bars & found)
        for name, offer in possible.items()
        if name in found
    }


def _has_use(offer: Offer) -> bool:
    worths = (worth for table in offer.worths.values() for worth in table.values())
    return any(worth > 0 for worth in worths) or is_refund(offer)


def is_refund(offer: Offer) -> bool:
    """Whether buying of it may bring points."""
    return (
        any(option.price < 0 for option in options_of(offer))
        or min(offer.repeats_cost_more, default=0) < 0
    )


def _partners(offers: Mapping[str, Offer], offer: Offer) -> Iterator[str]:
    yield from (name for name in needed_by(offer) if name in offers)
    availability = offer.availability
    if availability is not None and availability.shared_roll:
        for other in offers.values():
            if other.availability and other.availability.shared_roll == availability.shared_roll:
                yield other.name


def needed_by(offer: Offer) -> Mapping[str, int]:
    """Entries that one purchase of it may need, each with the greatest number it asks for."""
    found: dict[str, int] = {}
    for needs in (offer.needs, offer.needs_any_of, offer.needs_for_each):
        for name, number in needs.items():
            found[name] = max(found.get(name, 0), number)
    return found


def _early(offers: Mapping[str, Offer], *, held: Held) -> Mapping[str, int]:
    """Sure entries that a rolled one needs, directly or not, that bring points, or that are held.

    Everything else is bought after the last roll, when more is known.
    """
    most: dict[str, int] = {}
    for name, offer in offers.items():
        if offer.availability is None and is_refund(offer):
            most[name] = offer.most or 0
    open_: list[tuple[Offer, int]] = [
        (offer, 1) for offer in offers.values() if offer.availability is not None
    ]
    open_ += [(offers[name], number) for name, number in most.items()]
    while open_:
        offer, times = open_.pop()
        for name, number in _asked_of(offer, times=times):
            needed = offers.get(name)
            if needed is None or needed.availability is not None:
                continue
            enough = number if needed.most is None else min(number, needed.most)
            if enough > most.get(name, 0):
                most[name] = enough
                open_.append((needed, enough))
    for purchase in held.taken:
        if offers[purchase.entry].availability is None:
            taken = sum(each.entry == purchase.entry for each in held.taken)
            most[purchase.entry] = max(most.get(purchase.entry, 0), taken)
    return {name: most[name] for name in offers if name in most}


def _asked_of(offer: Offer, *, times: int) -> Iterable[tuple[str, int]]:
    yield from offer.needs.items()
    yield from offer.needs_any_of.items()
    yield from ((name, number * times) for name, number in offer.needs_for_each.items())


def _rooms(terms: Terms, offers: Mapping[str, Offer], *, shared: int) -> Iterator[Room]:
    for limit in terms.groups:
        members = frozenset(name for name, offer in offers.items() if offer.group == limit.group)
        if members and limit.most is not None:
            yield Room(members=members, in_points=False, most=limit.most)
        most = limit.most_spent(shared)
        if members and most is not None:
            yield Room(members=members, in_points=True, most=most)
