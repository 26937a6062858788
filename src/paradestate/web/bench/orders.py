"""What to order when so that the bench has work, as the sheet of the bench says it."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding, Level
from paradestate.core.money import money_text
from paradestate.core.sentence.bench_plan import head_sentence, plan_sentences
from paradestate.core.sentence.wording import listed, month_words
from paradestate.core.work.bench_plan import BenchPlan
from paradestate.journeys.bench.bench import OrderOfWork
from paradestate.journeys.bench.bench_months import BenchMonths, months_at_bench
from paradestate.journeys.months import Terms
from paradestate.journeys.order import Request
from paradestate.web.bench.when import short_day
from paradestate.web.search import TooManySearchesError
from paradestate.web.visit import Visit

SECONDS = 20.0
"""How long the orders are looked for."""
AT_ONCE = 0.2
"""Seconds that the sheet waits for them; later it looks again by itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderRow:
    """A parcel as the table shows it."""

    name: str
    wanted_for: str
    cost: str
    month: str
    there: str
    """Empty where nobody knows how long it takes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrdersView:
    """What to order when, or why that isn't said."""

    lead: str
    rows: tuple[OrderRow, ...] = ()
    sentences: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()
    remarks: tuple[Finding, ...] = ()
    is_waited_for: bool = False
    """Whether it is still being looked for."""


def orders_view(visit: Visit, order: OrderOfWork) -> OrdersView | None:
    """What to order when; None where nothing is lacking or nobody sells anything."""
    force = order.force
    if not force.sources or not any(rung.lacking for rung in order.ladder.rungs):
        return None
    if force.aim is None or force.aim.a_month is None:
        lead = "Say under Purchases what may be spent in a month, and it stands here."
        return OrdersView(lead=lead)
    if order.week is None:
        lead = "Say under `bench` how many hours you work in a week, and it stands here."
        return OrdersView(lead=lead)
    try:
        search = visit.site.searches.begun(
            ("months at the bench", visit.folder, visit.today),
            lambda search: months_at_bench(
                visit.folder,
                today=visit.today,
                choice=Choice(),
                request=Request(),
                search=search,
                terms=Terms(begins=visit.today),
                memory=visit.memory,
            ),
            seconds=SECONDS,
            rests_on=order,
        )
    except TooManySearchesError:
        return OrdersView(lead="Other searches run; this one begins when the sheet is asked again.")
    if not search.wait(AT_ONCE):
        return OrdersView(lead="The orders are being looked for.", is_waited_for=True)
    return _found(visit, search.answer())


def _found(visit: Visit, answer: BenchMonths) -> OrdersView:
    found = answer.checked.findings
    if answer.chosen is None:
        stopping = tuple(each for each in found if each.level is Level.STOP)
        return OrdersView(lead="There is no plan of what to order when.", findings=stopping)
    said = [each for each in found if each.code in OF_THE_PLAN]
    plan = answer.chosen.plan
    others = ((each.plan, len(each.orders)) for each in answer.notable)
    return OrdersView(
        lead=head_sentence(plan),
        rows=tuple(_rows(visit, plan)),
        sentences=tuple(plan_sentences(plan, others=others, certainty=answer.chosen.certainty)),
        findings=tuple(each for each in said if each.level is Level.WARN),
        remarks=tuple(each for each in said if each.level is Level.REMARK),
    )


OF_THE_PLAN = {"limit-moves-the-date", "parcel-after-deadline", "lead-time-unknown"}
"""Codes of findings that are said beside the plan."""


def _rows(visit: Visit, plan: BenchPlan) -> Iterator[OrderRow]:
    for each in plan.ordered:
        bought = plan.bought(each.parcel.name)
        there = each.parcel.arrival(bought)
        yield OrderRow(
            name=each.parcel.name,
            wanted_for=listed(each.milestones),
            cost=money_text(each.parcel.cost, plan.terms.savings.currency),
            month=month_words(bought),
            there=short_day(there, today=visit.today) if there else "",
        )
