"""On which day each batch of the ladder is done, with half a chance."""

import datetime
from collections.abc import Iterable, Mapping

from paradestate.core.work.forecast_value import HALF, Goal
from paradestate.journeys.bench import OrderOfWork
from paradestate.journeys.forecast import dates


def days_of_batches(
    order: OrderOfWork, numbers: Iterable[int], *, today: datetime.date
) -> Mapping[int, datetime.date]:
    """Batch to its day, for batches of these numbers; none where nothing is known of weeks."""
    ends = {rung.number: rung.ends for rung in order.ladder.rungs}
    goals = [Goal(name=f"{number}", minutes=ends[number]) for number in numbers]
    found = dates(order.force, order.worked, today=today, goals=goals).forecast
    days: dict[int, datetime.date] = {}
    for each in found.goals if found else ():
        half = next((date for date in each.dates if date and date.chance == HALF), None)
        if half is not None and not each.is_reached:
            days[int(each.goal.name)] = half.day
    return days
