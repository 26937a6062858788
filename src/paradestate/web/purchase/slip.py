"""A purchase slip for each source of an order, as the page prints it."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.lead_time import parcel_arrival
from paradestate.core.money import amount_text, money_text
from paradestate.core.number import percent_text
from paradestate.core.order import Order, OrderProblem
from paradestate.core.paper.purchase_slips import SlipLine, slip_line, there
from paradestate.core.receipt import Receipt
from paradestate.core.review.price_age import USUAL_MONTHS, months_between
from paradestate.core.sentence.threshold import at_other_goods, standing_words
from paradestate.core.sentence.wording import end_words
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

    source: str
    currency: str
    """Its sign or code, for the headings."""
    lines: tuple[SlipLine, ...]
    goods: str
    discount_words: str
    """Empty where nothing is taken off."""
    discount: str
    carriage_words: str
    carriage: str
    total: str
    exchanged: str
    """The total in the force's currency; empty where that is the source's."""
    gauge: Drawing | None
    gauge_words: str
    sentences: tuple[str, ...]
    """What it would cost at the next step, or just below the last, and when it can be there."""
    age: str
    """How old its prices are; empty where that isn't known."""
    is_old: bool
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
    source, own = problem.sources[receipt.source], receipt.currency
    steps, stands = thresholds(source), standing(source, goods=receipt.goods)
    rate = percent_text(receipt.discount_rate)
    is_other = own != problem.currency
    days = parcel_arrival(problem, order, source=source.name)
    age = None if source.noted is None else months_between(source.noted.last, today)
    return PurchaseSlip(
        source=source.name,
        currency=own,
        lines=tuple(
            slip_line(line, source.packs[line.pack], currency=own) for line in receipt.lines
        ),
        goods=amount_text(receipt.goods, own),
        discount_words=f"Discount, {rate}" if receipt.discount else "",
        discount=amount_text(receipt.discount, own),
        carriage_words="Carriage" if receipt.carriage else "Carriage, free",
        carriage=amount_text(receipt.carriage, own),
        total=money_text(receipt.total, own),
        exchanged=money_text(receipt.exchanged, problem.currency) if is_other else "",
        gauge=threshold_gauge(stands, steps, currency=own),
        gauge_words=standing_words(stands, currency=own) if steps else "",
        sentences=(*at_other_goods(stands, currency=own), *there(days)),
        age="" if source.noted is None else f"Prices noted in {end_words(source.noted)}.",
        is_old=age is not None and age >= USUAL_MONTHS,
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
