"""When milestones are reached in weeks that are drawn by lot.

The owner is never idle while there is work that can begin. So a milestone is reached as soon as the
minutes done since the arrival of any parcel are those of all its work that came with that parcel or
later, and the minutes done in all are all of its work. A parcel's work begins in the week after the
one in which it comes. The day within a week is the one by which the owner has usually done so large
a part of it; of a week with days away, and where nothing is logged, it is the last.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, isqrt

import numpy
from numpy.typing import NDArray

from paradestate.chance.forecast.weeks_drawn import (
    MOST_WEEKS,
    USUAL_WEIGHTS,
    Minutes,
    WeeksDrawn,
    Weights,
)
from paradestate.core.certainty import Sampled
from paradestate.core.work.forecast_value import (
    CHANCES,
    FAN,
    Ahead,
    FanWeek,
    FinishDate,
    Goal,
    GoalForecast,
    finish_date,
    first_reached,
)
from paradestate.core.work.habit import DAYS, Habit, week_of

DRAWS = 10_000
FIRST_STEP = 26
"""Weeks that are drawn at first; then as many again each time."""

ENOUGH = Fraction(199, 200)
"""No weeks are drawn after those by which so great a part of the draws has reached all."""

NEVER = int(numpy.iinfo(numpy.int64).max)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lottery:
    """How weeks are drawn."""

    draws: int = DRAWS
    seed: int = 1
    weights: Weights = USUAL_WEIGHTS

    @property
    def certainty(self) -> Sampled:
        """How far a chance may be off in 19 of 20 cases: 1.96 standard deviations of a half."""
        thousandths = isqrt(980 * 980 // self.draws) + 1
        return Sampled(plus_or_minus=Fraction(thousandths, 1000), draws=self.draws, seed=self.seed)


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """The weeks to come as they were drawn."""

    sums: Minutes
    """Sevenths of minutes done by the end of each week, from week 0 on."""
    arrivals: Mapping[str, NDArray[numpy.int64]]
    """Parcel to the week in which it comes, for each draw."""
    by_day: NDArray[numpy.int64]
    """Minutes up to each day of the week, of all whole weeks of the log."""
    is_whole: NDArray[numpy.bool_]
    """For each week from 0 on whether the owner is there on all its days."""

    @property
    def weeks(self) -> int:
        """How many were drawn."""
        return len(self.sums) - 1

    @property
    def draws(self) -> int:
        """How many times they were drawn."""
        return int(self.sums.shape[1])

    def done_by(self, weeks: NDArray[numpy.int64]) -> NDArray[numpy.int64]:
        """What is done by the end of one week for each draw."""
        inside = numpy.minimum(weeks, self.weeks)
        return self.sums[inside, numpy.arange(self.draws)]

    def reached(self, minutes: NDArray[numpy.int64]) -> NDArray[numpy.int64]:
        """The first week by whose end so much is done for each draw; beyond all where none is."""
        least = numpy.zeros(self.draws, dtype=numpy.int64)
        most = numpy.full(self.draws, self.weeks + 1, dtype=numpy.int64)
        for _ in range((self.weeks + 1).bit_length()):
            middle = (least + most) // 2
            is_done = (self.done_by(middle) >= minutes) | (middle > self.weeks)
            most = numpy.where(is_done, middle, most)
            least = numpy.where(is_done, least, numpy.minimum(middle + 1, most))
        return most


def drawn_course(habit: Habit, goals: Sequence[Goal], *, ahead: Ahead, lottery: Lottery) -> Course:
    """As many weeks as nearly all draws need to reach all milestones."""
    drawn = WeeksDrawn(habit, draws=lottery.draws, seed=lottery.seed, weights=lottery.weights)
    arrivals = _arrivals(ahead, lottery=lottery)
    days = numpy.cumsum(numpy.array(habit.by_day, dtype=numpy.int64))
    sums = numpy.zeros((1, lottery.draws), dtype=numpy.int64)
    free: list[int] = [DAYS]
    while True:
        upto = min(len(free) + max(FIRST_STEP, len(free) - 1), MOST_WEEKS + 1)
        new = [ahead.free_days(week) for week in range(len(free), upto)]
        free += new
        more = sums[-1] + numpy.cumsum(drawn.more(new), axis=0)
        sums = numpy.concatenate([sums, more])
        course = Course(
            sums=sums,
            arrivals=arrivals,
            by_day=days,
            is_whole=numpy.array(free) == DAYS,
        )
        if habit.is_idle or course.weeks >= MOST_WEEKS or _is_enough(course, goals):
            return course


def _is_enough(course: Course, goals: Sequence[Goal]) -> bool:
    reached = numpy.ones(course.draws, dtype=numpy.bool_)
    for goal in goals:
        reached &= course.sums[-1] >= _threshold(goal, course)
    return bool(reached.mean() >= float(ENOUGH))


def _arrivals(ahead: Ahead, *, lottery: Lottery) -> Mapping[str, NDArray[numpy.int64]]:
    draw = numpy.random.default_rng([lottery.seed, len(ahead.parcels)])
    found = {}
    for parcel in ahead.parcels:
        weeks = numpy.array([week_of(ahead.begins, day) for day in parcel.arrivals])
        chances = numpy.array([float(chance) for chance in parcel.arrivals.values()])
        found[parcel.name] = draw.choice(weeks, size=lottery.draws, p=chances / chances.sum())
    return found


def sevenths(minutes: Fraction) -> int:
    """Minutes in whole sevenths, rounded up."""
    return ceil(minutes * DAYS)


def _threshold(goal: Goal, course: Course) -> NDArray[numpy.int64]:
    """The minutes that must be done in all before a milestone is reached, for each draw."""
    most = numpy.full(course.draws, sevenths(goal.minutes), dtype=numpy.int64)
    for own, since in _waits(goal, course):
        needed = numpy.where(own <= course.weeks, course.done_by(own) + since, NEVER)
        most = numpy.maximum(most, needed)
    return most


def _waits(
    goal: Goal, course: Course
) -> Iterator[tuple[NDArray[numpy.int64], NDArray[numpy.int64]]]:
    """For each parcel the week of its arrival, and what must be done of the work after it.

    That is its own work, and that of the parcels which come in the same week or later.
    """
    waits = {name: sevenths(minutes) for name, minutes in goal.waiting.items() if minutes}
    for name in waits:
        own = course.arrivals[name]
        since = numpy.zeros(course.draws, dtype=numpy.int64)
        for other, minutes in waits.items():
            since += minutes * (course.arrivals[other] >= own)
        yield own, since


def _days(goal: Goal, course: Course) -> NDArray[numpy.int64]:
    """The number of days to come after which a milestone is reached; -1 for never."""
    threshold = _threshold(goal, course)
    week = course.reached(threshold)
    is_reached = week <= course.weeks
    inside = numpy.minimum(week, course.weeks)
    before = course.done_by(numpy.maximum(inside - 1, 0))
    lacking = numpy.where(is_reached, threshold - before, 0)
    in_week = course.done_by(inside) - before
    whole = int(course.by_day[-1])
    day = 1 + (course.by_day[None, :] * in_week[:, None] < (lacking * whole)[:, None]).sum(axis=1)
    day = numpy.where(course.is_whole[inside] & bool(whole), day, DAYS)
    return numpy.where(is_reached, numpy.where(week, DAYS * (inside - 1) + day, 0), -1)


def drawn_goal(goal: Goal, course: Course, *, ahead: Ahead, lottery: Lottery) -> GoalForecast:
    """When a milestone is reached in the weeks that were drawn."""
    days = _days(goal, course)
    numbers = numpy.bincount(days[days >= 0], minlength=1)
    reached = numpy.cumsum(numbers).tolist()
    by_day = tuple(Fraction(number, lottery.draws) for number in reached)
    return GoalForecast(
        goal=goal,
        begins=ahead.begins,
        by_day=by_day,
        certainty=lottery.certainty,
        dates=tuple(
            drawn_date(chance, by_day=by_day, ahead=ahead, draws=lottery.draws)
            for chance in CHANCES
        ),
    )


def drawn_date(
    chance: Fraction, *, by_day: tuple[Fraction, ...], ahead: Ahead, draws: int
) -> FinishDate | None:
    """The day, with those of the ranks 1.96 standard deviations before and after its own."""
    days = first_reached(by_day, chance)
    if days is None:
        return None
    variance = Fraction(196 * 196, 100 * 100) * draws * chance * (1 - chance)
    off = Fraction(isqrt(ceil(variance)) + 1, draws)
    least = first_reached(by_day, chance - off)
    between = (days if least is None else least, first_reached(by_day, chance + off))
    return finish_date(days, chance=chance, begins=ahead.begins, between=between)


def drawn_fan(goal: Goal, course: Course, *, weeks: int) -> tuple[FanWeek, ...]:
    """How much of a milestone's work is done by the end of each week to come."""
    ranks = {chance: course.draws - ceil(chance * course.draws) for chance in FAN}
    waits = tuple(_waits(goal, course))
    fan = []
    for week in range(min(weeks, course.weeks) + 1):
        done = numpy.minimum(course.sums[week], sevenths(goal.minutes))
        for own, since in waits:
            worked = numpy.where(week >= own, course.sums[week] - course.done_by(own), 0)
            done = numpy.minimum(done, sevenths(goal.minutes) - since + worked)
        ordered = numpy.partition(done, sorted(ranks.values()))
        at_least = {
            chance: min(Fraction(int(ordered[rank]), DAYS), goal.minutes)
            for chance, rank in ranks.items()
        }
        fan.append(FanWeek(week=week, at_least=at_least))
    return tuple(fan)
