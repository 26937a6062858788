"""The best set to name where all who need a roll are named before the first is rolled.

The points of all that is named are set aside at once; refunds that the dice may refuse don't help.
Then everything is rolled, then one takes of what is allowed what is best, and then sure troops are
bought with what is left. What is named must be able to stand together, beside sure troops.

For all sets at once: the best when exactly so much is held, then the best when at most so much is
allowed, then, roll by roll, the mean over what the roll allows of what was named.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import product
from math import prod

import numpy as np

from paradestate.chance.fallback.backward import greatest_worth
from paradestate.chance.fallback.completion import (
    Completions,
    HeldAtEnd,
    Numbers,
    completions_of,
    never,
    number_kind,
)
from paradestate.chance.fallback.condition import holds
from paradestate.chance.fallback.opinion import Opinion, as_said
from paradestate.chance.fallback.prospect import Prospect
from paradestate.chance.fallback.rolled import EntryRoll, Option, Rolled
from paradestate.chance.fallback.rules import rules_of
from paradestate.core.game import Purchase

MOST_SETS = 40_000
"""Sets that may be allowed and are still compared."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Grant:
    """What may be allowed of one entry: an option or nothing, and whether it is paid already."""

    option: Option | None = None
    is_prepaid: bool = False

    @property
    def price(self) -> int:
        """Points that taking it costs."""
        return 0 if self.option is None or self.is_prepaid else self.option.price


NOTHING = Grant()


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """A set that may be named."""

    places: tuple[int, ...]
    """For each rolled entry the grant that is named."""
    purchases: tuple[Purchase, ...]
    points: int
    """Of all of it, if all is allowed and taken."""
    set_aside: int
    """Points that have to be there when it is named."""
    prepaid: int
    """Points that are gone for it, whatever is allowed."""

    @property
    def rank(self) -> tuple[object, ...]:
        """Smaller is preferred among equals: fewer points, fewer entries, the first of the file."""
        return (self.points, len(self.purchases), [not place for place in self.places], self.places)


@dataclass(frozen=True, slots=True, kw_only=True)
class Declaration:
    """All sets that may be named in one game, with the mean worth of each."""

    prospect: Prospect
    completions: Completions
    opinion: Opinion
    grants: tuple[tuple[Grant, ...], ...]
    """For each rolled entry what may be allowed of it; nothing first."""
    exactly: Numbers
    """The worth of holding exactly so much, a place for each grant of each entry, by points."""
    at_most: Numbers
    """And when so much is allowed and less may be taken."""
    means: Numbers
    """And when so much was named, before the rolls."""
    sets: tuple[Named, ...]
    """All that might be named, if the points are there."""
    lowest: int
    """Stands in the tables for what can't be."""

    @property
    def ways(self) -> int:
        """The ways of all rolls together, by which means are scaled."""
        return prod(roll.ways for roll in self.prospect.rolls)

    def named(self, points: int) -> list[tuple[int, Named]]:
        """The sets that may be named with so many points, with their scaled means, best first."""
        found = [
            (int(self.means[each.places][points - each.prepaid]), each)
            for each in self.sets
            if each.set_aside <= points
            and int(self.exactly[each.places][points - each.prepaid]) > self.lowest // 2
        ]
        return sorted(found, key=lambda pair: (-pair[0], *pair[1].rank))

    def grant_allowed(self, index: int, *, named: int, allowed: int) -> int:
        """The place of what is granted when so many are allowed of what was named."""
        grant = self.grants[index][named]
        if grant.option is None or not allowed:
            return 0
        number = min(allowed, grant.option.purchase.number)
        return next(
            place
            for place, other in enumerate(self.grants[index])
            if other.option is not None
            and other.option.purchase.number == number
            and other.option.purchase.choice == grant.option.purchase.choice
            and other.is_prepaid == grant.is_prepaid
        )

    def held(self, places: Sequence[int]) -> HeldAtEnd | None:
        """What matters at the end of a force that holds so much; None where it can't be."""
        return _held(self.completions, self.grants, places=places)


def declaration_of(prospect: Prospect) -> Declaration | None:
    """All sets of a prospect; None where more than `MOST_SETS` may be allowed."""
    prospect = replace(prospect, early={})
    completions = completions_of(rules_of(prospect), judge_rolled=True)
    grants = tuple(tuple(_grants(rolled)) for rolled in prospect.rolled)
    if prod(map(len, grants)) > MOST_SETS:
        return None
    opinion = as_said(prospect.offers.values())
    ways = prod(roll.ways for roll in prospect.rolls)
    bound = greatest_worth(completions, [opinion]) * ways
    exactly = _exactly(prospect, grants, completions=completions, opinion=opinion, bound=bound)
    at_most = exactly
    for index, each in enumerate(grants):
        at_most = _with_less(at_most, each, axis=index)
    declared = Declaration(
        prospect=prospect,
        completions=completions,
        opinion=opinion,
        grants=grants,
        exactly=exactly,
        at_most=at_most,
        means=at_most,
        sets=tuple(_sets(prospect, grants)),
        lowest=never(bound),
    )
    means = at_most
    for roll in prospect.rolls:
        means = _rolled(means, roll, declared=declared)
    return replace(declared, means=means)


