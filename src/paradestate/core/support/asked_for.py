"""A request that was made, and how it came out: by the chart of a fall-back, or otherwise."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer
from paradestate.core.support.policy import Ask, Granted


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedFor:
    """A request that was made."""

    purchase: Purchase
    allowed: int
    """As far as it makes a difference; nought: refused."""
    takes: Purchase | None
    before: tuple[Purchase, ...] = ()
    """What was bought without a roll so that it could be asked for."""


def by_chart(ask: Ask, *, allowed: int) -> tuple[AskedFor, Granted] | None:
    """A request of a chart when the dice allow so many, with the outcome that goes on from it.

    None where that can't come: it is less than the least that is ever allowed.
    """
    outcome = next((each for each in ask.outcomes if each.allowed <= allowed), None)
    if outcome is None:
        return None
    came = AskedFor(
        purchase=ask.purchase,
        allowed=outcome.allowed,
        takes=outcome.takes,
        before=ask.before,
    )
    return came, outcome


def of_own_accord(offer: Offer, purchase: Purchase, *, allowed: int) -> AskedFor:
    """A request that no chart proposed: as many are taken as are allowed and sold."""
    number = offer.greatest_number(allowed=min(allowed, purchase.number))
    takes = replace(purchase, number=number) if number else None
    return AskedFor(purchase=purchase, allowed=number, takes=takes)


def taken_of(asked: Iterable[AskedFor]) -> tuple[Purchase, ...]:
    """What was taken of all that was asked for, with what had to be bought for it."""
    return tuple(
        purchase
        for each in asked
        for purchase in (*each.before, each.takes)
        if purchase is not None
    )
