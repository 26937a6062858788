"""The plan of months for the chosen order, as the page shows it."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.money import money_text
from paradestate.core.months import Spread
from paradestate.core.order import Order
from paradestate.core.savings import Savings
from paradestate.core.sentence.wording import day_words, end_words, month_words, several
from paradestate.journeys.months import MonthsJourney, Terms, months_of_found
from paradestate.journeys.order import OrderJourney
from paradestate.sheet.month_curve import PHONE, WIDE, month_curve
from paradestate.sheet.svg import Drawing
from paradestate.web.purchase.question import Question


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanRow:
    """One month, amounts as text."""

    month: str
    there: str
    bought: str
    spent: str
    left: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ParcelRow:
    """One parcel and its flag."""

    flag: int
    name: str
    cost: str
    bought: str
    there: str
    """Empty where nobody knows how long it takes."""
    needed: str
    late: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """The months in which the parcels are bought."""

    lead: str
    wide: Drawing | None
    phone: Drawing | None
    rows: tuple[PlanRow, ...]
    parcels: tuple[ParcelRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanAnswer:
    """The plan, or why there is none; nothing where nobody said what may be spent."""

    plan: Plan | None
    findings: tuple[Finding, ...]
    """Those that the order hasn't."""


NO_PLAN = PlanAnswer(plan=None, findings=())


def plan_of(
    found: OrderJourney, bought: Order, *, question: Question, today: datetime.date
) -> PlanAnswer:
    """The plan for an order, if the folder or the question says what may be spent in a month."""
    if question.limit is None and not _says_a_month(found.checked.force):
        return NO_PLAN
    terms = Terms(begins=today, limit=question.limit, carried=question.carried)
    journey = months_of_found(found, bought, terms=terms)
    known = set(found.checked.findings)
    own = tuple(each for each in journey.checked.findings if each not in known)
    if journey.plan is None or journey.savings is None:
        return PlanAnswer(plan=None, findings=own)
    return PlanAnswer(plan=_plan(journey, journey.plan, savings=journey.savings), findings=own)


def _says_a_month(force: Force) -> bool:
    return force.aim is not None and force.aim.a_month is not None


def _plan(journey: MonthsJourney, plan: Spread, *, savings: Savings) -> Plan:
    needed = {each.needed for each in journey.parcels if each.needed}
    deadline = savings.month(next(iter(needed)).last) if needed else None
    return Plan(
        lead=_lead(journey, plan, savings=savings),
        wide=month_curve(plan, savings, deadline=deadline, width=WIDE),
        phone=month_curve(plan, savings, deadline=deadline, width=PHONE),
        rows=tuple(_rows(plan, savings)),
        parcels=tuple(_parcels(journey, plan, savings=savings)),
    )


def _lead(journey: MonthsJourney, plan: Spread, *, savings: Savings) -> str:
    number, currency = len(journey.parcels), savings.currency
    carried = f" and {money_text(savings.carried, currency)} there already"
    last = month_words(savings.day(plan.months[-1].month))
    when = f"it is bought in {last}" if number == 1 else f"all is bought by {last}"
    late = f" {several(len(plan.late), 'parcel')} too late." if plan.late else ""
    return (
        f"{several(number, 'parcel')} for {money_text(journey.total, currency)}, with "
        f"{money_text(savings.a_month, currency)} a month{carried if savings.carried else ''}: "
        f"{when}.{late}"
    )


def _rows(plan: Spread, savings: Savings) -> Iterator[PlanRow]:
    for month in plan.months:
        yield PlanRow(
            month=month_words(savings.day(month.month)),
            there=money_text(month.balance + month.spent, savings.currency),
            bought=", ".join(month.orders),
            spent=money_text(month.spent, savings.currency) if month.orders else "",
            left=money_text(month.balance, savings.currency),
        )


def _parcels(journey: MonthsJourney, plan: Spread, *, savings: Savings) -> Iterator[ParcelRow]:
    """The parcels in the order of buying, which is that of their flags."""
    parcels = {parcel.name: parcel for parcel in journey.parcels}
    late = {each.name for each in plan.late}
    bought = [(name, month.month) for month in plan.months for name in month.orders]
    for flag, (name, month) in enumerate(bought, start=1):
        parcel, day = parcels[name], savings.day(month)
        there = parcel.arrival(day)
        yield ParcelRow(
            flag=flag,
            name=name,
            cost=money_text(parcel.cost, savings.currency),
            bought=day_words(day),
            there=day_words(there) if there else "",
            needed=end_words(parcel.needed) if parcel.needed else "",
            late=name in late,
        )
