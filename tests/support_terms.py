"""Small terms of games drawn at random, with their rules said once more in the plainest words.

Beside them every plan that may be made of such terms.
What is clever (the judge, the count of legal forces, the fall-back) is compared with these.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from itertools import combinations_with_replacement, product

from hypothesis import strategies

from paradestate.core.choice import Choice, chosen
from paradestate.core.dice import Dice, Fixed, SignedTerm, Throw
from paradestate.core.establishment import establishment
from paradestate.core.game import Game, Purchase
from paradestate.core.support.entry import Asking, Availability, Band, GroupLimit
from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.core.support.terms import Terms, terms_of
from tests.forces import marenz

NAMES = ("guns", "horse", "tanks", "scouts")
ABSENT = "mules"
"""An entry that some need and none can have."""
GROUPS = ("", "armour")
CHOICES = ("flame", "bridging")

Plan = tuple[Purchase, ...]

ATTACK = "whole-day attack"


def attack() -> Terms:
    """The example of 1943 with 4 companies, in a whole-day attack."""
    force, _ = chosen(marenz(), Choice(game=ATTACK))
    made, _ = establishment(force)
    assert made is not None
    terms, _ = terms_of(force, made, game=ATTACK, grades={})
    assert terms is not None
    return terms


def dice(number: int, *, sides: int, plus: int = 0) -> Dice:
    """So many plain dice and a number: `dice(2, sides=6, plus=18)` is 18 + 2d6."""
    return Dice(
        terms=(
            SignedTerm(term=Fixed(number=plus)),
            SignedTerm(term=Throw(number=number, sides=sides)),
        )
    )


EVENING = Game(name="evening", allowance=dice(1, sides=4, plus=4), posture="attack")


@strategies.composite
def availabilities(draw: strategies.DrawFn, *, sides: int = 4) -> Availability:
    """A roll of one die, its totals cut into bands at random, sometimes shared with others."""
    cuts = draw(strategies.sets(strategies.integers(1, sides - 1), max_size=2))
    bands = []
    first = 1
    for end in (*sorted(cuts), sides):
        allows = draw(strategies.sampled_from((0, 1, 2, None)))
        bands.append(Band(least=first, most=end, allows=allows))
        first = end + 1
    return Availability(
        roll=dice(1, sides=sides),
        allows=tuple(bands),
        shared_roll=draw(strategies.sampled_from(("", "", "convoy"))),
    )


def _with_one_roll_each(offers: Mapping[str, Offer]) -> bool:
    """Whether entries that share a roll agree which roll it is; their bands may differ."""
    rolls: dict[str, Dice] = {}
    for offer in offers.values():
        if offer.availability is not None and offer.availability.shared_roll:
            roll = offer.availability.roll
            if rolls.setdefault(offer.availability.shared_roll, roll) != roll:
                return False
    return True


@strategies.composite
def offers_called(draw: strategies.DrawFn, name: str, *, others: tuple[str, ...]) -> Offer:
    """One offer that may need and bar the others; it is never without end."""
    numbers = draw(strategies.sets(strategies.integers(1, 3), min_size=1, max_size=2))
    cost = {number: draw(strategies.integers(-1, 5)) for number in sorted(numbers)}
    named = draw(strategies.booleans())
    choices = {each: draw(strategies.integers(-1, 1)) for each in CHOICES} if named else {}
    most = draw(strategies.sampled_from((1, 1, 2, 2, None)))
    lowest = min(choices.values(), default=0)
    if most is None and min(points + number * lowest for number, points in cost.items()) <= 0:
        most = 2
    needed = strategies.dictionaries(
        strategies.sampled_from(others), strategies.integers(1, 2), max_size=2
    )
    rarely = strategies.integers(0, 3).map(lambda drawn: drawn == 0)
    worths = strategies.dictionaries(
        strategies.integers(1, 4), strategies.fractions(0, 6, max_denominator=2), max_size=2
    )
    return Offer(
        name=name,
        cost=cost,
        choices=choices or {NO_CHOICE: 0},
        repeats_cost_more=draw(strategies.sampled_from(((), (), (1,), (0, 2)))),
        least=1 if draw(rarely) and draw(rarely) else 0,
        most=most,
        needs=draw(needed) if draw(rarely) else {},
        needs_any_of=draw(needed) if draw(rarely) else {},
        needs_for_each=draw(needed) if draw(rarely) else {},
        group=draw(strategies.sampled_from(GROUPS)),
        availability=draw(availabilities()) if draw(strategies.booleans()) else None,
        loses_points=draw(strategies.booleans()),
        worths={each: draw(worths) for each in (NO_CHOICE, *choices)},
    )


@strategies.composite
def group_limits(draw: strategies.DrawFn, group: str = GROUPS[-1]) -> GroupLimit:
    """A limit of a group, of purchases or of a share of the points, from below or above."""
    shares = strategies.sampled_from((Fraction(1, 3), Fraction(1, 2), Fraction(34, 100)))
    rarely = strategies.integers(0, 3).map(lambda drawn: drawn == 0)
    return GroupLimit(
        group=group,
        least=1 if draw(rarely) else 0,
        most=draw(strategies.none() | strategies.integers(0, 2)),
        least_points=draw(shares) if draw(rarely) else Fraction(0),
        most_points=draw(strategies.none() | shares),
    )


@strategies.composite
def small_terms(draw: strategies.DrawFn, *, most_entries: int = len(NAMES)) -> Terms:
    """Terms of at most four entries: refunds, choices, repeats, conditions, groups, rolls."""
    names = NAMES[: draw(strategies.integers(1, most_entries))]
    offers: dict[str, Offer] = {}
    for name in names:
        others = (*(other for other in names if other != name), ABSENT)
        offers[name] = draw(offers_called(name, others=others))
    for one, other in draw(
        strategies.sets(strategies.tuples(*(strategies.sampled_from(names),) * 2), max_size=1)
    ):
        if one != other:
            offers |= _barring(offers, one, other=other)
    assert _with_one_roll_each(offers)
    return Terms(
        game=EVENING,
        offers=offers,
        absent={ABSENT: "not to be had in 1943"},
        asking=draw(strategies.sampled_from(Asking)),
        groups=tuple(draw(strategies.lists(group_limits(), max_size=1))),
        formation_cost=draw(strategies.integers(0, 2)),
    )


def _barring(offers: Mapping[str, Offer], one: str, *, other: str) -> dict[str, Offer]:
    """The two offers, barring one another."""
    return {
        one: replace(offers[one], bars=offers[one].bars | {other}),
        other: replace(offers[other], bars=offers[other].bars | {one}),
    }


def single_purchases(offer: Offer) -> tuple[Purchase, ...]:
    """Every purchase of an entry that has a price."""
    return tuple(
        Purchase(entry=offer.name, number=number, choice=choice)
        for number, choice in product(offer.cost, offer.choices)
    )


def plans_of(terms: Terms, *, most_purchases: int = 4) -> strategies.SearchStrategy[Plan]:
    """Plans of purchases on offer, legal or not."""
    every = [each for offer in terms.offers.values() for each in single_purchases(offer)]
    return strategies.lists(strategies.sampled_from(every), max_size=most_purchases).map(tuple)


def plain_points(terms: Terms, plan: Plan) -> int:
    """Points of a plan, purchase after purchase."""
    points = 0
    bought: dict[str, int] = {}
    for each in plan:
        offer = terms.offers[each.entry]
        points += offer.cost[each.number] + each.number * offer.choices[each.choice]
        times = bought.get(each.entry, 0)
        if times and offer.repeats_cost_more:
            points += offer.repeats_cost_more[min(times, len(offer.repeats_cost_more)) - 1]
        bought[each.entry] = times + 1
    return points


def plainly_legal(terms: Terms, plan: Plan, *, points: int) -> bool:
    """Whether a plan of purchases on offer keeps every rule, said as plainly as can be."""
    bought = [each.entry for each in plan]
    return (
        (not plan or (points >= 0 and plain_points(terms, plan) <= points))
        and all(_entry_holds(offer, bought) for offer in terms.offers.values())
        and all(_group_holds(terms, limit, plan=plan, points=points) for limit in terms.groups)
    )


def _entry_holds(offer: Offer, bought: list[str]) -> bool:
    times = bought.count(offer.name)
    if times < offer.least or (offer.most is not None and times > offer.most):
        return False
    if times == 0:
        return True
    return (
        all(bought.count(other) >= number for other, number in offer.needs.items())
        and (
            not offer.needs_any_of
            or any(bought.count(other) >= number for other, number in offer.needs_any_of.items())
        )
        and all(
            bought.count(other) >= number * times for other, number in offer.needs_for_each.items()
        )
        and not any(other in bought for other in offer.bars)
    )


def _group_holds(terms: Terms, limit: GroupLimit, *, plan: Plan, points: int) -> bool:
    within = tuple(each for each in plan if terms.offers[each.entry].group == limit.group)
    spent = plain_points(terms, within)
    points = max(0, points)
    return (
        len(within) >= limit.least
        and (limit.most is None or len(within) <= limit.most)
        and (not limit.least_points or spent >= limit.least_points * points)
        and (limit.most_points is None or spent <= limit.most_points * points)
    )


def every_plan(terms: Terms, *, points: int) -> Iterator[Plan]:
    """Every multiset of purchases that could be paid at all with `points`, each once.

    An entry without a limit is taken up to as often as `points` and all refunds of others pay for.
    """
    refunds = sum(_most_refund(offer) for offer in terms.offers.values())
    ways = [tuple(_multisets(offer, points=points + refunds)) for offer in terms.offers.values()]
    for parts in product(*ways):
        plan = tuple(each for part in parts for each in part)
        if not plan or plain_points(terms, plan) <= points:
            yield plan


def _prices(offer: Offer) -> list[int]:
    return [offer.price(each.number, choice=each.choice) for each in single_purchases(offer)]


def _most_refund(offer: Offer) -> int:
    return max(0, -min(_prices(offer))) * (offer.most or 0)


def _multisets(offer: Offer, *, points: int) -> Iterator[Plan]:
    cheapest = min(_prices(offer))
    most = max(0, points) // cheapest if offer.most is None else offer.most
    for times in range(most + 1):
        yield from combinations_with_replacement(single_purchases(offer), times)


def every_legal_plan(terms: Terms, *, points: int) -> Iterator[Plan]:
    """Every legal force of `points`, each once."""
    for plan in every_plan(terms, points=points):
        if plainly_legal(terms, plan, points=points):
            yield plan
