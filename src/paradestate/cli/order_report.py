"""An order printed for people: a purchase slip for each source."""

from collections.abc import Iterator
from pathlib import Path

from rich.console import Console
from rich.text import Text

from paradestate.cli.output import console, titled_table
from paradestate.core.certainty import Exact, Within
from paradestate.core.money import Currency, money_text
from paradestate.core.number import percent_text
from paradestate.core.order import Order, OrderProblem
from paradestate.core.order_outcome import OrderAnswer
from paradestate.core.receipt import Receipt
from paradestate.core.sentence.stand_in import stand_in_sentence
from paradestate.core.sentence.wording import several
from paradestate.journeys.order import OrderJourney


def print_order(journey: OrderJourney, *, folder: Path) -> None:
    """The answer in a sentence, the slips, what is left over, and how sure it is."""
    answer, problem = journey.answer, journey.problem
    if answer is None or problem is None:
        return
    out = console()
    out.print(Text(journey.checked.force.title, style="bold"))
    if not answer.order.packs:
        out.print(f"Nothing is lacking, so there is nothing to order for {folder}.")
        return
    out.print(_first_sentence(answer, problem))
    for receipt in answer.order.receipts:
        out.print()
        _print_slip(out, receipt, problem=problem)
    out.print()
    out.print(f"Total {money_text(answer.order.total, problem.currency)}.")
    for sentence in (
        *_proof(answer, currency=problem.currency),
        _left_over(answer.order),
        *_least_left_over(answer),
        *(stand_in_sentence(each) for each in answer.order.stand_ins),
        *_arrival(journey.arrival),
    ):
        out.print(sentence)
    if len(answer.steps) > 1:
        out.print()
        _print_steps(out, answer, currency=problem.currency)


def _first_sentence(answer: OrderAnswer, problem: OrderProblem) -> str:
    order, wanted = answer.order, problem.number_lacking
    sources = " and ".join(receipt.source for receipt in order.receipts)
    return (
        f"The {wanted} figures wanted cost {money_text(order.total, problem.currency)}: "
        f"{order.number_of_packs} packs from {sources}."
    )


def _print_slip(out: Console, receipt: Receipt, *, problem: OrderProblem) -> None:
    source = problem.sources[receipt.source]
    table = titled_table(f"Purchase slip: {receipt.source}")
    table.add_column("number", justify="right")
    table.add_column("pack")
    table.add_column("holds")
    table.add_column("cost", justify="right")
    for line in receipt.lines:
        pack = source.packs[line.pack]
        holds = ", ".join(several(number, kind) for kind, number in pack.holds.items())
        name = f"{line.pack} {pack.title}".strip()
        table.add_row(str(line.number), name, holds, money_text(line.cost, receipt.currency))
    table.add_row("", "", "goods", money_text(receipt.goods, receipt.currency))
    if receipt.discount:
        rate = percent_text(receipt.discount_rate)
        table.add_row("", "", f"discount {rate}", money_text(-receipt.discount, receipt.currency))
    table.add_row("", "", "carriage", money_text(receipt.carriage, receipt.currency))
    table.add_row("", "", "to pay", money_text(receipt.total, receipt.currency), style="bold")
    if receipt.currency != problem.currency:
        exchanged = money_text(receipt.exchanged, problem.currency)
        table.add_row("", "", f"in {problem.currency}", exchanged)
    out.print(table)


def _proof(answer: OrderAnswer, *, currency: Currency) -> Iterator[str]:
    total = answer.order.total
    match answer.certainty:
        case Exact():
            least = f"Exact: no order below {money_text(total, currency)} meets the want"
            if answer.least_left_over is not None:
                least += f" with at most {answer.order.number_left_over} left over"
            yield f"{least}{_next_best(answer, currency=currency)}."
        case Within(bound=bound):
            above = money_text(total - bound, currency)
            yield f"Within: at most {above} above the least possible."


def _next_best(answer: OrderAnswer, *, currency: Currency) -> str:
    """The totals that come next, as a clause."""
    totals = [money_text(other.total, currency) for other in answer.next_best]
    if not totals:
        return ""
    verb = "is" if len(totals) == 1 else "are"
    asked = "" if answer.all_next_best else ", as far as was found in time"
    return f"; the next best {verb} {', '.join(totals)}{asked}"


def _least_left_over(answer: OrderAnswer) -> Iterator[str]:
    least = answer.least_left_over
    if least is None:
        return
    if answer.order.number_left_over <= least:
        yield "Exact: no order leaves less over."
    else:
        yield f"Within: an order that leaves only {least} over may exist."


def _arrival(days: int | None) -> Iterator[str]:
    if days is not None:
        yield f"All of it can be there {several(days, 'day')} after ordering."


def _left_over(order: Order) -> str:
    if not order.left_over:
        return "Nothing is left over."
    kinds = ", ".join(several(number, kind) for kind, number in order.left_over.items())
    return f"Left over: {order.number_left_over} figures ({kinds})."


def _print_steps(out: Console, answer: OrderAnswer, *, currency: Currency) -> None:
    table = titled_table("Cost against left over")
    table.add_column("total", justify="right")
    table.add_column("left over", justify="right")
    table.add_column("packs")
    for step in answer.steps:
        packs = ", ".join(
            f"{number} x {source} {pack}" for (source, pack), number in step.packs.items()
        )
        table.add_row(money_text(step.total, currency), str(step.number_left_over), packs)
    out.print(table)
    if not answer.all_steps:
        out.print("There may be more such steps: the time for them was up.")
