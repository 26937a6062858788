"""Breaches: which rules a plan breaks, and by how much.

Works on the terms of a game alone and says nothing in words, so that many plans can be tried fast.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import TypeAlias

from paradestate.core.game import Purchase
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.need import lacks
from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.core.support.plan import plan_points, purchases_of
from paradestate.core.support.terms import Terms


@dataclass(frozen=True, slots=True, kw_only=True)
class Breach:
    """One rule that a plan breaks."""

    code: str
    about: tuple[str, ...]
    """What tells it from other breaches of its rule: an entry, a pair, a group, a purchase."""
    has: int
    """What the plan has of what is counted: purchases or points."""
    bound: int
    """What it may have at most, or must have at least."""

    @property
    def by(self) -> int:
        """How far it is from keeping the rule."""
        return abs(self.has - self.bound)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bill:
    """A plan with its sums, under the terms of a game."""

    terms: Terms
    plan: tuple[Purchase, ...]
    points: int
    """Points left: the allowance less formation cost and grades."""
    taken: Mapping[str, int]
    """Entry on offer to purchases of it, those at a number without a price included."""
    spent: int
    """Points of all purchases that have a price."""


def bill_of(terms: Terms, plan: Iterable[Purchase], *, points: int) -> Bill:
    """The plan added up."""
    every = tuple(plan)
    return Bill(
        terms=terms,
        plan=every,
        points=points,
        taken=purchases_of(each for each in every if each.entry in terms.offers),
        spent=plan_points(terms.offers, priced(terms, every)),
    )


def priced(terms: Terms, plan: Iterable[Purchase]) -> tuple[Purchase, ...]:
    """The purchases that have a price: on offer, at a known number, with a known choice."""
    return tuple(each for each in plan if is_priced(terms, each))


def is_priced(terms: Terms, purchase: Purchase) -> bool:
    """Whether something may be bought at all, whatever else is."""
    offer = terms.offers.get(purchase.entry)
    return offer is not None and purchase.number in offer.cost and purchase.choice in offer.choices


def _purchases(bill: Bill) -> Iterator[Breach]:
    """Purchases that can't be had at any price; each different one once."""
    for purchase, times in Counter(bill.plan).items():
        offer = bill.terms.offers.get(purchase.entry)
        about = (purchase.entry, str(purchase.number), purchase.choice)
        if purchase.entry in bill.terms.absent:
            yield Breach(code="not-in-force", about=about, has=times, bound=0)
        elif offer is None:
            yield Breach(code="unknown-name", about=about, has=times, bound=0)
        else:
            yield from _particulars(offer, purchase, times=times)


def _particulars(offer: Offer, purchase: Purchase, *, times: int) -> Iterator[Breach]:
    about = (purchase.entry, str(purchase.number), purchase.choice)
    if purchase.number not in offer.cost:
        yield Breach(code="number-not-priced", about=about, has=times, bound=0)
    if purchase.choice not in offer.choices:
        yield Breach(
            code="choice-missing" if purchase.choice == NO_CHOICE else "choice-unknown",
            about=about,
            has=times,
            bound=0,
        )


def _points(bill: Bill) -> Iterator[Breach]:
    """With less than no points nothing may be taken, not even what brings points."""
    if bill.plan and (bill.spent > bill.points or bill.points < 0):
        yield Breach(code="over-points", about=(), has=bill.spent, bound=bill.points)


def _limits(bill: Bill) -> Iterator[Breach]:
    for name, offer in bill.terms.offers.items():
        times = bill.taken.get(name, 0)
        if offer.most is not None and times > offer.most:
            yield Breach(code="over-limit", about=(name,), has=times, bound=offer.most)
        if times < offer.least:
            yield Breach(code="below-least", about=(name,), has=times, bound=offer.least)


def _needs(bill: Bill) -> Iterator[Breach]:
    def count(name: str) -> int:
        return bill.taken.get(name, 0)

    for name, times in bill.taken.items():
        for lack in lacks(bill.terms.offers[name], count, times=times):
            about = (name, *lack.others)
            yield Breach(code=lack.code, about=about, has=lack.has, bound=lack.bound)


def _bars(bill: Bill) -> Iterator[Breach]:
    names = tuple(bill.taken)
    for place, name in enumerate(names):
        barred = bill.terms.offers[name].bars
        for other in names[place:] if barred else ():
            if other in barred:
                times = min(bill.taken[name], bill.taken[other])
                about = tuple(sorted((name, other)))
                yield Breach(code="barred-pair", about=about, has=times, bound=0)


def _groups(bill: Bill) -> Iterator[Breach]:
    for place, limit in enumerate(bill.terms.groups, start=1):
        about = (limit.group, str(place))
        within = tuple(each for each in bill.plan if _is_of(bill.terms, each, group=limit.group))
        if limit.most is not None and len(within) > limit.most:
            yield Breach(code="over-group", about=about, has=len(within), bound=limit.most)
        if len(within) < limit.least:
            yield Breach(code="below-group", about=about, has=len(within), bound=limit.least)
        spent = plan_points(bill.terms.offers, priced(bill.terms, within))
        yield from _shares(limit, about=about, spent=spent, points=bill.points)


def _shares(
    limit: GroupLimit, *, about: tuple[str, ...], spent: int, points: int
) -> Iterator[Breach]:
    """A share of the points is exact: whole points keep it as far as its whole part goes."""
    most, least = limit.most_spent(points), limit.least_spent(points)
    if most is not None and spent > most:
        yield Breach(code="over-group-points", about=about, has=spent, bound=most)
    if least is not None and spent < least:
        yield Breach(code="below-group-points", about=about, has=spent, bound=least)


def _is_of(terms: Terms, purchase: Purchase, *, group: str) -> bool:
    offer = terms.offers.get(purchase.entry)
    return offer is not None and offer.group == group


Law: TypeAlias = Callable[[Bill], Iterator[Breach]]

LAWS: tuple[Law, ...] = (_purchases, _points, _limits, _needs, _bars, _groups)
"""Every rule of a legal force, in the order in which breaches are told."""


def breaches(bill: Bill) -> tuple[Breach, ...]:
    """Every rule that the plan breaks; none where it is legal."""
    return tuple(breach for law in LAWS for breach in law(bill))
