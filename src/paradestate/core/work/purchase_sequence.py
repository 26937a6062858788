"""In which sequence parcels are bought, so that milestones are waited for as little as can be.

Each parcel is bought in the first month in which all that was put aside pays for it and for those
before it; no other plan within what was put aside is better than the sequence of its purchases. The
month of a parcel rests on the set of those before it, and a parcel that comes sooner makes no
milestone later. So sequences are gone through best first, each by what it comes to if every parcel
that is still to be bought were the next, and every set of milestones had the last of its parcels in
the month in which all of them are paid for; of sequences of the same parcels one is dropped where
another buys none of them later.
"""

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from heapq import heappop, heappush

from paradestate.core.months import month_paid
from paradestate.core.parcel import Parcel
from paradestate.core.savings import Savings
from paradestate.core.work.course import Course, Judged

MOST_WEIGHED = 3000
"""Ways to have parcels come that are weighed before the search ends unproven."""

Key = tuple[Fraction, Fraction, int]
"""Waiting; minutes until all is done; months until each parcel is bought, times its figures."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoughtInTurn:
    """The sequence, and how much better one may be."""

    sequence: tuple[int, ...]
    """Parcels, from 0, as they are bought."""
    months: tuple[int, ...]
    """Of each parcel, in the order given."""
    judged: Judged
    least: Fraction
    """No sequence has less waiting."""


def best_sequence(
    parcels: Sequence[Parcel], *, course: Course, savings: Savings, most: int = MOST_WEIGHED
) -> BoughtInTurn:
    """The sequence with the least waiting; then the least idle; then that which buys soonest.

    Of equals that given. With very many parcels the best found in `most` weighings.
    """
    search = _Search(parcels, course=course, savings=savings)
    waiting: list[_Way] = [search.way(())]
    seen: dict[frozenset[int], list[tuple[int, ...]]] = {}
    least: Fraction | None = None
    while True:
        found = heappop(waiting)
        if len(found.sequence) == len(parcels):
            return search.bought(found, least=least)
        if least is None and search.number > most:
            # From here on only the best way on is followed, so this is no more than any other's.
            least = found.key[0]
        if least is not None:
            waiting.clear()
        for following in search.following(found):
            bought = frozenset(following.sequence)
            own = tuple(following.months[each] for each in sorted(bought))
            others = seen.setdefault(bought, [])
            if least is not None or not any(_none_later(other, own) for other in others):
                others.append(own)
                heappush(waiting, following)


def arrivals_of(
    parcels: Sequence[Parcel], months: Sequence[int], *, savings: Savings
) -> tuple[datetime.date, ...]:
    """When parcels come that are bought in these months; unknown lead days count as none."""
    bought = [savings.day(month) for month in months]
    return tuple(parcel.arrival(day) or day for parcel, day in zip(parcels, bought, strict=True))


def _none_later(other: Sequence[int], own: Sequence[int]) -> bool:
    return all(month <= mine for month, mine in zip(other, own, strict=True))


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class _Way:
    """The first parcels of a sequence, and the months of all if each other one were the next."""

    key: Key
    sequence: tuple[int, ...]
    months: tuple[int, ...]


class _Search:
    """What sequences come to."""

    def __init__(self, parcels: Sequence[Parcel], *, course: Course, savings: Savings) -> None:
        self._parcels = parcels
        self._course = course
        self._savings = savings
        self._judged: dict[tuple[tuple[int, ...], frozenset[int]], Judged] = {}
        needs = course.needs
        self._needs = {
            members: frozenset(
                each for number, own in enumerate(needs) if members >> number & 1 for each in own
            )
            for members in course.sets
        }

    @property
    def number(self) -> int:
        """How many ways to have parcels come were weighed."""
        return len(self._judged)

    def following(self, way: _Way) -> Iterator[_Way]:
        """The sequences that go on by one parcel."""
        for each in range(len(self._parcels)):
            if each not in way.sequence:
                yield self.way((*way.sequence, each))

    def way(self, sequence: tuple[int, ...]) -> _Way:
        """What a beginning of a sequence comes to at the best."""
        spent, months = 0, dict[int, int]()
        for each in sequence:
            spent += self._parcels[each].cost
            months[each] = self._month(spent)
        for each, parcel in enumerate(self._parcels):
            months.setdefault(each, self._month(spent + parcel.cost))
        own = tuple(months[each] for each in range(len(self._parcels)))
        judged = self._judge(own, bought=frozenset(sequence), spent=spent)
        waits = sum(
            month * parcel.figures for month, parcel in zip(own, self._parcels, strict=True)
        )
        return _Way(key=(judged.waiting, judged.ends, waits), sequence=sequence, months=own)

    def bought(self, way: _Way, *, least: Fraction | None) -> BoughtInTurn:
        """The answer for a whole sequence; without `least` nothing has less waiting than it."""
        every = frozenset(way.sequence)
        spent = sum(parcel.cost for parcel in self._parcels)
        return BoughtInTurn(
            sequence=way.sequence,
            months=way.months,
            judged=self._judge(way.months, bought=every, spent=spent),
            least=way.key[0] if least is None else least,
        )

    def _judge(self, months: tuple[int, ...], *, bought: frozenset[int], spent: int) -> Judged:
        key = (months, bought)
        if key not in self._judged:
            days = arrivals_of(self._parcels, months, savings=self._savings)
            last = dict(self._last_arrivals(bought, spent=spent))
            self._judged[key] = self._course.judged(days, last=last)
        return self._judged[key]

    def _last_arrivals(
        self, bought: frozenset[int], *, spent: int
    ) -> Iterator[tuple[int, datetime.date]]:
        """The day before which each set of milestones can't have the last of its parcels."""
        for members, needs in self._needs.items():
            left = [self._parcels[each] for each in needs - bought]
            if left:
                paid = self._month(spent + sum(parcel.cost for parcel in left))
                quickest = min(left, key=lambda parcel: parcel.lead_days or 0)
                bought_on = self._savings.day(paid)
                yield members, quickest.arrival(bought_on) or bought_on

    def _month(self, spent: int) -> int:
        return month_paid(spent, a_month=self._savings.a_month, carried=self._savings.carried)
