"""The ceiling of wants: the most of each thing that a legal list could call for.

Per thing, not all at once. Limits, shared limits, dates, theatres, posture and bars are
considered; what an entry needs, and the points that other entries cost, are not.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.game import Game
from paradestate.core.support.entry import Entry, Variation
from paradestate.core.support.limit import purchases_allowed
from paradestate.core.support.terms import formation_cost, why_absent

MOST_LISTED = 12
"""Entries for one thing up to which every set of them is tried against bars and groups."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ceiling:
    """The most of each thing; None where no limit bounds it."""

    stands: Mapping[str, int | None]
    figures: Mapping[str, int | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Offer:
    """An entry, how often it can be taken, and how many of some thing one purchase brings."""

    entry: Entry
    purchases: int | None
    each: int


def ceiling(force: Force, made: Establishment, *, game: Game | None = None) -> Ceiling:
    """The ceiling for the raised force, in any game or in one."""
    entries = [
        entry
        for entry in force.supporting_troops.values()
        if not why_absent(entry, made, posture=game.posture if game else "")
    ]
    purchases = [_purchases(force, entry, made=made, game=game) for entry in entries]
    stands = [stands_of(entry) for entry in entries]
    figures = [_figures(force, brought) for brought in stands]
    return Ceiling(
        stands=_most_of_each(force, entries, purchases=purchases, brought=stands),
        figures=_most_of_each(force, entries, purchases=purchases, brought=figures),
    )


def _most_of_each(
    force: Force,
    entries: Sequence[Entry],
    *,
    purchases: Sequence[int | None],
    brought: Sequence[Mapping[str, int]],
) -> Mapping[str, int | None]:
    """Thing to the most of it, where `brought` says what one purchase of each entry brings."""
    things = dict.fromkeys(name for each in brought for name in each)
    offers = {
        thing: tuple(
            _Offer(entry=entry, purchases=number, each=each[thing])
            for entry, number, each in zip(entries, purchases, brought, strict=True)
            if each.get(thing)
        )
        for thing in things
    }
    return {thing: _most(force, offers[thing]) for thing in things}


def stands_of(entry: Entry) -> Mapping[str, int]:
    """The most stands that one purchase of an entry brings, with those that come free."""
    most = max((n for table in _tables(entry, game=None) for n in table), default=0)
    stands = {name: each * most for name, each in entry.each.items()}
    for name, number in entry.grants.items():
        stands[name] = stands.get(name, 0) + number
    if entry.replaces is not None:
        name = entry.replaces.with_
        stands[name] = stands.get(name, 0) + entry.replaces.number
    return stands


def _figures(force: Force, stands: Mapping[str, int]) -> Mapping[str, int]:
    figures: dict[str, int] = {}
    for name, number in stands.items():
        pattern = force.stands.get(name)
        if pattern is None or pattern.printed:
            continue
        for kind, each in pattern.figures.items():
            figures[kind] = figures.get(kind, 0) + each * number
    return figures


def _purchases(force: Force, entry: Entry, *, made: Establishment, game: Game | None) -> int | None:
    """Purchases by the limit; without one by the points of the game, if one is given."""
    limits = [here.limit or entry.limit for here in _variations(entry, game=game)]
    each = [purchases_allowed(limit, number_of=made.number_of) for limit in limits]
    known = [number for number in each if number is not None]
    if len(known) == len(each):
        return max(known)
    if game is None:
        return None
    refunds = sum(min(scale.points.values(), default=0) for scale in force.grades.values())
    points = max(game.allowance.totals()) - formation_cost(force, made.number_of) - refunds
    choice = min(entry.choice_costs.values(), default=0)
    cheapest = min(
        price + number * min(choice, 0)
        for table in _tables(entry, game=game)
        for number, price in table.items()
    )
    return None if cheapest <= 0 else max(points, 0) // cheapest


def _variations(entry: Entry, *, game: Game | None) -> Iterator[Variation]:
    """What may hold of an entry: in the game, or in any."""
    if game is not None:
        yield entry.in_posture.get(game.posture, Variation())
        return
    yield Variation()
    yield from entry.in_posture.values()


def _tables(entry: Entry, *, game: Game | None) -> Iterator[Mapping[int, int]]:
    """Every table of prices that may hold of an entry, whatever its grades."""
    for here in _variations(entry, game=game):
        yield here.cost or entry.cost
    for by_grade in entry.cost_by_grade.values():
        yield from by_grade.values()


def _most(force: Force, offers: Sequence[_Offer]) -> int | None:
    """The greatest sum over entries that don't bar each other, within shared limits."""
    if any(offer.purchases is None for offer in offers):
        return None
    if len(offers) > MOST_LISTED:
        return sum(_brought(offer) for offer in offers)
    return max(_sum(force, chosen) for chosen in _compatible(offers))


def _brought(offer: _Offer) -> int:
    return (offer.purchases or 0) * offer.each


def _compatible(offers: Sequence[_Offer]) -> Iterator[tuple[_Offer, ...]]:
    for size in range(len(offers) + 1):
        for chosen in combinations(offers, size):
            names = {offer.entry.name for offer in chosen}
            if not any(names & set(offer.entry.bars) for offer in chosen):
                yield chosen


def _sum(force: Force, chosen: Iterable[_Offer]) -> int:
    """What the chosen entries bring, the best of a group first where its purchases are limited."""
    limits = {limit.group: limit.most for limit in force.limits if limit.most is not None}
    total = 0
    for offer in sorted(chosen, key=lambda offer: -offer.each):
        purchases = offer.purchases or 0
        group = offer.entry.group
        if group in limits:
            purchases = min(purchases, limits[group])
            limits[group] -= purchases
        total += purchases * offer.each
    return total
