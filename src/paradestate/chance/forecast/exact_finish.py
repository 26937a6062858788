"""When work is reached in weeks that don't depend on each other, exactly.

What a week brings has few values, each with a number of equally likely ways. What is left to do
after each week follows from what was left before it, week by week: of the work that can begin so
much is done, and what a parcel brings can begin in the week after the one in which it comes. Every
order of arrivals, and every level of the owner's weeks, is gone through by itself.

Work is kept in sevenths of minutes, so that a week with days away is exactly its share.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, product
from math import ceil, lcm, prod

from paradestate.core.certainty import Exact
from paradestate.core.work.forecast_value import (
    CHANCES,
    FAN,
    Ahead,
    FanWeek,
    Goal,
    GoalForecast,
    finish_date,
    first_reached,
)
from paradestate.core.work.habit import DAYS, week_of

Ways = Mapping[int, int]
"""What a week brings, in minutes, to the number of its ways."""

ENOUGH = Fraction(199, 200)
"""No weeks are looked at after those by which work is reached with so great a chance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Work:
    """Work by when it can begin, in sevenths of minutes."""

    at_once: int
    later: Mapping[int, int]
    """Week at the end of which it comes, to work."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """What is left of work after a week, in sevenths of minutes, to its ways out of all."""

    ways: Mapping[int, int]
    whole: int

    @property
    def reached(self) -> Fraction:
        """The chance that nothing is."""
        return Fraction(self.ways.get(0, 0), self.whole)

    def with_chance(self, chance: Fraction) -> int:
        """The least of which no more is left with a chance."""
        work = sorted(self.ways)
        upto = accumulate(self.ways[each] for each in work)
        return next(
            each for each, ways in zip(work, upto, strict=True) if ways >= chance * self.whole
        )


def left_by_week(
    goal: Goal, *, ahead: Ahead, levels: Sequence[Ways], most_weeks: int
) -> Iterator[Left]:
    """What is left of a milestone's work after each week to come, from week 0 on.

    All levels are equally likely, and have as many ways. Ends as soon as `ENOUGH` of all ways have
    reached it, or after so many weeks.
    """
    (of_a_week,) = {sum(level.values()) for level in levels}
    works = tuple(_works(goal, ahead))
    equal = lcm(*(chance.denominator for chance, _ in works))
    courses = [
        (int(chance * equal), _weeks(work, level, ahead=ahead))
        for chance, work in works
        for level in levels
    ]
    whole = equal * len(levels)
    for _ in range(most_weeks + 1):
        ways: dict[int, int] = {}
        for times, weeks in courses:
            for work, number in next(weeks).items():
                ways[work] = ways.get(work, 0) + times * number
        left = Left(ways=ways, whole=whole)
        yield left
        if left.reached >= ENOUGH:
            return
        whole *= of_a_week


def _works(goal: Goal, ahead: Ahead) -> Iterator[tuple[Fraction, _Work]]:
    """Each way that the parcels of a milestone may come, with its chance."""
    own = [parcel for parcel in ahead.parcels if goal.waiting.get(parcel.name)]
    waits = [ceil(goal.waiting[parcel.name] * DAYS) for parcel in own]
    at_once = max(0, ceil(goal.minutes * DAYS) - sum(waits))
    for days in product(*(parcel.arrivals.items() for parcel in own)):
        weeks = [week_of(ahead.begins, day) for day, _ in days]
        later: dict[int, int] = {}
        for week, work in zip(weeks, waits, strict=True):
            later[week] = later.get(week, 0) + work
        here = later.pop(0, 0)
        chance = prod((chance for _, chance in days), start=Fraction(1))
        yield chance, _Work(at_once=at_once + here, later=later)


def _weeks(work: _Work, output: Ways, *, ahead: Ahead) -> Iterator[Mapping[int, int]]:
    """What is left after week 0, 1, 2 ... to its ways, without end."""
    begun = {work.at_once: 1}
    to_come = sum(work.later.values())
    week = 0
    while True:
        yield {left + to_come: number for left, number in begun.items()}
        week += 1
        free = ahead.free_days(week)
        more: dict[int, int] = {}
        for left, number in begun.items():
            for minutes, ways in output.items():
                after = max(0, left - minutes * free)
                more[after] = more.get(after, 0) + number * ways
        arrived = work.later.get(week, 0)
        to_come -= arrived
        begun = {left + arrived: number for left, number in more.items()}


def exact_goal(
    goal: Goal, *, ahead: Ahead, levels: Sequence[Ways], most_weeks: int
) -> GoalForecast:
    """When a milestone is reached; its day is the last of its week."""
    weeks = left_by_week(goal, ahead=ahead, levels=levels, most_weeks=most_weeks)
    reached = [left.reached for left in weeks]
    by_day = (*(each for each in reached[:-1] for _ in range(DAYS)), reached[-1])
    days = [first_reached(by_day, chance) for chance in CHANCES]
    return GoalForecast(
        goal=goal,
        begins=ahead.begins,
        by_day=by_day,
        certainty=Exact(),
        dates=tuple(
            None if day is None else finish_date(day, chance=chance, begins=ahead.begins)
            for chance, day in zip(CHANCES, days, strict=True)
        ),
    )


def exact_fan(
    goal: Goal, *, ahead: Ahead, levels: Sequence[Ways], weeks: int
) -> tuple[FanWeek, ...]:
    """How much of a milestone's work is done by the end of each week to come."""
    found = left_by_week(goal, ahead=ahead, levels=levels, most_weeks=weeks)
    return tuple(
        FanWeek(
            week=week,
            at_least={
                chance: max(Fraction(0), goal.minutes - Fraction(left.with_chance(chance), DAYS))
                for chance in FAN
            },
        )
        for week, left in enumerate(found)
    )
