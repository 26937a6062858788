"""What may be held of a sure entry before all rolls are over."""

from dataclasses import dataclass
from itertools import combinations_with_replacement

from paradestate.chance.fallback.prospect import Prospect
from paradestate.chance.fallback.rolled import options_of
from paradestate.core.game import Purchase
from paradestate.core.support.plan import plan_points


@dataclass(frozen=True, slots=True, kw_only=True)
class Holding:
    """Purchases of one entry."""

    purchases: tuple[Purchase, ...]
    points: int


def holdings_of(prospect: Prospect, name: str) -> tuple[Holding, ...]:
    """All purchases of a sure entry that may be held early, those of the start first."""
    offers = prospect.offers
    held = tuple(each for each in prospect.held.taken if each.entry == name)
    every = [option.purchase for option in options_of(offers[name])]
    return tuple(
        Holding(purchases=(*held, *more), points=plan_points(offers, (*held, *more)))
        for times in range(prospect.early[name] - len(held) + 1)
        for more in combinations_with_replacement(every, times)
    )


def holds_more(before: Holding, after: Holding) -> bool:
    """Whether one comes to the second holding by buying, or has it already."""
    return all(
        after.purchases.count(purchase) >= before.purchases.count(purchase)
        for purchase in before.purchases
    )


def bought_between(before: Holding, after: Holding) -> tuple[Purchase, ...]:
    """What is bought to come from one holding to the other."""
    more = list(after.purchases)
    for purchase in before.purchases:
        more.remove(purchase)
    return tuple(more)
