"""Amendments: one price, limit or worth of a list changed, to see what that would do."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TypeAlias

from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.core.support.terms import Terms


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceAmendment:
    """Other points for one priced number of an entry."""

    entry: str
    points: int
    number: int | None = None
    """None: the smallest that has a price."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitAmendment:
    """Another number of purchases that a force may hold of an entry; None: any number."""

    entry: str
    most: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class WorthAmendment:
    """Another worth of a number of an entry, whatever the choice."""

    entry: str
    worth: Fraction
    number: int | None = None
    """None: the smallest that has a price."""


Amendment: TypeAlias = PriceAmendment | LimitAmendment | WorthAmendment


@dataclass(frozen=True, slots=True, kw_only=True)
class Misfit:
    """An amendment that doesn't fit the list, and why, in words."""

    amendment: Amendment
    reason: str


def misfits(terms: Terms, amendments: Iterable[Amendment]) -> Iterator[Misfit]:
    """Every amendment that can't be made in a game."""
    last: dict[str, Amendment] = {}
    offers = dict(terms.offers)
    for each in amendments:
        reason = _misfit(terms, each)
        if reason:
            yield Misfit(amendment=each, reason=reason)
            continue
        last[each.entry] = each
        offers[each.entry] = _amended(offers[each.entry], each)
    for entry, amendment in last.items():
        if offers[entry].most is None and offers[entry].cheapest <= 0:
            reason = "any number of it might be taken for nothing"
            yield Misfit(amendment=amendment, reason=reason)


def _misfit(terms: Terms, amendment: Amendment) -> str:
    offer = terms.offers.get(amendment.entry)
    if offer is None:
        why = terms.absent.get(amendment.entry)
        return f"it isn't on offer{f': {why}' if why else ''}"
    if isinstance(amendment, LimitAmendment):
        if amendment.most is not None and amendment.most < offer.least:
            return f"a force must hold {offer.least} of it at least"
    elif amendment.number is not None and amendment.number not in offer.cost:
        priced = ", ".join(map(str, offer.cost))
        return f"{amendment.number} of it has no price; priced are {priced}"
    return ""


def amended(terms: Terms, amendments: Iterable[Amendment]) -> Terms:
    """The terms of the game with these changes, each of which must fit."""
    offers = dict(terms.offers)
    for each in amendments:
        offers[each.entry] = _amended(offers[each.entry], each)
    return replace(terms, offers=offers)


def _amended(offer: Offer, amendment: Amendment) -> Offer:
    match amendment:
        case PriceAmendment(points=points):
            number = number_of(offer, amendment)
            return replace(offer, cost={**offer.cost, number: points})
        case LimitAmendment(most=most):
            limit = None if offer.limit is None else replace(offer.limit, most=most, of="", plus=0)
            return replace(offer, most=most, limit=limit)
        case _:
            table = dict(offer.worths.get(NO_CHOICE, {}))
            table[number_of(offer, amendment)] = amendment.worth
            return replace(offer, worths={**offer.worths, NO_CHOICE: table})


def number_of(offer: Offer, amendment: PriceAmendment | WorthAmendment) -> int:
    """The priced number that an amendment is about."""
    return min(offer.cost) if amendment.number is None else amendment.number
