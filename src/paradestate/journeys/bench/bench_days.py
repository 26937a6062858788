"""On which day each batch of the ladder is done, with half a chance."""

import datetime
from collections.abc import Iterable, Mapping, Sequence

from paradestate.core.on_order import OnOrder
from paradestate.core.sentence.forecast import dates_of
from paradestate.core.work.forecast_value import HALF, AwaitedParcel, Goal, GoalForecast
from paradestate.core.work.ladder import Ladder
from paradestate.core.work.to_come import waiting_of
from paradestate.sheet.work_ladder import ladder_steps


def goals_of_batches(
    made: Ladder, parcels: Sequence[AwaitedParcel], *, orders: Sequence[OnOrder]
) -> tuple[Goal, ...]:
    """The batches that have a rung where the ladder is drawn, with all the work up to each."""
    return tuple(
        Goal(
            name=f"{step.last}",
            minutes=step.ends,
            waiting=waiting_of(made.rungs[: step.last], parcels, orders=orders),
        )
        for step in ladder_steps(made)
    )


def goals_of_repairs(
    made: Ladder, parcels: Sequence[AwaitedParcel], *, orders: Sequence[OnOrder]
) -> tuple[Goal, ...]:
    """Repairs by the day on which they are wanted, with all the work up to each."""
    return tuple(
        Goal(
            name=each.milestone.name,
            minutes=each.ends,
            waiting=waiting_of(made.rungs[: each.rung or 0], parcels, orders=orders),
            unfinished=len(each.to_finish),
        )
        for each in made.repairs
    )


def days_of_batches(found: Iterable[GoalForecast]) -> Mapping[int, datetime.date]:
    """Batch to its day, by the forecasts of such goals; none for what takes no work."""
    days: dict[int, datetime.date] = {}
    for each in found:
        if not each.goal.name.isdecimal():  # repairs
            continue
        half = dates_of(each).get(HALF)
        if half is not None:
            days[int(each.goal.name)] = half.day
    return days
