"""Months and bench together: what to order when, so that a force is playable soonest.

folder -> order of work -> what each milestone lacks -> orders, apart or joined -> months -> plan
"""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from paradestate.core.certainty import Exact, Within
from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.number import summed
from paradestate.core.order import Order, OrderProblem
from paradestate.core.parcel import figures_in, parcels_of
from paradestate.core.place import Place, nearest_place
from paradestate.core.savings import Savings
from paradestate.core.work.awaited_work import Lack, joined, lacks
from paradestate.core.work.bench_plan import BenchPlan, OrderedParcel, best_plan
from paradestate.core.work.bench_plan import Terms as PlanTerms
from paradestate.core.work.bench_plan_finding import pace_missing, plan_findings
from paradestate.core.work.bench_time import BenchTime
from paradestate.journeys.bench.bench import OrderOfWork, order_of_work
from paradestate.journeys.check import Checked
from paradestate.journeys.count import CountAnswer, count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.months import Terms, barred, savings_of
from paradestate.journeys.order import OrderJourney, Request, Search, order_of
from paradestate.solve.clock import clock

OF_SESSIONS = {"week-unsaid"}
MOST_APART = 4
"""Orders that are weighed one by one and joined; what later milestones lack is ordered at once."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Joined:
    """One way to divide what is lacking into orders, with its plan."""

    orders: tuple[Lack, ...]
    """What each order is for; none where an earlier one leaves enough over."""
    plan: BenchPlan
    certainty: Exact | Within
    """How sure it is that the orders cost as little as can be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchMonths:
    """The plan, or None with the stops that prevent it."""

    checked: Checked
    work: OrderOfWork | None = None
    chosen: Joined | None = None
    others: tuple[Joined, ...] = field(default_factory=tuple)
    """The other ways to divide it, cheapest first."""

    @property
    def notable(self) -> tuple[Joined, ...]:
        """Of the others the cheapest, where it costs less, and that with the first force soonest.

        Only those beside which the chosen one isn't better in both.
        """
        if self.chosen is None or not self.chosen.plan.playable:
            return ()
        own = self.chosen.plan
        first = own.playable[0].name
        cheapest = [each for each in self.others[:1] if each.plan.total < own.total]
        soonest = min(self.others, key=lambda each: _day(each.plan, first), default=self.chosen)
        is_sooner = _day(soonest.plan, first) < own.playable[0].day
        sooner = [soonest] if is_sooner and soonest not in cheapest else []
        return (*cheapest, *sooner)


def _day(plan: BenchPlan, name: str) -> datetime.date:
    return next(each.day for each in plan.playable if each.name == name)


def months_at_bench(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    request: Request,
    search: Search,
    terms: Terms,
    memory: Memory = NOTHING,
) -> BenchMonths:
    """What to order when, with the bench at the pace of the owner's `week`.

    `request` says what the orders are to be like; what they bring follows from the order of work.
    Raises StoreError, and FileError.
    """
    answer = order_of_work(folder, today=today, choice=choice, memory=memory)
    if answer.order is None:
        return BenchMonths(checked=answer.checked)
    counted = count(folder, today=today, choice=choice, lent_too=True, memory=memory)
    work = answer.order
    read = replace(answer.checked, findings=tuple(_but_of_dates(answer.checked)))
    savings, findings = savings_of(work.force, terms)
    if work.week is None:
        findings = (*findings, pace_missing(work.force))
    if savings is None or work.week is None:
        return BenchMonths(checked=read.with_findings(*findings), work=work)
    time = BenchTime(begins=terms.begins, week=work.week, away=work.force.bench.away)
    kept = PlanTerms(savings=savings, time=time, set_up=work.force.bench.set_up)
    found, stopping = _ways(work, _Buying(counted, request=request, search=search), terms=kept)
    if not found:
        return BenchMonths(checked=read.with_findings(*stopping), work=work)
    chosen, *others = sorted(found, key=_by_waiting)
    said = plan_findings(work.force, chosen.plan, place=_place(work.force, terms))
    return BenchMonths(
        checked=read.with_findings(*said),
        work=work,
        chosen=chosen,
        others=tuple(sorted(others, key=lambda each: each.plan.total)),
    )


def _but_of_dates(read: Checked) -> Iterator[Finding]:
    """All but what is said of dates that rest on sessions, which these don't."""
    yield from (found for found in read.findings if found.code not in OF_SESSIONS)


def _by_waiting(way: Joined) -> tuple[object, ...]:
    """The least waiting first, of equals that with the least idle, of those the cheapest."""
    return way.plan.waiting, way.plan.ends, way.plan.total


