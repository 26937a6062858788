"""In which month each of several orders is bought, so that no more is spent than was put aside.

Every month so much is put aside, and what isn't spent stays. A plan is a sequence of orders: each
is bought in the first month in which all that was put aside pays for it and for all before it. No
plan that keeps within what was put aside is better than the sequence of its own purchases, so only
sequences are weighed. The month of an order depends on the sum of those up to it and not on their
sequence, so the best way on is worked out once for each set of orders bought (Held and Karp, A
dynamic programming approach to sequencing problems, 1962).

Amounts in minor units of one currency; month 1 is the first. Imports nothing of the project.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate

MOST_ORDERS = 14
"""Orders that are spread at once: each more doubles the sets to be weighed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedOrder:
    """Something to be bought in one piece."""

    name: str
    cost: int
    weight: int = 1
    """How much a month of waiting for it counts, such as the figures that it brings."""
    due: int | None = None
    """The month by whose end it must be bought; nought or less when that is past."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Month:
    """What is bought in a month, and what is left at its end."""

    month: int
    spent: int
    orders: tuple[str, ...]
    balance: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Late:
    """An order that is bought after the month by which it must be."""

    name: str
    due: int
    month: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """Every month from the first to that of the last purchase, and the orders bought too late."""

    months: tuple[Month, ...]
    late: tuple[Late, ...]

    @property
    def total(self) -> int:
        """What is spent in all months."""
        return sum(month.spent for month in self.months)


def month_paid(spent: int, *, a_month: int, carried: int = 0) -> int:
    """The first month in which what was put aside covers so much.

    Raises ValueError where no month does: a stop comes before that.
    """
    lacking = spent - carried
    if lacking <= 0:
        return 1
    if a_month <= 0:
        raise ValueError(f"{a_month} a month and {carried} carried never cover {spent}")
    return -(-lacking // a_month)


def bought_in(
    sequence: Iterable[PlannedOrder], *, a_month: int, carried: int = 0
) -> tuple[int, ...]:
    """The month in which each order of a sequence is bought."""
    sums = accumulate(order.cost for order in sequence)
    return tuple(month_paid(spent, a_month=a_month, carried=carried) for spent in sums)


def burden(sequence: Iterable[PlannedOrder], months: Iterable[int]) -> tuple[int, int]:
    """What a plan is judged by: months late and months waited for, each times the weight."""
    pairs = tuple(zip(sequence, months, strict=True))
    late = sum(order.weight * _months_late(order, month) for order, month in pairs)
    return late, sum(order.weight * month for order, month in pairs)


def _months_late(order: PlannedOrder, month: int) -> int:
    return 0 if order.due is None else max(0, month - order.due)


def spread(orders: Sequence[PlannedOrder], *, a_month: int, carried: int = 0) -> Spread:
    """The plan that is least late, then waits the least, then keeps the sequence given.

    Raises ValueError for more than MOST_ORDERS: a stop comes before that.
    """
    if len(orders) > MOST_ORDERS:
        raise ValueError(f"{len(orders)} orders are more than {MOST_ORDERS}")
    sequence = _best_sequence(orders, a_month=a_month, carried=carried)
    return spread_in(sequence, a_month=a_month, carried=carried)


def spread_in(sequence: Sequence[PlannedOrder], *, a_month: int, carried: int = 0) -> Spread:
    """The plan that buys in the sequence given, each order as soon as it is paid for."""
    months = bought_in(sequence, a_month=a_month, carried=carried)
    pairs = tuple(zip(sequence, months, strict=True))
    return Spread(
        months=tuple(_months(pairs, a_month=a_month, carried=carried)),
        late=tuple(
            Late(name=order.name, due=order.due, month=month)
            for order, month in pairs
            if order.due is not None and month > order.due
        ),
    )


def _best_sequence(
    orders: Sequence[PlannedOrder], *, a_month: int, carried: int
) -> tuple[PlannedOrder, ...]:
    """A set of orders is a whole number, in which order i is the bit of 2 to the power i."""
    every = (1 << len(orders)) - 1
    months = _months_of_sets(orders, a_month=a_month, carried=carried)
    burdens, nexts = [(0, 0)] * (every + 1), [0] * (every + 1)
    for bought in range(every - 1, -1, -1):
        ways = []
        for number, order in enumerate(orders):
            after = bought | 1 << number
            if after != bought:
                late, wait = burdens[after]
                late += order.weight * _months_late(order, months[after])
                ways.append((late, wait + order.weight * months[after], number))
        late, wait, nexts[bought] = min(ways)
        burdens[bought] = (late, wait)
    bought, sequence = 0, []
    while bought != every:
        sequence.append(orders[nexts[bought]])
        bought |= 1 << nexts[bought]
    return tuple(sequence)


def _months_of_sets(orders: Sequence[PlannedOrder], *, a_month: int, carried: int) -> list[int]:
    """For each set of orders the month in which all of it is paid."""
    sums = [0]
    for order in orders:
        sums += [spent + order.cost for spent in sums]
    return [month_paid(spent, a_month=a_month, carried=carried) for spent in sums]


def _months(
    pairs: Sequence[tuple[PlannedOrder, int]], *, a_month: int, carried: int
) -> Iterator[Month]:
    balance = carried
    for number in range(1, max((month for _, month in pairs), default=0) + 1):
        own = [order for order, month in pairs if month == number]
        spent = sum(order.cost for order in own)
        balance += a_month - spent
        names = tuple(order.name for order in own)
        yield Month(month=number, spent=spent, orders=names, balance=balance)


def overspent(
    plan: Spread, costs: Mapping[str, int], *, a_month: int, carried: int = 0
) -> tuple[tuple[int, int], ...]:
    """The months of a plan that aren't paid for at other costs, each with what is lacking then."""
    sums = accumulate(sum(costs[name] for name in month.orders) for month in plan.months)
    lacking = ((month, spent - carried - month * a_month) for month, spent in enumerate(sums, 1))
    return tuple((month, short) for month, short in lacking if short > 0)


def least_a_month(orders: Iterable[PlannedOrder], *, carried: int = 0) -> int:
    """The least to put aside a month so that nothing is later than it has to be."""
    return max((-(-(spent - carried) // due) for spent, due in _calls(orders)), default=0)


def least_carried(orders: Iterable[PlannedOrder], *, a_month: int) -> int:
    """The least to have at the start so that nothing is later than it has to be."""
    return max((spent - a_month * due for spent, due in _calls(orders)), default=0)


def _calls(orders: Iterable[PlannedOrder]) -> Iterator[tuple[int, int]]:
    """How much must be paid by which month: nothing before the first, the nearest due first.

    What is due by a month can all be bought by then exactly where it is paid for by then, and
    buying the nearest due first does so for every month at once.
    """
    due = sorted((max(1, order.due), order.cost) for order in orders if order.due is not None)
    sums = accumulate(cost for _, cost in due)
    yield from ((spent, month) for (month, _), spent in zip(due, sums, strict=True))
