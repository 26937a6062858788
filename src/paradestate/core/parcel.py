"""A parcel to be bought: what one source sends, when it is needed, and by when to buy it."""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.lead_time import parcel_arrival
from paradestate.core.money import half_up
from paradestate.core.months import PlannedOrder
from paradestate.core.number import summed
from paradestate.core.order import Order, OrderProblem
from paradestate.core.receipt import Receipt, exchange_rate
from paradestate.core.savings import Savings
from paradestate.core.span import DateSpan


@dataclass(frozen=True, slots=True, kw_only=True)
class RateBand:
    """What a parcel comes to when its rate is lower or higher by some share.

    Amounts in minor units of the force's currency.
    """

    least: int
    most: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Parcel:
    """What is bought in one piece; `cost` in minor units of the force's currency."""

    name: str
    cost: int
    source: str = ""
    """Who sends it; empty for an order that was only named."""
    figures: int = 1
    """How many figures wait for it; 1 where that isn't known."""
    lead_days: int | None = None
    """Days until it is there; None where that isn't known."""
    needed: DateSpan | None = None
    """When it is needed: by the last of these days."""
    band: RateBand | None = None

    @property
    def buy_by(self) -> datetime.date | None:
        """The last day to buy it so that it is there in time; unknown lead days count as none."""
        if self.needed is None:
            return None
        ordinal = self.needed.last.toordinal() - (self.lead_days or 0)
        return datetime.date.fromordinal(max(ordinal, datetime.date.min.toordinal()))

    def arrival(self, bought: datetime.date) -> datetime.date | None:
        """The day on which it is there if bought on another; None where nobody knows."""
        if self.lead_days is None:
            return None
        ordinal = bought.toordinal() + self.lead_days
        return datetime.date.fromordinal(min(ordinal, datetime.date.max.toordinal()))

    def planned(self, savings: Savings) -> PlannedOrder:
        """The parcel as an order to spread over months."""
        due = None if self.buy_by is None else savings.month(self.buy_by)
        return PlannedOrder(name=self.name, cost=self.cost, weight=self.figures, due=due)


def parcels_of(
    problem: OrderProblem, order: Order, *, band: Fraction | None = None
) -> tuple[Parcel, ...]:
    """The parcels of an order, one from each source.

    With `band` those in another currency say what they come to at rates so much lower and higher.
    """
    return tuple(
        Parcel(
            name=receipt.source,
            cost=receipt.exchanged,
            source=receipt.source,
            figures=sum(figures_in(problem, receipt).values()),
            lead_days=parcel_arrival(problem, order, source=receipt.source),
            band=None if band is None else _band(problem, receipt, share=band),
        )
        for receipt in order.receipts
    )


def figures_in(problem: OrderProblem, receipt: Receipt) -> Mapping[str, int]:
    """Kind to the figures that one parcel of an order brings."""
    packs = problem.sources[receipt.source].packs
    return summed(
        {kind: each * line.number for kind, each in packs[line.pack].holds.items()}
        for line in receipt.lines
    )


def _band(problem: OrderProblem, receipt: Receipt, *, share: Fraction) -> RateBand | None:
    if receipt.currency == problem.currency:
        return None
    rate = exchange_rate(problem.sources[receipt.source], problem.currency)
    return rate_band(receipt.total, rate=rate, share=share)


def rate_band(amount: int, *, rate: Fraction, share: Fraction) -> RateBand:
    """An amount exchanged at rates lower and higher by a share, each rounded once, half up.

    `rate` is minor units of the other currency for one of the amount's.
    """
    return RateBand(
        least=half_up(amount * rate * (1 - share)),
        most=half_up(amount * rate * (1 + share)),
    )