def _place(force: Force, terms: Terms) -> Place | None:
    """Where the limit is written; None where it was typed."""
    return nearest_place(force.places, ("aim", "a month")) if terms.limit is None else None


def _ways(
    work: OrderOfWork, buying: "_Buying", *, terms: PlanTerms
) -> tuple[Sequence[Joined], tuple[Finding, ...]]:
    """Every way to join orders that follow one another; none with what prevents them all."""
    found: dict[tuple[object, ...], Joined] = {}
    stopping: dict[Finding, None] = {}
    for orders in _divided(lacks(work.ladder, most=MOST_APART)):
        bought = buying.orders(orders)
        if not isinstance(bought, _Bought):
            stopping |= dict.fromkeys(bought)
            continue
        findings = tuple(_barring(bought, savings=terms.savings))
        if findings:
            stopping |= dict.fromkeys(findings)
            continue
        parcels = tuple(each.parcel for each in bought.parcels)
        if parcels not in found:
            plan = best_plan(work.ladder, bought.parcels, terms=terms)
            found[parcels] = Joined(orders=bought.orders, plan=plan, certainty=bought.certainty)
    return tuple(found.values()), tuple(stopping)


def _divided(lacking: Sequence[Lack]) -> Iterator[Sequence[Lack]]:
    """Each apart first; then all ways to join some that follow one another."""
    gaps = max(0, len(lacking) - 1)
    for closed in range(1 << gaps):
        orders: list[list[Lack]] = []
        for number, lack in enumerate(lacking):
            if number and closed >> (number - 1) & 1:
                orders[-1].append(lack)
            else:
                orders.append([lack])
        yield [joined(each) for each in orders]


def _barring(bought: "_Bought", *, savings: Savings) -> Iterator[Finding]:
    total = sum(each.parcel.cost for each in bought.parcels)
    yield from barred(total, savings, number=len(bought.parcels))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bought:
    """The parcels of some orders."""

    orders: tuple[Lack, ...]
    parcels: tuple[OrderedParcel, ...]
    certainty: Exact | Within


class _Buying:
    """Finds the cheapest order of what is lacking, each only once."""

    def __init__(self, counted: CountAnswer, *, request: Request, search: Search) -> None:
        self._counted = counted
        self._request = request
        self._search = search
        self._clock = clock(search.seconds, stop=search.stop)
        self._found: dict[tuple[tuple[str, int], ...], OrderJourney] = {}

    def orders(self, lacking: Sequence[Lack]) -> _Bought | tuple[Finding, ...]:
        """The orders one after another; what one leaves over serves the next."""
        over: Mapping[str, int] = {}
        made: list[tuple[Lack, OrderProblem, Order]] = []
        bound, total = 0, 0
        for lack in lacking:
            want = {kind: number - over.get(kind, 0) for kind, number in lack.figures.items()}
            over = {kind: max(0, -number) for kind, number in want.items()} | {
                kind: number for kind, number in over.items() if kind not in want
            }
            want = {kind: number for kind, number in want.items() if number > 0}
            if not want:
                continue
            found = self._order(want)
            if found.answer is None or found.problem is None:
                return found.checked.findings
            order, sure = found.answer.order, found.answer.certainty
            total += order.total
            bound += sure.bound if isinstance(sure, Within) else order.total
            made.append((lack, found.problem, order))
            over = summed([over, order.left_over])
        certainty = Exact() if bound == total else Within(bound=bound)
        return _Bought(
            orders=tuple(lack for lack, _, _ in made),
            parcels=tuple(_named(made)),
            certainty=certainty,
        )

    def _order(self, want: Mapping[str, int]) -> OrderJourney:
        key = tuple(sorted(want.items()))
        if key not in self._found:
            search = replace(self._search, seconds=self._clock.left, alternatives=False)
            request = replace(self._request, want=want)
            self._found[key] = order_of(self._counted, request=request, search=search)
        return self._found[key]


def _named(orders: Sequence[tuple[Lack, OrderProblem, Order]]) -> Iterator[OrderedParcel]:
    """The parcels, those of one source with a number where there are several."""
    sources = [receipt.source for _, _, order in orders for receipt in order.receipts]
    numbers: dict[str, int] = {}
    for lack, problem, order in orders:
        parcels = parcels_of(problem, order)
        for parcel, receipt in zip(parcels, order.receipts, strict=True):
            source = receipt.source
            numbers[source] = numbers.get(source, 0) + 1
            name = source if sources.count(source) == 1 else f"{source} {numbers[source]}"
            yield OrderedParcel(
                parcel=replace(parcel, name=name),
                milestones=lack.milestones,
                figures=figures_in(problem, receipt),
            )
