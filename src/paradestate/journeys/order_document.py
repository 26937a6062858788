"""An order for programs, whether on a command line or from a page, as a JSON document."""

from paradestate.core.certainty import Within, certainty_word
from paradestate.core.money import Currency, amount_text
from paradestate.core.order import Order
from paradestate.core.receipt import Receipt
from paradestate.journeys.document import stand_in_document
from paradestate.journeys.order import OrderJourney


def order_document(journey: OrderJourney) -> dict[str, object]:
    """The order with the keys that programs rely on; money as decimal strings."""
    answer, problem = journey.answer, journey.problem
    if answer is None or problem is None:
        return {}
    currency = problem.currency
    order, certainty = answer.order, answer.certainty
    return {
        "want": dict(journey.want),
        "total": amount_text(order.total, currency),
        "currency": currency,
        "certainty": certainty_word(certainty),
        "bound": amount_text(certainty.bound, currency) if isinstance(certainty, Within) else None,
        "lines": [
            {
                "source": receipt.source,
                "pack": line.pack,
                "number": line.number,
                "cost": amount_text(line.cost, receipt.currency),
            }
            for receipt in order.receipts
            for line in receipt.lines
        ],
        "sources": [_receipt(receipt, currency) for receipt in order.receipts],
        "left_over": dict(order.left_over),
        "least_left_over": answer.least_left_over,
        "stand_ins": [stand_in_document(each) for each in order.stand_ins],
        "arrival_days": journey.arrival,
        "steps": [_step(step, currency) for step in answer.steps],
        "all_steps": answer.all_steps,
        "next_best": [_step(other, currency) for other in answer.next_best],
        "all_next_best": answer.all_next_best,
    }


def _receipt(receipt: Receipt, currency: Currency) -> dict[str, object]:
    own = receipt.currency
    return {
        "source": receipt.source,
        "currency": own,
        "goods": amount_text(receipt.goods, own),
        "discount": amount_text(receipt.discount, own),
        "carriage": amount_text(receipt.carriage, own),
        "total": amount_text(receipt.total, own),
        "total_exchanged": amount_text(receipt.exchanged, currency),
    }


def _step(order: Order, currency: Currency) -> dict[str, object]:
    return {
        "total": amount_text(order.total, currency),
        "left_over": order.number_left_over,
        "packs": [
            {"source": source, "pack": pack, "number": number}
            for (source, pack), number in order.packs.items()
        ],
    }
