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
    interrupted: bool = False
    """Whether the search was stopped by hand."""
    least_left_over: int | None = None
    """No order leaves less over; None where that wasn't asked."""
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
    """Wanted kinds that nothing owned or sold can serve."""

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


@dataclass(frozen=True, slots=True, kw_only=True)
class MostParcels:
    """The limit that an order comes from so many sources at the most."""

    most: int


Limit: TypeAlias = MostOf | LeastOrder | MostParcels


@dataclass(frozen=True, slots=True, kw_only=True)
class Barred:
    """Limits that together leave no order; without any one of them these bar none."""

    limits: tuple[Limit, ...]


class Why(Enum):
    """Why nothing was found."""

    OUT_OF_TIME = "out of time"
    INTERRUPTED = "interrupted"
    TOO_GREAT = "too great"
    """A number is too great for the solver to be exact."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NotFound:
    """No order was found, and nothing proves that there is none."""

    why: Why


Outcome: TypeAlias = OrderAnswer | NobodySells | Barred | NotFound


def unsold(problem: OrderProblem) -> tuple[str, ...]:
    """Wanted kinds that nothing owned or sold can serve, in order of the want."""
    sold = {kind for _, pack in problem.packs() for kind, number in pack.holds.items() if number}
    enough = sum(problem.want.values())
    return tuple(problem.covered(dict.fromkeys(sorted(sold), enough)).lacking)


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
    parcels = () if problem.most_parcels is None else (MostParcels(most=problem.most_parcels),)
    return (*most, *least, *parcels)
