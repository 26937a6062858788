"""Entries that nobody need take, because another gives everything they give.

It costs no more at every number, is at least as available, needs and bars no more, may be taken as
often, and gives all that the file says of it. The owner's worths play no part. What is written
about an entry by hand is beyond a machine: such entries dominate, and are dominated by, nothing.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.chance.dice import dice_chances
from paradestate.core.support.entry import Entry, Position
from paradestate.core.support.offer import Offer
from paradestate.core.support.proof import Dominance
from paradestate.core.support.terms import Terms


@dataclass(frozen=True, slots=True, kw_only=True)
class _Side:
    """One of two entries that are compared."""

    offer: Offer
    entry: Entry


def dominances(terms: Terms, entries: Mapping[str, Entry]) -> Mapping[str, Dominance]:
    """Entry on offer to the first other one that dominates it, one that isn't alike before others.

    `entries`: what the file says of each of them.
    """
    sides = [_Side(offer=offer, entry=entries[name]) for name, offer in terms.offers.items()]
    found = {}
    for side in sides:
        others = sorted(_dominating(terms, side, sides=sides), key=lambda each: each.is_alike)
        if others:
            found[side.offer.name] = others[0]
    return found


def _dominating(terms: Terms, side: _Side, *, sides: list[_Side]) -> Iterator[Dominance]:
    for other in sides:
        if other is not side and _dominates(terms, other, worse=side):
            is_alike = _dominates(terms, side, worse=other)
            yield Dominance(by=other.offer.name, is_alike=is_alike)


def _dominates(terms: Terms, better: _Side, *, worse: _Side) -> bool:
    return (
        _gives_all(better.entry, worse.entry)
        and _costs_no_more(better.offer, worse.offer)
        and _is_as_available(better.offer, worse.offer)
        and _asks_no_more(better.offer, worse.offer)
        and _may_be_taken_as_often(terms, better.offer, worse=worse.offer)
        and _serves_as_well(terms, better, worse=worse)
    )


def _gives_all(better: Entry, worse: Entry) -> bool:
    """Whether all stands and effects of the worse are had with the better, and there are any."""
    gives = worse.each or worse.grants or worse.replaces or worse.improves or worse.opens
    return (
        bool(gives)
        and not better.by_hand
        and not worse.by_hand
        and _holds_all(better.each, worse.each)
        and _holds_all(better.grants, worse.grants)
        and (worse.improves is None or better.improves == worse.improves)
        and better.replaces == worse.replaces
        and (worse.attach is None or better.attach == worse.attach)
        and better.place in {worse.place, Position.EITHER}
        and set(worse.opens) <= {*better.opens}
    )


def _holds_all(better: Mapping[str, int], worse: Mapping[str, int]) -> bool:
    return all(better.get(name, 0) >= number for name, number in worse.items())


def _costs_no_more(better: Offer, worse: Offer) -> bool:
    """At every number and choice, and for every purchase of it."""
    times = max(len(better.repeats_cost_more), len(worse.repeats_cost_more)) + 2
    return (
        set(worse.cost) <= set(better.cost)
        and set(worse.choices) <= set(better.choices)
        and all(
            better.price(number, choice=choice) <= worse.price(number, choice=choice)
            for number in worse.cost
            for choice in worse.choices
        )
        and all(better.surcharge(each) <= worse.surcharge(each) for each in range(times))
    )


def _is_as_available(better: Offer, worse: Offer) -> bool:
    """Of every number that may be asked for each part is at least as likely to come."""
    if better.availability is None:
        return True
    loses = better.loses_points and not (worse.availability is not None and worse.loses_points)
    return not loses and all(
        chance_of_at_least(better, part, asked=number)
        >= chance_of_at_least(worse, part, asked=number)
        for number in worse.cost
        for part in range(1, number + 1)
    )


def chance_of_at_least(offer: Offer, number: int, *, asked: int) -> Fraction:
    """The chance that so many of those asked for, or more, are allowed in one purchase."""
    rolled = offer.availability
    if rolled is None:
        return Fraction(number <= asked)
    totals = dice_chances(rolled.roll)
    ways = sum(
        ways
        for total, ways in totals.counts.items()
        if rolled.allowed(total, asked=asked) >= number
    )
    return Fraction(ways, totals.ways)


def _asks_no_more(better: Offer, worse: Offer) -> bool:
    """Needs and bars; what bars the two from one another is passed over."""
    is_as_easy = not better.needs_any_of or (
        bool(worse.needs_any_of)
        and all(
            name in better.needs_any_of and better.needs_any_of[name] <= number
            for name, number in worse.needs_any_of.items()
        )
    )
    return (
        _holds_all(worse.needs, better.needs)
        and _holds_all(worse.needs_for_each, better.needs_for_each)
        and is_as_easy
        and better.bars - {worse.name} <= worse.bars - {better.name}
    )


def _may_be_taken_as_often(terms: Terms, better: Offer, *, worse: Offer) -> bool:
    """By its own limit; and no limit of a group holds it that doesn't hold the worse."""
    limited = {limit.group for limit in terms.groups}
    as_often = better.most is None or (worse.most is not None and better.most >= worse.most)
    return (
        as_often
        and better.least <= worse.least
        and (better.group == worse.group or not limited & {better.group, worse.group})
    )


def _serves_as_well(terms: Terms, better: _Side, *, worse: _Side) -> bool:
    """Nothing needs the worse, unless the better will do as well."""
    name, other = worse.offer.name, better.offer.name
    for offer in terms.offers.values():
        if name in offer.needs or name in offer.needs_for_each:
            return False
        asked = offer.needs_any_of.get(name)
        if asked is not None and offer.needs_any_of.get(other, asked + 1) > asked:
            return False
    return True
