"""Plans that are rolled for, and what becomes of them told step by step in the plainest way."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, permutations, product

from paradestate.core.dice import Dice, Throw
from paradestate.core.game import Purchase
from paradestate.core.support.entry import Asking, Availability, Band
from paradestate.core.support.offer import Offer
from paradestate.core.support.remainder import needed_before
from paradestate.core.support.terms import Terms
from tests.support_terms import EVENING, Plan, dice, plain_points

Told = tuple[Plan, int, int]
"""What comes, the points that come free, the points that are lost."""


def rolled(on: int, *, sides: int = 6, partly: int | None = None, shared: str = "") -> Availability:
    """All on `on` or more of one die; below it none, or from `partly` on one."""
    first = Band(least=1, most=(partly or on) - 1, allows=0)
    between = () if partly is None else (Band(least=partly, most=on - 1, allows=1),)
    return Availability(
        roll=dice(1, sides=sides),
        allows=(first, *between, Band(least=on, most=None, allows=None)),
        shared_roll=shared,
    )


def terms_with(*offers: Offer, asking: Asking = Asking.ONE_AT_A_TIME) -> Terms:
    """Terms of an evening in which these are on offer."""
    named = {offer.name: offer for offer in offers}
    return Terms(game=EVENING, offers=named, absent={}, asking=asking)


def bought(**numbers: int) -> Plan:
    """A plan of one purchase of each."""
    return tuple(Purchase(entry=entry, number=number) for entry, number in numbers.items())


def rolls_of(terms: Terms, plan: Plan) -> dict[str, tuple[int, list[int]]]:
    """Name of each roll of the plan to the sides of its one die and what it decides."""
    found: dict[str, tuple[int, list[int]]] = {}
    for place, purchase in enumerate(plan):
        availability = terms.offers[purchase.entry].availability
        if availability is not None:
            name = availability.shared_roll or f"roll {place}"
            sides = _sides(availability.roll)
            found.setdefault(name, (sides, []))[1].append(place)
    return found


def _sides(roll: Dice) -> int:
    (throw,) = [each.term for each in roll.terms if isinstance(each.term, Throw)]
    return throw.sides


def every_throw(terms: Terms, plan: Plan) -> Iterator[Mapping[int, int]]:
    """Every way for all dice to fall, all equally likely: place in the plan to the face."""
    rolls = rolls_of(terms, plan).values()
    for faces in product(*(range(1, sides + 1) for sides, _ in rolls)):
        yield {
            place: face for (_, places), face in zip(rolls, faces, strict=True) for place in places
        }


def got(terms: Terms, purchase: Purchase, *, face: int) -> int:
    """The number that comes for a face: the greatest with a price that is allowed."""
    offer = terms.offers[purchase.entry]
    assert offer.availability is not None
    (band,) = [band for band in offer.availability.allows if band.holds(face)]
    allowed = purchase.number if band.allows is None else min(purchase.number, band.allows)
    return max([number for number in offer.cost if number <= allowed], default=0)


def is_whole(terms: Terms, plan: Sequence[Purchase]) -> bool:
    """Whether every need of the purchases holds among them."""
    names = [purchase.entry for purchase in plan]
    return all(
        all(names.count(other) >= n for other, n in offer.needs.items())
        and (
            not offer.needs_any_of
            or any(names.count(other) >= n for other, n in offer.needs_any_of.items())
        )
        and all(
            names.count(other) >= n * names.count(offer.name)
            for other, n in offer.needs_for_each.items()
        )
        for offer in map(terms.offers.__getitem__, names)
    )


def left_of(terms: Terms, plan: Plan, *, gone: set[int]) -> tuple[int, ...]:
    """The largest part of the plan without what is gone in which all needs hold."""
    there = [place for place in range(len(plan)) if place not in gone]
    return next(
        part
        for size in range(len(there), -1, -1)
        for part in combinations(there, size)
        if is_whole(terms, [plan[place] for place in part])
    )


def prepaid(terms: Terms, purchase: Purchase) -> bool:
    """Whether it is paid though it be refused; what would bring points brings none then."""
    return terms.offers[purchase.entry].loses_points and plain_points(terms, (purchase,)) > 0


def told(terms: Terms, plan: Plan, *, throw: Mapping[int, int], order: Sequence[int]) -> Told:
    """What becomes of a plan: each is asked in turn, if what it needs hasn't been refused."""
    gone: set[int] = set()
    paid: list[Purchase] = []
    come: dict[int, Purchase] = dict(enumerate(plan))
    revealed: set[str] = set()
    declared = terms.asking is Asking.ALL_DECLARED_FIRST
    for place in order:
        purchase = plan[place]
        number = got(terms, purchase, face=throw[place])
        offer = terms.offers[purchase.entry]
        assert offer.availability is not None
        shared = offer.availability.shared_roll
        if declared or place in left_of(terms, plan, gone=gone):
            known = not declared and shared in revealed
            asked = number if known else purchase.number
            paid += [replace(purchase, number=asked)] if asked and prepaid(terms, purchase) else []
            revealed |= {shared} - {""}
            come[place] = replace(purchase, number=number)
            gone |= set() if number else {place}
        else:
            gone.add(place)
    stays = left_of(terms, plan, gone=gone)
    taken = tuple(come[place] for place in stays)
    at_stake = tuple(
        come[place] for place in stays if place in throw and prepaid(terms, plan[place])
    )
    lost = plain_points(terms, tuple(paid)) - plain_points(terms, at_stake)
    return taken, plain_points(terms, plan) - plain_points(terms, taken) - lost, lost


def every_order(terms: Terms, plan: Plan) -> Iterator[tuple[int, ...]]:
    """Every order to ask in which what is needed comes before what needs it."""
    before = needed_before(terms.offers, plan)
    places = [place for _, places in rolls_of(terms, plan).values() for place in places]
    for order in permutations(places):
        if all(
            plan[later].entry not in before[plan[sooner].entry]
            for at, sooner in enumerate(order)
            for later in order[at + 1 :]
        ):
            yield order


def mean_lost(terms: Terms, plan: Plan, *, order: Sequence[int]) -> Fraction:
    """The mean of the points lost in an order, over every throw."""
    lost = [told(terms, plan, throw=throw, order=order)[2] for throw in every_throw(terms, plan)]
    return Fraction(sum(lost), len(lost))
