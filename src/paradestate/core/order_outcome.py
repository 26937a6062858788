"""What became of the search for an order: an order and how sure it is, or why there is none."""

from dataclasses import dataclass
from enum import Enum
from typing import TypeAlias

from paradestate.core.certainty import Exact, Within
from paradestate.core.order import Order, OrderProblem, PackName


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderAnswer:
    """The order that was found, and how sure it is that nothing is cheaper."""

    order: Order
    certainty: Exact | Within
    out_of_time: bool = False
    """Whether the search was stopped by the clock."""
    steps: tuple[Order, ...] = ()
    """Orders that no other beats both in total and in what is left over, cheapest first."""
    all_steps: bool = False
    """Whether those are all the steps there are."""
    next_best: tuple[Order, ...] = ()
    """The orders that come next by total, left over, number of packs and names."""
    all_next_best: bool = False
    """Whether no order is missing among those, and there are as many as were asked for or exist."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NobodySells:
    """Wanted kinds that no pack holds."""

    kinds: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MostOf:
    """The limit that so many of a pack can be had."""

    pack: PackName
    most: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LeastOrder:
    """The limit that a source sends nothing below some value of goods."""

    source: str
    least: int


Limit: TypeAlias = MostOf | LeastOrder


@dataclass(frozen=True, slots=True, kw_only=True)
class Barred:
    """Limits that together leave no order; without any one of them these bar none."""

    limits: tuple[Limit, ...]


class Why(Enum):
    """Why nothing was found."""

    OUT_OF_TIME = "out of time"
    TOO_GREAT = "too great"
    """A number is too great for the solver to be exact."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NotFound:
    """No order was found, and nothing proves that there is none."""

    why: Why


Outcome: TypeAlias = OrderAnswer | NobodySells | Barred | NotFound


def unsold(problem: OrderProblem) -> tuple[str, ...]:
    """Wanted kinds that no pack holds, in order of the want."""
    sold = {kind for _, pack in problem.packs() for kind, number in pack.holds.items() if number}
    return tuple(kind for kind, number in problem.want.items() if number and kind not in sold)


def limits_of(problem: OrderProblem) -> tuple[Limit, ...]:
    """Every limit on what can be bought, in file order."""
    most = [
        MostOf(pack=name, most=pack.most)
        for name, pack in problem.packs()
        if pack.most is not None and pack.holds
    ]
    least = [
        LeastOrder(source=source.name, least=source.least_order)
        for source in problem.sources.values()
        if source.least_order
    ]
    return (*most, *least)
