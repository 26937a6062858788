"""When a milestone is reached that waits for parcels whose figures take no minutes.

Such a parcel holds no work up, so when it comes has nothing to do with how much is done: the chance
of both by a day is the product of their chances, exactly. It is there by the evening of its day.
"""

from dataclasses import replace
from fractions import Fraction
from math import prod

from paradestate.chance.forecast.drawn_finish import drawn_date
from paradestate.core.certainty import Exact, Sampled
from paradestate.core.work.forecast_value import (
    CHANCES,
    Ahead,
    AwaitedParcel,
    GoalForecast,
    finish_date,
    first_reached,
)


def with_arrivals(found: GoalForecast, *, ahead: Ahead) -> GoalForecast:
    """The forecast of a milestone's work, made one of the milestone.

    What takes no minutes and lacks nothing is reached on the first day to come at the soonest, for
    somebody has to do it; what lacks figures of which nobody knows the day has no date.
    """
    goal = found.goal
    if goal.is_undated:
        none = (None,) * len(CHANCES)
        return replace(found, by_day=(Fraction(0),), certainty=Exact(), dates=none)
    own = [parcel for parcel in ahead.parcels if parcel.name in goal.parcels]
    if goal.is_reached or (goal.minutes and not own):
        return found
    last = max([1, len(found.by_day) - 1, *(_last_day(parcel, ahead) for parcel in own)])
    by_day = (
        Fraction(0),
        *(
            found.by_day[min(day, len(found.by_day) - 1)]
            * prod((_arrived(parcel, day, ahead=ahead) for parcel in own), start=Fraction(1))
            for day in range(1, last + 1)
        ),
    )
    certainty = found.certainty if goal.minutes else Exact()
    if isinstance(certainty, Sampled):
        draws = certainty.draws
        dates = [drawn_date(each, by_day=by_day, ahead=ahead, draws=draws) for each in CHANCES]
    else:
        days = [first_reached(by_day, chance) for chance in CHANCES]
        dates = [
            None if day is None else finish_date(day, chance=chance, begins=ahead.begins)
            for chance, day in zip(CHANCES, days, strict=True)
        ]
    return replace(found, by_day=by_day, certainty=certainty, dates=tuple(dates))


def _last_day(parcel: AwaitedParcel, ahead: Ahead) -> int:
    """The number of days to come by whose end a parcel is there at the latest."""
    return (max(parcel.arrivals) - ahead.begins).days + 1


def _arrived(parcel: AwaitedParcel, day: int, *, ahead: Ahead) -> Fraction:
    """The chance that a parcel is there by the end of so many days to come."""
    chances = (
        chance for at, chance in parcel.arrivals.items() if (at - ahead.begins).days + 1 <= day
    )
    return sum(chances, Fraction(0))
