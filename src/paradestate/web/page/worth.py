"""What the holdings would cost new, and what of them could go; both only when asked for."""

from collections.abc import Iterator

from starlette.responses import Response

from paradestate.core.certainty import Exact
from paradestate.core.money import money_text
from paradestate.core.order_outcome import OrderAnswer
from paradestate.core.receipt import Receipt
from paradestate.core.sentence.wording import counted, listed, several
from paradestate.core.unit_price import UnitPrice
from paradestate.journeys.order import OrderJourney
from paradestate.journeys.replacement import replacement
from paradestate.journeys.sparing import sparing
from paradestate.web.visit import Visit

SECONDS = 20.0
"""How long the cheapest order of everything is looked for."""


def replacement_value(visit: Visit) -> Response:
    """The cheapest order of all that is owned. Raises TooManySearchesError."""
    search = visit.site.searches.begun(
        ("replacement", visit.folder),
        lambda search: replacement(
            visit.folder, today=visit.today, search=search, memory=visit.memory
        ),
        seconds=SECONDS,
        rests_on=visit.counted(),
    )
    search.wait()
    found = search.answer()
    journey = found.journey
    answer = None if journey is None else journey.answer
    return visit.page(
        "replacement.html",
        found=found,
        problem=None if journey is None else journey.problem,
        answer=answer,
        sure="" if journey is None or answer is None else _sureness(journey, answer),
        lines=list(_receipts(answer)),
        words={"money": money_text, "counted": counted, "several": several, "listed": listed},
    )


def _sureness(journey: OrderJourney, answer: OrderAnswer) -> str:
    """How sure the total is."""
    if journey.problem is None or isinstance(answer.certainty, Exact):
        return "exact: no order of all this costs less"
    if answer.certainty.bound <= 0:
        return "the best found in time; nothing is proved of what the least is"
    total, currency = answer.order.total, journey.problem.currency
    above = money_text(total - answer.certainty.bound, currency)
    return f"at most {above} above the least possible"


def _receipts(answer: OrderAnswer | None) -> Iterator[Receipt]:
    if answer is not None:
        yield from answer.order.receipts


def spare(visit: Visit) -> Response:
    """What no force of the collection needs."""
    found = sparing(visit.folder, today=visit.today, memory=visit.memory)
    if found.spare is None:
        return visit.page("stopped.html", title="To spare", found=found.findings)
    return visit.page(
        "spare.html",
        found=found,
        price=_price,
        words={"several": several, "listed": listed},
    )


def _price(price: UnitPrice) -> str:
    """`£8.00 for 12 (South S3)`."""
    money = money_text(price.price, price.currency)
    each = money if price.number == 1 else f"{money} for {price.number}"
    return f"{each} ({price.source} {price.pack})"
