"""What may turn up of a plan: every way its rolls can fall, and what is then paid.

Asked one at a time, what needs something refused is never asked; of what is known already, since
another purchase has made their shared roll, only what comes is asked. Declared first, all is asked.
Whoever asks takes the greatest number with a price that is allowed.
"""

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache, partial
from itertools import product
from math import prod

from paradestate.chance.availability import PlanRoll
from paradestate.core.game import Purchase
from paradestate.core.support.entry import Asking
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_points
from paradestate.core.support.remainder import needed_before, remaining
from paradestate.core.support.turnout import Turnout

MOST_WAYS = 10_000
"""Above so many ways for the rolls to fall it isn't worked out what turns up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A plan with its rolls, and what its purchases may need of each other."""

    offers: Mapping[str, Offer]
    plan: Sequence[Purchase]
    rolls: Sequence[PlanRoll]
    asking: Asking
    circles: Mapping[int, frozenset[int]]
    """Place to those that need each other in a circle with it, itself among them."""

    def is_prepaid(self, place: int) -> bool:
        """Whether its points are gone even when it is refused."""
        purchase = self.plan[place]
        return self.offers[purchase.entry].is_prepaid(purchase.number, choice=purchase.choice)

    def shares_roll(self, place: int) -> frozenset[int]:
        """The places of all that the same roll decides."""
        return frozenset(next(roll.places for roll in self.rolls if place in roll.places))


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """What is left of a plan when so much was refused."""

    stays: frozenset[int]
    """Places of all that comes."""
    asked: frozenset[int]
    """Places that are asked for, since nothing that they need was refused before."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fall:
    """One way for all rolls to fall, and what is left then."""

    ways: int
    taken: Mapping[int, int]
    """Place of a purchase that is rolled for to the number taken of it; nought: refused."""
    left: Left


def asked_of(
    offers: Mapping[str, Offer],
    plan: Sequence[Purchase],
    *,
    rolls: Sequence[PlanRoll],
    asking: Asking,
) -> Asked:
    """The plan with its rolls and its circles of needs."""
    before = needed_before(offers, plan)
    circles = {
        place: frozenset({place})
        | {
            other
            for other, bought in enumerate(plan)
            if bought.entry in before[purchase.entry] and purchase.entry in before[bought.entry]
        }
        for place, purchase in enumerate(plan)
    }
    return Asked(offers=offers, plan=plan, rolls=rolls, asking=asking, circles=circles)


def number_of_ways(asked: Asked) -> int:
    """In how many different ways the rolls can fall, counting alike totals once."""
    return prod(len(_ways_taken(asked, roll)) for roll in asked.rolls)


def falls(asked: Asked) -> tuple[Fall, ...]:
    """Every different way for the rolls to fall."""

    @cache
    def stays(gone: frozenset[int]) -> frozenset[int]:
        return remaining(asked.offers, asked.plan, gone=gone)

    left = cache(partial(_left, asked, stays=stays))
    found = []
    for way in product(*(_ways_taken(asked, roll).items() for roll in asked.rolls)):
        taken = {
            place: number
            for roll, (numbers, _) in zip(asked.rolls, way, strict=True)
            for place, number in zip(roll.places, numbers, strict=True)
        }
        gone = frozenset(place for place, number in taken.items() if not number)
        found.append(Fall(ways=prod(ways for _, ways in way), taken=taken, left=left(gone)))
    return tuple(found)


def _ways_taken(asked: Asked, roll: PlanRoll) -> Mapping[tuple[int, ...], int]:
    """Numbers taken to ways of the roll."""
    found: dict[tuple[int, ...], int] = {}
    for numbers, ways in roll.allowed.items():
        taken = tuple(
            asked.offers[asked.plan[place].entry].greatest_number(allowed=number)
            for place, number in zip(roll.places, numbers, strict=True)
        )
        found[taken] = found.get(taken, 0) + ways
    return found


def _left(
    asked: Asked, gone: frozenset[int], *, stays: Callable[[frozenset[int]], frozenset[int]]
) -> Left:
    rolled = frozenset(places_rolled_for(asked))
    comes = stays(gone)
    if asked.asking is Asking.ALL_DECLARED_FIRST:
        return Left(stays=comes, asked=rolled)
    may_be_asked = {
        place for place in rolled if place in comes or place in stays(gone - asked.circles[place])
    }
    return Left(stays=comes, asked=frozenset(may_be_asked))


def points_lost(asked: Asked, fall: Fall, *, order: Sequence[int]) -> int:
    """Points paid for nothing where entries lose what was asked, in this order of asking."""
    losing = [place for place in order if asked.is_prepaid(place)]
    if not losing:
        return 0
    paid = []
    for place in losing:
        if place in fall.left.asked:
            known = _is_known(asked, fall, place=place, before=order[: order.index(place)])
            number = fall.taken[place] if known else asked.plan[place].number
            paid.extend([replace(asked.plan[place], number=number)] if number else [])
    come = [_taken(asked, fall, place=place) for place in losing if place in fall.left.stays]
    return plan_points(asked.offers, paid) - plan_points(asked.offers, come)


def _is_known(asked: Asked, fall: Fall, *, place: int, before: Collection[int]) -> bool:
    """Whether another purchase that was asked before has made its roll."""
    if asked.asking is Asking.ALL_DECLARED_FIRST:
        return False
    mates = asked.shares_roll(place) - asked.circles[place]
    return any(mate in fall.left.asked for mate in mates.intersection(before))


def _taken(asked: Asked, fall: Fall, *, place: int) -> Purchase:
    purchase = asked.plan[place]
    number = fall.taken.get(place, purchase.number)
    return purchase if number == purchase.number else replace(purchase, number=number)


def turnouts(asked: Asked, every: Sequence[Fall], *, order: Sequence[int]) -> tuple[Turnout, ...]:
    """What turns up with its chance, likeliest first; of equal ones the fuller first."""
    cost = plan_points(asked.offers, asked.plan)
    found: dict[tuple[tuple[Purchase, ...], int, int], int] = {}
    for fall in every:
        come = tuple(_taken(asked, fall, place=place) for place in sorted(fall.left.stays))
        lost = points_lost(asked, fall, order=order)
        free = cost - plan_points(asked.offers, come) - lost
        found[come, free, lost] = found.get((come, free, lost), 0) + fall.ways
    ways = sum(found.values())
    return tuple(
        Turnout(chance=Fraction(n, ways), purchases=come, points_free=free, points_lost=lost)
        for (come, free, lost), n in sorted(found.items(), key=_likeliest_first)
    )


def _likeliest_first(
    item: tuple[tuple[tuple[Purchase, ...], int, int], int],
) -> tuple[int, int, int]:
    (_, free, lost), ways = item
    return -ways, free + lost, lost


def mean_lost(asked: Asked, every: Sequence[Fall], *, order: Sequence[int]) -> Fraction:
    """The mean of the points lost in this order of asking."""
    ways = sum(fall.ways for fall in every)
    lost = sum(fall.ways * points_lost(asked, fall, order=order) for fall in every)
    return Fraction(lost, ways)


def places_rolled_for(asked: Asked) -> Iterator[int]:
    """The places of all purchases that are rolled for, in the order of the plan."""
    return iter(sorted(place for roll in asked.rolls for place in roll.places))
