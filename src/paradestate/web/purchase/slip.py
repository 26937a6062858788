"""A purchase slip for each source of an order, as the page prints it."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.money import money_text
from paradestate.core.number import percent_text
from paradestate.core.order import Order, OrderProblem
from paradestate.core.paper.purchase_slips import SourceSlip, source_slip
from paradestate.core.receipt import Receipt
from paradestate.core.source import Source
from paradestate.core.threshold import Standing, Threshold, standing, thresholds
from paradestate.sheet.svg import Drawing
from paradestate.sheet.threshold_gauge import threshold_gauge


@dataclass(frozen=True, slots=True, kw_only=True)
class ChargeRow:
    """What holds from a value of goods on."""

    goods: str
    carriage: str
    discount: str
    total: str
    """What goods of just that value would cost."""
    reached: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PurchaseSlip:
    """One source's slip, amounts as text in its own currency."""

    said: SourceSlip
    """What stands on paper too."""
    gauge: Drawing | None
    charges: tuple[ChargeRow, ...]
    packs: str
    """Its packs with their numbers, as the page of holdings takes them."""


def slips_of(
    problem: OrderProblem, order: Order, *, today: datetime.date
) -> tuple[PurchaseSlip, ...]:
    """The slips of an order, source by source."""
    return tuple(_slip(problem, order, receipt=receipt, today=today) for receipt in order.receipts)


def _slip(
    problem: OrderProblem, order: Order, *, receipt: Receipt, today: datetime.date
) -> PurchaseSlip:
    source = problem.sources[receipt.source]
    steps, stands = thresholds(source), standing(source, goods=receipt.goods)
    return PurchaseSlip(
        said=source_slip(problem, order, receipt=receipt, today=today),
        gauge=threshold_gauge(stands, steps, currency=receipt.currency),
        charges=tuple(_charges(source, steps, stands=stands)),
        packs=packs_text(receipt),
    )


def _charges(
    source: Source, steps: tuple[Threshold, ...], *, stands: Standing
) -> Iterator[ChargeRow]:
    for step in steps:
        charge = step.charge
        yield ChargeRow(
            goods=money_text(step.at, source.currency),
            carriage=money_text(charge.carriage, source.currency) if charge.carriage else "free",
            discount=percent_text(charge.discount_rate) if charge.discount_rate else "none",
            total=money_text(charge.total, source.currency),
            reached=step.at <= stands.goods,
        )


def packs_text(receipt: Receipt) -> str:
    """The packs of a slip as text: `North/N1=1, North/N2=2`, odd names in quotes."""
    return ", ".join(
        f"{_quoted(f'{receipt.source}/{line.pack}')}={line.number}" for line in receipt.lines
    )


def _quoted(name: str) -> str:
    if not any(letter in name for letter in ",=\"'"):
        return name
    quote = "'" if '"' in name else '"'
    return f"{quote}{name}{quote}"
