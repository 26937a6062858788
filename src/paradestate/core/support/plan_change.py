"""One change of a plan: something more asked for, more or less of it, none of it.

Whether the plan is legal after it is for the judge to say.
"""

from dataclasses import replace

from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer

Plan = tuple[Purchase, ...]


def asked_too(plan: Plan, offer: Offer, *, choice: str) -> Plan | None:
    """The plan with one more purchase, of the least number that is sold.

    None where the limit of the entry allows no more.
    """
    purchases = sum(each.entry == offer.name for each in plan)
    if offer.most is not None and purchases >= offer.most:
        return None
    return (*plan, Purchase(entry=offer.name, number=min(offer.cost), choice=choice))


def with_more(plan: Plan, place: int, *, offer: Offer) -> Plan | None:
    """The plan with the next greater number that is sold of one purchase; None without one."""
    greater = [number for number in offer.cost if number > plan[place].number]
    return _with_number(plan, place, number=min(greater)) if greater else None


def with_less(plan: Plan, place: int, *, offer: Offer) -> Plan:
    """The plan with the next smaller number that is sold of one purchase, or without it."""
    smaller = [number for number in offer.cost if number < plan[place].number]
    return _with_number(plan, place, number=max(smaller)) if smaller else without(plan, place)


def without(plan: Plan, place: int) -> Plan:
    """The plan without one of its purchases."""
    return (*plan[:place], *plan[place + 1 :])


def _with_number(plan: Plan, place: int, *, number: int) -> Plan:
    return (*plan[:place], replace(plan[place], number=number), *plan[place + 1 :])
