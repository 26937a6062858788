"""Purchase slips: one for each source of an order, with a box to tick for each sort of pack."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.certainty import Exact, Within
from paradestate.core.lead_time import parcel_arrival
from paradestate.core.money import Currency, amount_text, money_text
from paradestate.core.number import percent_text
from paradestate.core.order import Order, OrderProblem
from paradestate.core.paper.paper import Draft
from paradestate.core.receipt import OrderLine, Receipt
from paradestate.core.review.price_age import USUAL_MONTHS, months_between
from paradestate.core.sentence.threshold import at_other_goods, standing_words, threshold_words
from paradestate.core.sentence.wording import counted, end_words, several
from paradestate.core.source import Pack, Source
from paradestate.core.threshold import Threshold, standing, thresholds


@dataclass(frozen=True, slots=True, kw_only=True)
class SlipLine:
    """So many of one pack."""

    pack: str
    title: str
    number: int
    each: str
    cost: str
    holds: str
    multibuy: bool
    """Whether the cost isn't the number times the price."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A value of goods from which the source charges otherwise."""

    words: str
    is_reached: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceSlip:
    """One source's slip, amounts as text in its own currency."""

    source: str
    currency: str
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
    steps: tuple[Step, ...]
    standing: str
    """Where the goods stand to the steps; empty where there are none."""
    sentences: tuple[str, ...]
    """What it would cost at the next step, or just below the last, and when it can be there."""
    age: str
    """How old its prices are; empty where that isn't known."""
    is_old: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PurchaseSlips:
    """All slips of one order."""

    slips: tuple[SourceSlip, ...]
    total: str
    sure: str
    bought: str
    left_over: str
    """What of it serves no want; empty where all serves."""


def purchase_slips(
    problem: OrderProblem,
    order: Order,
    *,
    certainty: Exact | Within,
    today: datetime.date,
) -> Draft[PurchaseSlips]:
    """The slips of an order; none where nothing has to be bought."""
    slips = tuple(source_slip(problem, order, receipt=each, today=today) for each in order.receipts)
    if not slips:
        return Draft(shown=None)
    return Draft(
        shown=PurchaseSlips(
            slips=slips,
            total=money_text(order.total, problem.currency),
            sure=certainty_words(certainty, total=order.total, currency=problem.currency),
            bought=counted({kind: number for kind, number in order.held.items() if number}),
            left_over=counted({kind: each for kind, each in order.left_over.items() if each}),
        )
    )


def certainty_words(certainty: Exact | Within, *, total: int, currency: Currency) -> str:
    """How sure a total is."""
    if isinstance(certainty, Exact):
        return "exact: nothing that does it costs less"
    if certainty.bound <= 0:
        return "the best found in time; nothing is proved of what the least is"
    above = money_text(total - certainty.bound, currency)
    return f"at most {above} above the least possible"


def source_slip(
    problem: OrderProblem, order: Order, *, receipt: Receipt, today: datetime.date
) -> SourceSlip:
    """What a parcel's slip says, on paper and on the page."""
    source, own = problem.sources[receipt.source], receipt.currency
    steps, stands = thresholds(source), standing(source, goods=receipt.goods)
    is_other = own != problem.currency
    age = None if source.noted is None else months_between(source.noted.last, today)
    days = parcel_arrival(problem, order, source=source.name)
    return SourceSlip(
        source=source.name,
        currency=own,
        lines=tuple(_line(line, source.packs[line.pack], currency=own) for line in receipt.lines),
        goods=amount_text(receipt.goods, own),
        discount_words=f"Discount, {percent_text(receipt.discount_rate)}"
        if receipt.discount
        else "",
        discount=amount_text(-receipt.discount, own),
        carriage_words="Carriage" if receipt.carriage else "Carriage, free",
        carriage=amount_text(receipt.carriage, own),
        total=money_text(receipt.total, own),
        exchanged=money_text(receipt.exchanged, problem.currency) if is_other else "",
        steps=tuple(_steps(source, steps, goods=receipt.goods)),
        standing=standing_words(stands, currency=own) if steps else "",
        sentences=(*at_other_goods(stands, currency=own), *there(days)),
        age="" if source.noted is None else f"Prices noted in {end_words(source.noted)}.",
        is_old=age is not None and age >= USUAL_MONTHS,
    )


def _line(line: OrderLine, pack: Pack, *, currency: Currency) -> SlipLine:
    return SlipLine(
        pack=line.pack,
        title=pack.title,
        number=line.number,
        each=amount_text(pack.price, currency),
        cost=amount_text(line.cost, currency),
        holds=counted(pack.holds),
        multibuy=line.cost != pack.price * line.number,
    )


def there(days: int | None) -> Iterator[str]:
    """When a parcel arrives, where that is known."""
    if days is not None:
        yield f"It can be there {several(days, 'day')} after ordering."


def _steps(source: Source, steps: tuple[Threshold, ...], *, goods: int) -> Iterator[Step]:
    for step in steps:
        words = threshold_words(step, currency=source.currency)
        yield Step(words=words, is_reached=step.at <= goods)
