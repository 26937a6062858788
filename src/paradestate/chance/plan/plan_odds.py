"""The exact odds of a plan: whether the points suffice, whether all of it comes, what turns up.

The roll for points and the rolls for availability are independent of each other.
Source of the sums: chances of independent events multiply, those of ways that exclude each other
add up; entries that share a roll are counted way by way.
"""

from collections.abc import Sequence
from fractions import Fraction
from math import prod

from paradestate.chance.availability import PlanRoll, plan_rolls
from paradestate.chance.plan.asking_order import asking_order
from paradestate.chance.plan.turnout import MOST_WAYS, asked_of, falls, number_of_ways, turnouts
from paradestate.core.game import Purchase
from paradestate.core.support.chances import Chances
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.plan import plan_points
from paradestate.core.support.terms import Terms
from paradestate.core.support.turnout import PlanOdds, Roll


def plan_odds(terms: Terms, plan: Sequence[Purchase], *, allowance: Chances) -> PlanOdds:
    """The odds of a plan whose purchases are on offer; `allowance` gives the points left."""
    rolls = plan_rolls(terms.offers, plan)
    asked = asked_of(terms.offers, plan, rolls=rolls, asking=terms.asking)
    every = falls(asked) if number_of_ways(asked) <= MOST_WAYS else ()
    order, certainty = asking_order(asked, every)
    paid_by = paying_points(terms, plan, allowance=allowance)
    affordable = sum(map(allowance.of, paid_by), Fraction(0))
    available = prod((_all_allowed(plan, roll) for roll in rolls), start=Fraction(1))
    return PlanOdds(
        plan=tuple(plan),
        cost=plan_points(terms.offers, plan),
        allowance=allowance,
        paid_by=paid_by,
        affordable=affordable,
        available=available,
        together=affordable * available,
        rolls=_rolls(terms, plan, rolls=rolls),
        turnouts=turnouts(asked, every, order=order) if every else (),
        asking_order=tuple(plan[place].entry for place in order),
        order_certainty=certainty,
    )


def paying_points(terms: Terms, plan: Sequence[Purchase], *, allowance: Chances) -> tuple[int, ...]:
    """The points that pay for the plan, and of which its groups have a right share."""
    cost = plan_points(terms.offers, plan)
    spent = {limit.group: _group_points(terms, plan, group=limit.group) for limit in terms.groups}
    return tuple(
        points
        for points in allowance.counts
        if cost <= points
        and all(_is_right_share(limit, spent[limit.group], points=points) for limit in terms.groups)
    )


def _is_right_share(limit: GroupLimit, spent: int, *, points: int) -> bool:
    """Whether a group has no too small and no too great a share of the points."""
    most, least = limit.most_spent(points), limit.least_spent(points)
    return (least is None or least <= spent) and (most is None or spent <= most)


def _group_points(terms: Terms, plan: Sequence[Purchase], *, group: str) -> int:
    within = [each for each in plan if terms.offers[each.entry].group == group]
    return plan_points(terms.offers, within)


def _all_allowed(plan: Sequence[Purchase], roll: PlanRoll) -> Fraction:
    wanted = tuple(plan[place].number for place in roll.places)
    return Fraction(roll.allowed.get(wanted, 0), roll.ways)


def _rolls(
    terms: Terms, plan: Sequence[Purchase], *, rolls: Sequence[PlanRoll]
) -> tuple[Roll, ...]:
    """What is allowed of each purchase, in the order of the plan."""
    found: dict[int, Roll] = {}
    for roll in rolls:
        for place in roll.places:
            entry = plan[place].entry
            availability = terms.offers[entry].availability
            found[place] = Roll(
                entry=entry,
                asked=plan[place].number,
                allowed=roll.chances_of(place),
                shared_roll=availability.shared_roll if availability else "",
            )
    return tuple(found[place] for place in sorted(found))
