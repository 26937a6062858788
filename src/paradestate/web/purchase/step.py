"""The orders worth choosing between, as the page lists and draws them."""

from collections.abc import Iterator
from dataclasses import dataclass
from string import ascii_uppercase

from paradestate.core.certainty import Exact
from paradestate.core.money import Currency, money_text
from paradestate.core.order import Order, OrderProblem
from paradestate.core.order_outcome import OrderAnswer
from paradestate.core.sentence.wording import capital, several, spelled
from paradestate.sheet.cost_steps import CostStep


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """An order that no other beats both in total and in what is left over."""

    letter: str
    order: Order
    total: str
    packs: tuple[str, ...]
    """For each source what comes from it, in words."""
    words: str
    """Parcels, and what it costs and saves against the one before."""
    chosen: bool


def letter_of(number: int) -> str:
    """The letter of a step, counted from nought: A to Z, then AA to ZZ."""
    first, last = divmod(number, len(ascii_uppercase))
    return (ascii_uppercase[first - 1] if first else "") + ascii_uppercase[last]


def steps_of(answer: OrderAnswer, problem: OrderProblem, *, chosen: str) -> tuple[Step, ...]:
    """The steps of an answer, of which exactly one is chosen: the first where no letter fits."""
    orders = answer.steps or (answer.order,)
    letters = [letter_of(number) for number in range(len(orders))]
    picked = chosen if chosen in letters else letters[0]
    befores: tuple[Order | None, ...] = (None, *orders[:-1])
    return tuple(
        Step(
            letter=letter,
            order=order,
            total=money_text(order.total, problem.currency),
            packs=tuple(_packs(order, problem)),
            words=_words(order, before, currency=problem.currency),
            chosen=letter == picked,
        )
        for letter, order, before in zip(letters, orders, befores, strict=True)
    )


def _packs(order: Order, problem: OrderProblem) -> Iterator[str]:
    for receipt in order.receipts:
        packs = problem.sources[receipt.source].packs
        named = ", ".join(
            f"{line.number} × {packs[line.pack].title or line.pack}" for line in receipt.lines
        )
        yield f"{receipt.source}: {named}."


def _words(order: Order, before: Order | None, *, currency: Currency) -> str:
    parcels = capital(several_spelled(len(order.receipts), "parcel"))
    if before is None:
        return f"{parcels}."
    more = money_text(order.total - before.total, currency)
    fewer = several(before.number_left_over - order.number_left_over, "figure")
    return f"{parcels}; {more} more leaves {fewer} less over."


def several_spelled(number: int, word: str) -> str:
    """A small number of things in words: `two parcels`."""
    return several(number, word).replace(str(number), spelled(number), 1)


def drawn_steps(steps: tuple[Step, ...]) -> tuple[CostStep, ...]:
    """The steps by what counts in the drawing."""
    return tuple(
        CostStep(
            letter=step.letter,
            total=step.order.total,
            left_over=step.order.number_left_over,
            chosen=step.chosen,
        )
        for step in steps
    )


def drawn_others(answer: OrderAnswer) -> tuple[CostStep, ...]:
    """The next best orders that are no step."""
    steps = {tuple(step.packs.items()) for step in answer.steps}
    return tuple(
        CostStep(letter="", total=other.total, left_over=other.number_left_over)
        for other in answer.next_best
        if tuple(other.packs.items()) not in steps
    )


def steps_words(answer: OrderAnswer, *, number: int) -> str:
    """What the list of steps is, and whether it is all."""
    if not isinstance(answer.certainty, Exact):
        return "only of a proved order are others worked out"
    if number == 1 and answer.all_steps:
        return "no order leaves less over, so there is nothing to choose"
    count = f"{spelled(number)} {'is' if number == 1 else 'are'} worth choosing between"
    if number == 1:
        count = "one is known"
    return count if answer.all_steps else f"{count}; there may be more, the time for them was up"
