"""All that the page of purchases shows of an order that was found."""

import datetime
from collections.abc import Sequence
from dataclasses import dataclass

from paradestate.core.gap import Gap
from paradestate.core.money import Currency, money_text
from paradestate.core.order_outcome import OrderAnswer
from paradestate.journeys.count import Count
from paradestate.journeys.order import OrderJourney, gaps_of
from paradestate.sheet import cost_steps, want_bars
from paradestate.sheet.svg import Drawing
from paradestate.web.purchase.lead import after_words, proof_words, sureness_word
from paradestate.web.purchase.plan import PlanAnswer, plan_of
from paradestate.web.purchase.question import Question
from paradestate.web.purchase.slip import PurchaseSlip, slips_of
from paradestate.web.purchase.step import (
    Step,
    drawn_others,
    drawn_steps,
    steps_of,
    steps_words,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bars:
    """Want, have and lack in drawings for a wide, a middling and a narrow screen."""

    gaps: Sequence[Gap]
    wide: Drawing | None
    middle: Drawing | None
    phone: Drawing | None


def bars_of(gaps: Sequence[Gap]) -> Bars:
    """The bars of these gaps."""
    return Bars(
        gaps=gaps,
        wide=want_bars.want_bars(gaps, width=want_bars.WIDE),
        middle=want_bars.want_bars(gaps, width=want_bars.MIDDLE),
        phone=want_bars.want_bars(gaps, width=want_bars.PHONE),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderView:
    """An order with the step that is chosen."""

    bars: Bars
    proof: str
    sureness: str
    steps: tuple[Step, ...]
    steps_words: str
    steps_wide: Drawing | None
    steps_phone: Drawing | None
    chosen: Step
    unknown_choice: str
    """A letter that was asked for and is none of the steps'."""
    slips: tuple[PurchaseSlip, ...]
    total: str
    sentences: tuple[str, ...]
    plan: PlanAnswer


def order_view(
    counted: Count, found: OrderJourney, *, question: Question, today: datetime.date
) -> OrderView | None:
    """The view of what was found; None where that is no order, or one of nothing."""
    answer, problem = found.answer, found.problem
    if answer is None or problem is None or not answer.order.packs:
        return None
    steps = steps_of(answer, problem, chosen=question.chosen)
    chosen = next(step for step in steps if step.chosen)
    order, currency = chosen.order, problem.currency
    gaps = gaps_of(counted, request=question.request, problem=problem, bought=order)
    is_known = question.chosen in {"", chosen.letter}
    return OrderView(
        bars=bars_of(gaps),
        proof=proof_words(answer, currency=currency),
        sureness=sureness_word(answer, currency=currency),
        steps=steps,
        steps_words=steps_words(answer, number=len(steps)),
        steps_wide=_steps(steps, answer, currency=currency, width=cost_steps.WIDE),
        steps_phone=_steps(steps, answer, currency=currency, width=cost_steps.PHONE),
        chosen=chosen,
        unknown_choice="" if is_known else question.chosen,
        slips=slips_of(problem, order, today=today),
        total=money_text(order.total, currency),
        sentences=tuple(after_words(answer, chosen, currency=currency)),
        plan=plan_of(found, order, question=question, today=today),
    )


def _steps(
    steps: tuple[Step, ...], answer: OrderAnswer, *, currency: Currency, width: int
) -> Drawing | None:
    if len(steps) == 1 and not drawn_others(answer):
        return None  # a single point shows nothing that the list doesn't say
    return cost_steps.cost_steps(
        drawn_steps(steps), currency=currency, others=drawn_others(answer), width=width
    )
