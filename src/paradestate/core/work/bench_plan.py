"""Money and bench together: when each parcel is bought, and when each milestone can be played.

orders, ladder -> tasks -> best sequence -> months, days of milestones, idle days
"""

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from paradestate.core.months import Spread, spread_in
from paradestate.core.parcel import Parcel
from paradestate.core.savings import Savings
from paradestate.core.work.awaited_work import tasks
from paradestate.core.work.bench_time import BenchTime
from paradestate.core.work.course import Course, Idle
from paradestate.core.work.habit import later
from paradestate.core.work.ladder import Ladder
from paradestate.core.work.purchase_sequence import MOST_WEIGHED, arrivals_of, best_sequence


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderedParcel:
    """A parcel of the order for some milestones."""

    parcel: Parcel
    milestones: tuple[str, ...]
    figures: Mapping[str, int]
    """Kind to figures that it brings."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Terms:
    """What a plan keeps to."""

    savings: Savings
    time: BenchTime
    set_up: Fraction = Fraction(0)
    """Minutes for each batch."""
    most: int = MOST_WEIGHED
    """Ways to have the parcels come that are weighed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Playable:
    """When a milestone can be played."""

    name: str
    minutes: Fraction
    """Of work in the order of the ladder, with all that stands before it."""
    day: datetime.date
    awaits: tuple[str, ...]
    """The parcels whose coming decides the day; none where the work does."""
    if_paid: datetime.date
    """The day if everything were bought at the beginning."""
    buy_by: datetime.date | None
    """Where that is sooner: the last day on which to buy all that it needs and keep it."""
    needs: tuple[str, ...]
    """All parcels that it waits for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchPlan:
    """What to buy in which month, and what comes of it."""

    ordered: tuple[OrderedParcel, ...]
    """In the order in which they are bought."""
    terms: Terms
    spread: Spread
    playable: tuple[Playable, ...]
    """First things first."""
    idle: tuple[Idle, ...]
    """Its parcels are numbered as in `ordered`."""
    waiting: Fraction
    """The sum of weight times days, as small as can be."""
    least: Fraction
    """No sequence has less."""
    ends: Fraction
    """Minutes until all is done, idle ones included."""

    @property
    def total(self) -> int:
        """What all parcels cost."""
        return self.spread.total

    @property
    def is_proved(self) -> bool:
        """Whether no sequence of purchases has less waiting."""
        return self.waiting == self.least

    def month_of(self, name: str) -> int:
        """The month in which a parcel is bought."""
        return next(each.month for each in self.spread.months if name in each.orders)

    def bought(self, name: str) -> datetime.date:
        """The day on which a parcel is bought."""
        return self.terms.savings.day(self.month_of(name))


def best_plan(ladder: Ladder, orders: Sequence[OrderedParcel], *, terms: Terms) -> BenchPlan:
    """The plan with the least weighted waiting for these parcels; their names all differ.

    Stands are given figures from the parcels in the order in which they are named; then again in
    the order in which they came, as long as that makes it better.
    """
    preferred = tuple(range(len(orders)))
    best = _plan(ladder, orders, terms=terms, preferred=preferred)
    for _ in orders:
        preferred = best[1]
        better = _plan(ladder, orders, terms=terms, preferred=preferred)
        if _judged(better[0]) >= _judged(best[0]):
            break
        best = better
    return best[0]


def _judged(plan: BenchPlan) -> tuple[Fraction, Fraction]:
    return plan.waiting, plan.ends


def _plan(
    ladder: Ladder, orders: Sequence[OrderedParcel], *, terms: Terms, preferred: Sequence[int]
) -> tuple[BenchPlan, tuple[int, ...]]:
    """The best plan where figures are taken from parcels in that order, and its own order."""
    course = Course(
        tasks(
            ladder,
            parcels=[each.figures for each in orders],
            preferred=preferred,
            set_up=terms.set_up,
        ),
        weights=[each.milestone.weight for each in ladder.to_reach],
        time=terms.time,
    )
    parcels = [each.parcel for each in orders]
    found = best_sequence(parcels, course=course, savings=terms.savings, most=terms.most)
    days = arrivals_of(parcels, found.months, savings=terms.savings)
    sequence = [parcels[each].planned(terms.savings) for each in found.sequence]
    savings = terms.savings
    plan = BenchPlan(
        ordered=tuple(orders[each] for each in found.sequence),
        terms=terms,
        spread=spread_in(sequence, a_month=savings.a_month, carried=savings.carried),
        playable=_playable(ladder, orders, course=course, terms=terms, days=days),
        idle=tuple(_named(each, found.sequence) for each in course.idle(days)),
        waiting=found.judged.waiting,
        least=found.least,
        ends=found.judged.ends,
    )
    return plan, tuple(sorted(found.sequence, key=lambda each: days[each]))


def _named(idle: Idle, sequence: Sequence[int]) -> Idle:
    """The same with its parcels numbered in the order in which they are bought."""
    return replace(idle, awaits=frozenset(sequence.index(number) for number in idle.awaits))


def _playable(
    ladder: Ladder,
    orders: Sequence[OrderedParcel],
    *,
    course: Course,
    terms: Terms,
    days: Sequence[datetime.date],
) -> tuple[Playable, ...]:
    parcels = [each.parcel for each in orders]
    at_once = arrivals_of(parcels, [1] * len(parcels), savings=terms.savings)
    sequence = course.sequence(at_once)
    sooner = course.finishes(at_once, sequence=sequence)
    last = _LastDay(course, parcels, at_once=at_once, sequence=sequence)
    found = [
        Playable(
            name=each.milestone.name,
            minutes=each.ends,
            day=finish.day,
            awaits=tuple(parcels[number].name for number in sorted(finish.awaits)),
            if_paid=sooner[place].day,
            buy_by=last.day(place, begins=terms.savings.begins)
            if finish.day > sooner[place].day
            else None,
            needs=tuple(parcels[number].name for number in sorted(course.needs[place])),
        )
        for place, (each, finish) in enumerate(
            zip(ladder.to_reach, course.finishes(days), strict=True)
        )
    ]
    return tuple(sorted(found, key=lambda each: each.day))


class _LastDay:
    """Until when what a milestone needs may be bought, if all else is bought at the beginning."""

    def __init__(
        self,
        course: Course,
        parcels: Sequence[Parcel],
        *,
        at_once: Sequence[datetime.date],
        sequence: Sequence[int],
    ) -> None:
        self._course = course
        self._parcels = parcels
        self._at_once = at_once
        self._sequence = sequence

    def day(self, milestone: int, *, begins: datetime.date) -> datetime.date:
        """The last day on which the milestone is as soon as if all were bought at once."""
        kept = self._finish(milestone, bought=begins)
        soonest, latest = 0, (kept - begins).days
        while soonest < latest:
            middle = -(-(soonest + latest) // 2)
            if self._finish(milestone, bought=later(begins, middle)) > kept:
                latest = middle - 1
            else:
                soonest = middle
        return later(begins, soonest)

    def _finish(self, milestone: int, *, bought: datetime.date) -> datetime.date:
        needs = self._course.needs[milestone]
        arrivals = [
            (parcel.arrival(bought) or bought) if number in needs else self._at_once[number]
            for number, parcel in enumerate(self._parcels)
        ]
        return self._course.finishes(arrivals, sequence=self._sequence)[milestone].day
