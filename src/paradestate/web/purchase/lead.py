"""The sentences that head the page of purchases: what is lacking, and how sure the answer is."""

from collections.abc import Iterator, Sequence

from paradestate.core.certainty import Exact, Within
from paradestate.core.gap import Gap
from paradestate.core.money import Currency, money_text
from paradestate.core.order_outcome import OrderAnswer
from paradestate.core.sentence.stand_in import stand_in_sentence
from paradestate.core.sentence.wording import counted, several
from paradestate.web.purchase.step import Step
from paradestate.web.search import State

MOST_KINDS = 6
"""Of more kinds than this only the number is said."""


def lacking_words(gaps: Sequence[Gap]) -> str:
    """What is lacking, by kind: `50 riflemen, 9 mortar crews and 4 officers`."""
    lacking = {gap.kind: gap.lack for gap in gaps if gap.lack > 0}
    if len(lacking) > MOST_KINDS:
        return f"{several(sum(lacking.values()), 'figure')} of {len(lacking)} kinds"
    return counted(lacking)


def proof_words(answer: OrderAnswer, *, currency: Currency) -> str:
    """How sure it is that nothing is cheaper."""
    total = money_text(answer.order.total, currency)
    match answer.certainty:
        case Exact() if answer.least_left_over is not None:
            over = answer.order.number_left_over
            said = f"No order that leaves at most {over} over costs less than {total}; proven"
            return f"{said}. {_least_over(answer, least=answer.least_left_over)}"
        case Exact():
            return f"The cheapest order costs {total}. No order below {total} would do; proven."
        case Within(bound=bound) if bound <= 0:
            return f"The best found costs {total}; nothing is proved of what the least is."
        case Within(bound=bound):
            above = money_text(answer.order.total - bound, currency)
            return (
                f"The best found costs {total}, at most {above} above the least possible; "
                "that it is the least isn't proved."
            )


def _least_over(answer: OrderAnswer, *, least: int) -> str:
    if answer.order.number_left_over <= least:
        return "No order leaves less over; proven."
    return f"An order that leaves only {least} over may exist."


def sureness_word(answer: OrderAnswer, *, currency: Currency) -> str:
    """The word for the box at the head of the page."""
    if isinstance(answer.certainty, Within):
        if answer.certainty.bound <= 0:
            return "not proved"
        return f"within {money_text(answer.order.total - answer.certainty.bound, currency)}"
    return "exact"


def after_words(answer: OrderAnswer, step: Step, *, currency: Currency) -> Iterator[str]:
    """What is said below the steps: what comes next, what is left over, who stands in."""
    others = [money_text(each.total, currency) for each in answer.next_best]
    if others and isinstance(answer.certainty, Exact):
        more = "" if answer.all_next_best else ", as far as was found in time"
        verb = "is" if len(others) == 1 else "are"
        yield f"The next best {verb} {', '.join(others)}{more}."
    over = step.order.left_over
    yield f"Left over: {counted(over)}." if over else "Nothing is left over."
    yield from (stand_in_sentence(each) for each in step.order.stand_ins)


def state_words(state: State) -> str:
    """How far a search has come, in words."""
    if state.currency is None:
        return "Nothing was found yet."
    best, bound = state.best, state.bound
    if best is not None and bound is not None and best <= bound:
        return f"No order is below {money_text(best, state.currency)}; proven."
    found = (
        "Nothing was found yet"
        if best is None
        else f"Best so far {money_text(best, state.currency)}"
    )
    below = "" if bound is None else f", nothing below {money_text(bound, state.currency)}"
    return f"{found}{below}."


def time_words(state: State, *, limit: float) -> str:
    """How long it has been looked for."""
    if state.stopping and not state.ended:
        return "It stops with the best so far."
    best, bound = state.best, state.bound
    if best is not None and bound is not None and best <= bound:
        return "That is proven; other orders beside it are looked for, 10 seconds at most."
    return f"{several(int(state.seconds), 'second')} of at most {limit:g}."
