"""What the dice may allow in a game: sets of takings of each entry, and how likely they are.

There is one roll for each purchase that the points of the game can pay for, whether or not it is
made, and entries that share a roll have one between them. Purchases may be matched with the rolls
as their owner likes, so that some are allowed if the largest number taken is no more than the most
that a roll allows, the second no more than the second most, and so on (to sort both is a best
matching, by an exchange of neighbours).
"""

import random
from bisect import bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate, combinations_with_replacement, product
from math import comb, prod
from typing import TypeAlias

import numpy

from paradestate.chance.dice import dice_chances
from paradestate.chance.force.diagram import Row
from paradestate.chance.force.pattern import Numbers
from paradestate.chance.force.taking import Kind, ValuedTaking
from paradestate.chance.force.weighing import Among, Weighing
from paradestate.core.certainty import NotComputed
from paradestate.core.dice import Dice
from paradestate.core.support.entry import Availability

MOST_LISTED = 20_000
"""Sets of purchases of one entry, or of what its rolls allow, that are listed."""
MOST_OUTCOMES = 2_048
"""Outcomes of all rolls together that are gone through; of more some are drawn by lot."""

Profile: TypeAlias = tuple[int, ...]
"""Numbers taken, or the most that rolls allow, from the greatest down."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """How outcomes are drawn where they are too many to go through."""

    draws: int
    seed: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcomes:
    """What all rolls of a game may allow together."""

    classes: Mapping[str, Sequence[Among]]
    """Entry that is rolled for to the sets of its takings that may be allowed."""
    numbers: Mapping[str, Sequence[frozenset[Profile]]]
    """For each of these sets the numbers of the purchases that come to its takings."""
    chosen: Mapping[str, Numbers]
    """Entry to the place of its set, outcome after outcome."""
    ways: tuple[int, ...]
    """Of each outcome; where they were drawn by lot, how often it was."""
    lot: Lot | None
    """How they were drawn; None where all were gone through."""


def outcomes_of(
    weighed: Weighing, *, within: Mapping[str, Among], lot: Lot
) -> Outcomes | NotComputed:
    """What the rolls of a game may allow, of takings that are `within` what there may be at all.

    Drawn by lot where that is too much. Refused where an entry can be taken in too many ways.
    """
    entries: dict[tuple[Dice, str, str], list[_Rolled]] = {}
    for row in weighed.drawn.rows:
        availability = row.takings.offer.availability
        if availability is None:
            continue
        rolled = _Rolled(row, availability, within=within[row.entry], scale=weighed.scale)
        if rolled.number > MOST_LISTED:
            return NotComputed(
                reason=f"'{row.entry}' is rolled for and can be taken in more than "
                f"{MOST_LISTED:,} ways"
            )
        shared = availability.shared_roll
        entries.setdefault((availability.roll, shared, "" if shared else row.entry), []).append(
            rolled
        )
    allowed = [_allowed(roll, each) for (roll, _, _), each in entries.items()]
    return _together(list(entries.values()), allowed, lot=lot)


class _Rolled:
    """An entry that is rolled for, with the sets of its takings that rolls allow."""

    def __init__(self, row: Row, availability: Availability, *, within: Among, scale: int) -> None:
        self.name = row.entry
        self.availability = availability
        self.allowed: list[frozenset[Profile]] = []
        self.most = max((taking.purchases for taking in row.plain), default=0)
        """Purchases that can be paid for, and so rolls."""
        self._made = max((taking.purchases for taking in within), default=0)
        self._takings = row.takings
        self._known = {taking[:4]: taking for taking in within}
        self._scale = scale
        self._found: dict[Profile, set[ValuedTaking]] = {}

    @property
    def number(self) -> int:
        """How many sets of purchases, and of what rolls allow, there are to be listed."""
        sorts = max(len(self._takings.kinds), len(self.availability.allows))
        return comb(sorts + self.most, self.most)

    def place(self, profile: Profile) -> int:
        """The place among `allowed` of what rolls with such a profile allow."""
        allowed = frozenset(
            numbers for numbers in self._listed() if all(map(int.__le__, numbers, profile))
        )
        if allowed not in self.allowed:
            self.allowed.append(allowed)
        return self.allowed.index(allowed)

    def amongs(self) -> tuple[Among, ...]:
        """For each place the takings that are allowed."""
        listed = self._listed()
        return tuple(
            frozenset().union(*(listed[numbers] for numbers in allowed)) for allowed in self.allowed
        )

    def _listed(self) -> Mapping[Profile, set[ValuedTaking]]:
        """The numbers of purchases to the takings that are made of them."""
        if self._found:
            return self._found
        for times in range(self._made + 1):
            for kinds in combinations_with_replacement(self._takings.kinds, times):
                taking = self._taking(kinds)
                if taking is not None:
                    numbers = tuple(sorted((kind.number for kind in kinds), reverse=True))
                    self._found.setdefault(numbers, set()).add(taking)
        return self._found

    def _taking(self, kinds: Sequence[Kind]) -> ValuedTaking | None:
        """The taking of such purchases; None where there may be none."""
        offer = self._takings.offer
        totals: dict[str, int] = {}
        for kind in kinds:
            totals[kind.choice] = totals.get(kind.choice, 0) + kind.number
        number = sum(totals.values()) if self._takings.numbered else 0
        points = sum(kind.points for kind in kinds) + offer.surcharge(len(kinds))
        return self._known.get((len(kinds), number, points, int(offer.worth(totals) * self._scale)))

    def most_allowed(self, total: int) -> int:
        """The greatest priced number that a total of the roll allows of one purchase."""
        offer = self._takings.offer
        return offer.greatest_number(
            allowed=self.availability.allowed(total, asked=max(offer.cost))
        )


def _allowed(roll: Dice, entries: Sequence[_Rolled]) -> Mapping[tuple[int, ...], int]:
    """For each of the entries of a roll the place of what is allowed, to ways."""
    totals = dice_chances(roll).counts
    shared = bool(entries[0].availability.shared_roll)
    one: dict[tuple[int, ...], int] = {}
    for total, ways in totals.items():
        most = tuple(entry.most_allowed(total) for entry in entries)
        one[most] = one.get(most, 0) + ways
    found: dict[tuple[int, ...], int] = {}
    profiles = one if shared else _profiles(one, rolls=entries[0].most)
    for profile, ways in profiles.items():
        places = tuple(
            entry.place((profile[at],) * entry.most if shared else profile)
            for at, entry in enumerate(entries)
        )
        found[places] = found.get(places, 0) + ways
    return found


def _profiles(one: Mapping[Profile, int], *, rolls: int) -> Mapping[Profile, int]:
    """What so many rolls allow, from the greatest down, to ways."""
    found: Mapping[Profile, int] = {(): 1}
    for _ in range(rolls):
        more: dict[Profile, int] = {}
        for before, number in found.items():
            for roll, ways in one.items():
                profile = tuple(sorted((*before, *roll), reverse=True))
                more[profile] = more.get(profile, 0) + number * ways
        found = more
    return found


def _together(
    entries: Sequence[Sequence[_Rolled]],
    allowed: Sequence[Mapping[tuple[int, ...], int]],
    *,
    lot: Lot,
) -> Outcomes:
    """All rolls together, each with each; or so many draws."""
    is_drawn = prod(len(each) for each in allowed) > MOST_OUTCOMES
    found = dict(_drawn(allowed, lot)) if is_drawn else dict(_every(allowed))
    names = [entry for each in entries for entry in each]
    return Outcomes(
        classes={entry.name: entry.amongs() for entry in names},
        numbers={entry.name: tuple(entry.allowed) for entry in names},
        chosen={
            entry.name: numpy.array([places[at] for places in found], dtype=numpy.int64)
            for at, entry in enumerate(names)
        },
        ways=tuple(found.values()),
        lot=lot if is_drawn else None,
    )


def _every(
    allowed: Sequence[Mapping[tuple[int, ...], int]],
) -> Iterator[tuple[tuple[int, ...], int]]:
    for each in product(*(roll.items() for roll in allowed)):
        yield tuple(at for places, _ in each for at in places), prod(ways for _, ways in each)


def _drawn(
    allowed: Sequence[Mapping[tuple[int, ...], int]], lot: Lot
) -> Mapping[tuple[int, ...], int]:
    draw = random.Random(lot.seed)  # noqa: S311 - not for secrets: a seed gives the same draws
    rolls = [(list(roll), list(accumulate(roll.values()))) for roll in allowed]
    found: dict[tuple[int, ...], int] = {}
    for _ in range(lot.draws):
        each = [places[bisect_right(ends, draw.randrange(ends[-1]))] for places, ends in rolls]
        key = tuple(at for places in each for at in places)
        found[key] = found.get(key, 0) + 1
    return found
