"""When each milestone is reached: exactly where nothing but the owner's word is known, else drawn.

While no whole week is logged all weeks come from what is assumed, which has few values: then the
answer is exact, unless there is so much work that going through all of it would take long.
"""

from collections import Counter
from collections.abc import Callable, Sequence
from fractions import Fraction
from math import prod

from paradestate.chance.forecast.arrived import with_arrivals
from paradestate.chance.forecast.drawn_finish import (
    Lottery,
    drawn_course,
    drawn_fan,
    drawn_goal,
)
from paradestate.chance.forecast.exact_finish import exact_fan, exact_goal
from paradestate.chance.forecast.weeks_drawn import MOST_WEEKS, from_log
from paradestate.core.work.forecast_value import (
    NINETEEN_IN_TWENTY,
    Ahead,
    Evidence,
    FanWeek,
    Forecast,
    Goal,
    GoalForecast,
    first_reached,
)
from paradestate.core.work.habit import DAYS, Habit

MOST_EXACT_WEEKS = 16
"""Work of so many usual weeks is gone through exactly."""

MOST_ARRIVALS = 8
"""And so many ways that parcels may come."""

MOST_FAN_WEEKS = 104
"""Weeks of which the fan is drawn."""

USUAL_LOTTERY = Lottery()


def forecast(
    goals: Sequence[Goal], *, habit: Habit, ahead: Ahead, lottery: Lottery = USUAL_LOTTERY
) -> Forecast:
    """When each milestone is reached, in the order given, and the fan of the last.

    Raises ValueError where a milestone waits for a parcel that isn't among those to come.
    """
    known = {parcel.name for parcel in ahead.parcels}
    unknown = {name for goal in goals for name in (*goal.waiting, *goal.parcels)} - known
    if unknown:
        raise ValueError(f"nothing is said of the parcels {sorted(unknown)}")
    if _is_small(goals, habit=habit, ahead=ahead):
        found, fan = _exactly(goals, habit=habit, ahead=ahead)
    else:
        found, fan = _by_lot(goals, habit=habit, ahead=ahead, lottery=lottery)
    weights = lottery.weights
    return Forecast(
        begins=ahead.begins,
        goals=tuple(with_arrivals(each, ahead=ahead) for each in found),
        fan=fan,
        evidence=Evidence(
            sessions=habit.sessions,
            weeks=len(habit.weeks),
            left_out=habit.left_out,
            logged=from_log(habit, weights),
            usual=habit.usual,
            block=weights.block,
            prior_weeks=weights.prior_weeks,
        ),
    )


_Found = tuple[tuple[GoalForecast, ...], tuple[FanWeek, ...]]


def _is_small(goals: Sequence[Goal], *, habit: Habit, ahead: Ahead) -> bool:
    if habit.weeks or not habit.usual:
        return False
    most = max((goal.minutes for goal in goals), default=Fraction(0))
    ways = prod(len(parcel.arrivals) for parcel in ahead.parcels)
    return most <= MOST_EXACT_WEEKS * habit.usual and ways <= MOST_ARRIVALS


def _exactly(goals: Sequence[Goal], *, habit: Habit, ahead: Ahead) -> _Found:
    levels = [Counter(level) for level in habit.assumed]
    found = tuple(
        exact_goal(goal, ahead=ahead, levels=levels, most_weeks=MOST_WEEKS) for goal in goals
    )

    def fan(goal: Goal, weeks: int) -> tuple[FanWeek, ...]:
        return exact_fan(goal, ahead=ahead, levels=levels, weeks=weeks)

    return found, _fan(found, fan)


def _by_lot(goals: Sequence[Goal], *, habit: Habit, ahead: Ahead, lottery: Lottery) -> _Found:
    course = drawn_course(habit, goals, ahead=ahead, lottery=lottery)
    found = tuple(drawn_goal(goal, course, ahead=ahead, lottery=lottery) for goal in goals)

    def fan(goal: Goal, weeks: int) -> tuple[FanWeek, ...]:
        return drawn_fan(goal, course, weeks=weeks)

    return found, _fan(found, fan)


def _fan(
    found: Sequence[GoalForecast], drawn: Callable[[Goal, int], tuple[FanWeek, ...]]
) -> tuple[FanWeek, ...]:
    """The fan of the last milestone, up to the week in which it is nearly surely reached."""
    if not found:
        return ()
    last = found[-1]
    days = first_reached(last.by_day, NINETEEN_IN_TWENTY)
    weeks = MOST_FAN_WEEKS if days is None else min(-(-days // DAYS), MOST_FAN_WEEKS)
    return drawn(last.goal, weeks)
