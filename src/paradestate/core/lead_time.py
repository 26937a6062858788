"""When an order can be there: the lead times of its packs, in days after ordering."""

from collections.abc import Iterator
from dataclasses import replace

from paradestate.core.order import Order, OrderProblem


def lead_times(problem: OrderProblem) -> tuple[int, ...]:
    """The lead times of all packs, shortest first; packs without one are left out."""
    return tuple(
        sorted({days for _, pack in problem.packs() if (days := pack.lead_days) is not None})
    )


def arriving_within(problem: OrderProblem, days: int) -> OrderProblem:
    """The problem with no other packs than those known to be there in so many days."""
    return replace(
        problem,
        sources={
            name: replace(
                source,
                packs={
                    key: pack
                    for key, pack in source.packs.items()
                    if pack.lead_days is not None and pack.lead_days <= days
                },
            )
            for name, source in problem.sources.items()
        },
    )


def arrival(problem: OrderProblem, order: Order) -> int | None:
    """Days until the last pack of an order is there; None where that of some pack isn't known."""
    days = tuple(_lead_days(problem, order))
    return max((each for each in days if each is not None), default=0) if None not in days else None


def parcel_arrival(problem: OrderProblem, order: Order, *, source: str) -> int | None:
    """Days until the last pack from one source is there; None where that isn't known."""
    own = {name: number for name, number in order.packs.items() if name[0] == source}
    return arrival(problem, replace(order, packs=own))


def _lead_days(problem: OrderProblem, order: Order) -> Iterator[int | None]:
    for source, name in order.packs:
        yield problem.sources[source].packs[name].lead_days