def _sets(prospect: Prospect, grants: tuple[tuple[Grant, ...], ...]) -> Iterator[Named]:
    """Every set of options, each as it is when it is named."""
    ways = [
        [
            (place, grant)
            for place, grant in enumerate(each)
            if grant.option is None or grant.is_prepaid == rolled.is_prepaid(grant.option)
        ]
        for rolled, each in zip(prospect.rolled, grants, strict=True)
    ]
    for pairs in product(*ways):
        named = [(grant, grant.option) for _, grant in pairs if grant.option is not None]
        yield Named(
            places=tuple(place for place, _ in pairs),
            purchases=tuple(option.purchase for _, option in named),
            points=sum(option.price for _, option in named),
            set_aside=sum(max(0, option.price) for _, option in named),
            prepaid=sum(option.price for grant, option in named if grant.is_prepaid),
        )


def _grants(rolled: Rolled) -> Iterator[Grant]:
    """Nothing, then every option as it is named, and as less may be allowed of another."""
    yield NOTHING
    kinds = {rolled.is_prepaid(option) for option in rolled.options}
    for is_prepaid in sorted(kinds):
        for option in rolled.options:
            yield Grant(option=option, is_prepaid=is_prepaid)


def _exactly(
    prospect: Prospect,
    grants: tuple[tuple[Grant, ...], ...],
    *,
    completions: Completions,
    opinion: Opinion,
    bound: int,
) -> Numbers:
    shape = (*map(len, grants), prospect.top + 1)
    table: Numbers = np.full(shape, never(bound), dtype=number_kind(bound))
    ends: dict[HeldAtEnd, Numbers] = {}
    for places in product(*(range(len(each)) for each in grants)):
        held = _held(completions, grants, places=places)
        if held is None:
            continue
        if held not in ends:
            ends[held] = completions.worths(held, [opinion], bound=bound)[0]
        taken = [each[place] for each, place in zip(grants, places, strict=True)]
        worth = sum(
            opinion.worth_taken(prospect.offers[grant.option.purchase.entry], grant.option.purchase)
            for grant in taken
            if grant.option is not None
        )
        columns = np.arange(prospect.top + 1) - sum(grant.price for grant in taken)
        there = columns >= 0
        ends_there = ends[held][np.minimum(columns[there], prospect.top)]
        there_too = ends_there > never(bound) // 2
        table[places][there] = np.where(there_too, ends_there + worth, never(bound))
    return table


def _held(
    completions: Completions, grants: tuple[tuple[Grant, ...], ...], *, places: Sequence[int]
) -> HeldAtEnd | None:
    prospect = completions.rules.prospect
    options = [
        (index, each[place].option)
        for index, (each, place) in enumerate(zip(grants, places, strict=True))
    ]
    taken = {index: option for index, option in options if option is not None}
    names = {prospect.rolled[index].offer.name for index in taken}
    sure = {offer.name for offer in completions.sure}

    def count(name: str) -> int:
        return 1 if name in names else 0

    for index in taken:
        offer = prospect.rolled[index].offer
        asks = {*offer.needs, *offer.needs_any_of, *offer.needs_for_each, *offer.bars}
        if not asks & sure and not holds(offer, count):
            return None
    room = tuple(
        each.most
        - sum(
            option.price if each.in_points else 1
            for option in taken.values()
            if option.purchase.entry in each.members
        )
        for each in prospect.rooms
    )
    plain = completions.rules.plain
    mask = sum(1 << index for index in taken if not plain >> index & 1)
    return HeldAtEnd(mask, (), room)


def _with_less(table: Numbers, grants: Sequence[Grant], *, axis: int) -> Numbers:
    """The best when at most so much of one entry may be taken."""
    found = [
        np.max(
            np.take(table, [at for at, less in enumerate(grants) if _is_within(less, grant)], axis),
            axis=axis,
        )
        for grant in grants
    ]
    return np.stack(found, axis=axis)


def _is_within(less: Grant, grant: Grant) -> bool:
    if less.option is None:
        return True
    return (
        grant.option is not None
        and less.is_prepaid == grant.is_prepaid
        and less.option.purchase.choice == grant.option.purchase.choice
        and less.option.purchase.number <= grant.option.purchase.number
    )


def _rolled(table: Numbers, roll: EntryRoll, *, declared: Declaration) -> Numbers:
    """The sum over the cases of one roll, a place now being what was named of an entry."""
    total: Numbers = table * 0
    for case in roll.cases:
        part = table
        for member, allowed in zip(roll.members, case.allowed, strict=True):
            granted = [
                declared.grant_allowed(member, named=named, allowed=allowed)
                for named in range(len(declared.grants[member]))
            ]
            part = np.take(part, granted, axis=member)
        total = total + part * case.ways
    return total


def best_grants(declared: Declaration, allowed: Sequence[int], *, points: int) -> tuple[int, ...]:
    """What is best taken of what is allowed: of equal worth what costs the fewest points."""
    below: Iterable[tuple[int, ...]] = product(
        *(
            [at for at, less in enumerate(grants) if _is_within(less, grants[place])]
            for grants, place in zip(declared.grants, allowed, strict=True)
        )
    )
    return max(
        below,
        key=lambda places: (
            int(declared.exactly[places][points]),
            -sum(
                grants[place].price for grants, place in zip(declared.grants, places, strict=True)
            ),
        ),
    )
