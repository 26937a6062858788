"""A plan added up: what it costs, how much it takes of each entry, what it is worth."""

from collections.abc import Iterable, Mapping
from fractions import Fraction

from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer


def purchases_of(plan: Iterable[Purchase]) -> Mapping[str, int]:
    """Entry to how often the plan takes it, in the order in which entries come first."""
    found: dict[str, int] = {}
    for purchase in plan:
        found[purchase.entry] = found.get(purchase.entry, 0) + 1
    return found


def plan_points(offers: Mapping[str, Offer], plan: Iterable[Purchase]) -> int:
    """Points of all purchases together; each must be on offer, at a number that has a price."""
    every = tuple(plan)
    prices = sum(offers[each.entry].price(each.number, choice=each.choice) for each in every)
    return prices + sum(
        offers[entry].surcharge(number) for entry, number in purchases_of(every).items()
    )


def plan_worth(offers: Mapping[str, Offer], plan: Iterable[Purchase]) -> Fraction:
    """The owner's worth of the plan: the sum over its entries of the worth of their totals."""
    totals: dict[str, dict[str, int]] = {}
    for purchase in plan:
        taken = totals.setdefault(purchase.entry, {})
        taken[purchase.choice] = taken.get(purchase.choice, 0) + purchase.number
    return sum((offers[entry].worth(taken) for entry, taken in totals.items()), Fraction(0))
