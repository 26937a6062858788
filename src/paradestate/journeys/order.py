"""What to buy, at the least cost.

folder -> count -> want -> problem -> cheapest order -> alternatives and doubts
"""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.choice import Choice, unknown_choice
from paradestate.core.finding import Finding, in_reading_order
from paradestate.core.force import Force
from paradestate.core.money import Currency
from paradestate.core.order import OrderProblem
from paradestate.core.order_finding import doubts, nothing_found, refusal
from paradestate.core.order_outcome import Barred, NobodySells, NotFound, OrderAnswer
from paradestate.core.source import force_currency
from paradestate.journeys.check import Checked
from paradestate.journeys.count import count
from paradestate.solve.order import cheapest_order
from paradestate.solve.order_alternative import USUAL_SECONDS, with_alternatives


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderJourney:
    """The order, or None with the stops that prevent it."""

    checked: Checked
    want: Mapping[str, int]
    problem: OrderProblem | None = None
    answer: OrderAnswer | None = None


def order(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    want: Mapping[str, int] | None = None,
    sources: Sequence[str] = (),
    seconds: float,
) -> OrderJourney:
    """The cheapest order of what is lacking, or of the want given, within so many seconds."""
    counted = count(folder, today=today, choice=choice)
    read = counted.checked
    if counted.count is None:
        return OrderJourney(checked=read, want={})
    lacking = counted.count.strength.deficiency if want is None else want
    unknown = tuple(_unknown(read.force, lacking, sources=sources))
    if unknown:
        return OrderJourney(checked=_with(read, unknown), want=lacking)
    problem = _problem(read.force, lacking, sources=sources)
    return _solved(read, problem, seconds=seconds)


def _unknown(force: Force, want: Mapping[str, int], *, sources: Sequence[str]) -> Iterator[Finding]:
    for kind in want:
        if kind not in force.figures:
            yield unknown_choice(kind, force.figures, what="figure kind")
    for name in sources:
        if name not in force.sources:
            yield unknown_choice(name, force.sources, what="source")


def _problem(force: Force, want: Mapping[str, int], *, sources: Sequence[str]) -> OrderProblem:
    asked = {
        name: source for name, source in force.sources.items() if not sources or name in sources
    }
    currency = force_currency(force.sources) or Currency("GBP")
    wanted = {kind: number for kind, number in want.items() if number}
    return OrderProblem(want=wanted, sources=asked, currency=currency)


def _solved(read: Checked, problem: OrderProblem, *, seconds: float) -> OrderJourney:
    outcome = cheapest_order(problem, seconds=seconds)
    match outcome:
        case NobodySells() | Barred():
            findings = refusal(read.force, problem, outcome=outcome)
            return OrderJourney(checked=_with(read, findings), want=problem.want, problem=problem)
        case NotFound():
            findings = (nothing_found(read.force, outcome, seconds=seconds),)
            return OrderJourney(checked=_with(read, findings), want=problem.want, problem=problem)
        case OrderAnswer():
            answer = with_alternatives(problem, outcome, seconds=min(seconds, USUAL_SECONDS))
            findings = tuple(doubts(read.force, problem, answer=answer, seconds=seconds))
            return OrderJourney(
                checked=_with(read, findings), want=problem.want, problem=problem, answer=answer
            )


def _with(read: Checked, findings: Sequence[Finding]) -> Checked:
    return replace(read, findings=in_reading_order((*read.findings, *findings)))
