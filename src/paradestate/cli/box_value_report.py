"""What boxes are worth, for people and for programs."""

from paradestate.cli.output import console, titled_table
from paradestate.core.certainty import Exact, Within, certainty_word
from paradestate.core.money import Currency, amount_text, money_text
from paradestate.core.outline import decimal_text
from paradestate.core.sentence.wording import counted
from paradestate.journeys.club.box_values import BoxValue, BoxValues
from paradestate.journeys.document import finding_document

BOUGHT_NEW = (
    "Each bought alone and new, carriage included; the work on it isn't. A value is exact where no "
    "cheaper order exists."
)


def print_values(answer: BoxValues) -> None:
    """A row for each box, and the sum of our own."""
    out = console()
    if not answer.boxes:
        out.print("No box is written down.")
        return
    table = titled_table("Boxes")
    for heading in ("box", "keeper", "holds", "value", "how sure", "insured for"):
        table.add_column(heading)
    for each in answer.boxes:
        table.add_row(*_row(each, currency=answer.currency))
    out.print(table)
    out.print(f"Our own boxes together: {money_text(answer.total, answer.currency)}.")
    out.print(BOUGHT_NEW)


def _row(value: BoxValue, *, currency: Currency) -> tuple[str, ...]:
    box = value.box
    insured = "" if box.insured_for is None else decimal_text(box.insured_for)
    name = box.name if box.is_counted else f"{box.name} (of others)"
    total = "" if value.answer is None else money_text(value.answer.order.total, currency)
    return name, value.keeper, counted(box.holds), total, _how_sure(value, currency), insured


def _how_sure(value: BoxValue, currency: Currency) -> str:
    without = f", without {counted(value.unsold)}" if value.unsold else ""
    if value.answer is None:
        return f"not computed{without}"
    match value.answer.certainty:
        case Exact():
            return f"exact{without}"
        case Within(bound=bound):
            above = value.answer.order.total - bound
            return f"at most {money_text(above, currency)} too high{without}"


def values_json(answer: BoxValues) -> dict[str, object]:
    """The same with the keys that programs rely on."""
    return {
        "boxes": [_box(each, currency=answer.currency) for each in answer.boxes],
        "total": amount_text(answer.total, answer.currency),
        "currency": answer.currency,
        "findings": [finding_document(finding) for finding in answer.checked.findings],
    }


def _box(value: BoxValue, *, currency: Currency) -> dict[str, object]:
    box, found = value.box, value.answer
    return {
        "box": box.name,
        "keeper": value.keeper,
        "counted": box.is_counted,
        "value": None if found is None else amount_text(found.order.total, currency),
        "certainty": "not computed" if found is None else certainty_word(found.certainty),
        "unsold": dict(value.unsold),
        "insured_for": None if box.insured_for is None else decimal_text(box.insured_for),
    }
