"""The order that is there soonest; of those the cheapest."""

from paradestate.core.lead_time import arriving_within, lead_times
from paradestate.core.order import OrderProblem
from paradestate.core.order_outcome import NotFound, OrderAnswer, Outcome
from paradestate.solve.clock import clock, never
from paradestate.solve.order import CHEAPEST, USUAL_SECONDS, Wish, cheapest_order
from paradestate.solve.program import Progress, Stop


def soonest_order(
    problem: OrderProblem,
    *,
    wish: Wish = CHEAPEST,
    seconds: float = USUAL_SECONDS,
    stop: Stop = never,
    progress: Progress | None = None,
) -> tuple[OrderProblem, Outcome]:
    """The best order of the packs that are there in the fewest days, and the problem with those.

    Packs whose lead time nobody knows come last.
    """
    until = clock(seconds, stop=stop)
    for days in lead_times(problem):
        asked = arriving_within(problem, days)
        outcome = cheapest_order(asked, wish=wish, seconds=until.left, stop=stop, progress=progress)
        if isinstance(outcome, OrderAnswer | NotFound):
            return asked, outcome
    return problem, cheapest_order(
        problem, wish=wish, seconds=until.left, stop=stop, progress=progress
    )
