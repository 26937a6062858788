"""What to buy, at the least cost.

folder -> count -> want -> problem -> cheapest order -> alternatives and doubts
"""

import datetime
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path
from typing import TypeAlias

from paradestate.core.choice import Choice, unknown_choice
from paradestate.core.cover import Substitutes
from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.gap import Gap, gaps
from paradestate.core.lead_time import arrival
from paradestate.core.money import Currency, decimal_places, half_up
from paradestate.core.order import Order, OrderProblem, netted
from paradestate.core.order_finding import doubts, nothing_found, refusal, unknown_arrival
from paradestate.core.order_outcome import Barred, NobodySells, NotFound, OrderAnswer, Outcome
from paradestate.core.source import force_currency
from paradestate.core.strength import Strength
from paradestate.journeys.check import Checked
from paradestate.journeys.count import Count, CountAnswer, count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.solve.clock import never
from paradestate.solve.order import Wish, cheapest_order
from paradestate.solve.order_alternative import USUAL_SECONDS, with_alternatives
from paradestate.solve.order_soonest import soonest_order
from paradestate.solve.program import Advance, Progress, Stop


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """What the order is to be like."""

    want: Mapping[str, int] | None = None
    """Kind to figures to buy; None for what the force lacks."""
    sources: tuple[str, ...] = ()
    """The sources to buy from; empty for all."""
    stand_ins: bool = False
    """Whether bought figures may stand in for other kinds."""
    fewest_left_over: bool = False
    one_parcel: bool = False
    soonest: bool = False
    within: Fraction = Fraction(0)
    """How far above the least total is good enough, in units of the force's currency."""


Told: TypeAlias = Callable[[Advance, Currency], None]
"""Is told of every advance, and in which currency that is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """How long an order may be looked for, and who is told of it or may stop it."""

    seconds: float
    stop: Stop = never
    progress: Told | None = None
    alternatives: bool = True
    """Whether the next best orders are looked for as well."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderJourney:
    """The order, or None with the stops that prevent it."""

    checked: Checked
    want: Mapping[str, int]
    """Kind to figures that have to be bought, if each serves as itself."""
    problem: OrderProblem | None = None
    answer: OrderAnswer | None = None
    arrival: int | None = None
    """Days until all of it is there; None where that isn't known."""


def order(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    request: Request,
    search: Search,
    memory: Memory = NOTHING,
) -> OrderJourney:
    """The cheapest order of what is lacking, or of the want given, as it was asked for."""
    counted = count(
        folder, today=today, choice=choice, lent_too=True, ordered_too=True, memory=memory
    )
    return order_of(counted, request=request, search=search)


def order_of(counted: CountAnswer, *, request: Request, search: Search) -> OrderJourney:
    """The cheapest order for a force that was counted with what is away."""
    read = counted.checked
    if counted.count is None:
        return OrderJourney(checked=read, want={})
    force, owned = counted.count.force, counted.count.strength
    unknown = tuple(_unknown(force, request))
    if unknown:
        return OrderJourney(checked=read.with_findings(*unknown), want={})
    asked = _problem(force, owned, request=request)
    wish = Wish(
        fewest_left_over=request.fewest_left_over, within=_minor(request.within, asked.currency)
    )
    problem, outcome = _found(asked, wish, search=search, soonest=request.soonest)
    want = owned.deficiency if request.want is None else _numbers(request.want)
    journey = OrderJourney(checked=read, want=want, problem=problem)
    told = _told(journey, force, outcome=outcome, wish=wish, search=search)
    if request.soonest and told.answer is not None and told.arrival is None:
        remark = unknown_arrival(force, told.answer.order)
        return replace(told, checked=told.checked.with_findings(remark))
    return told


def gaps_of(
    counted: Count, *, request: Request, problem: OrderProblem | None = None, bought: Order | None
) -> tuple[Gap, ...]:
    """What is wanted of each kind and what is there, with the packs of an order where one is."""
    owned = counted.strength
    if request.want is None:
        return gaps(owned.wanted, owned.filled, problem=problem, order=bought)
    return gaps(_numbers(request.want), {}, problem=problem, order=bought)


def _found(
    problem: OrderProblem, wish: Wish, *, search: Search, soonest: bool
) -> tuple[OrderProblem, Outcome]:
    seconds, stop = search.seconds, search.stop
    progress = _in_currency(search.progress, problem.currency)
    if soonest:
        return soonest_order(problem, wish=wish, seconds=seconds, stop=stop, progress=progress)
    return problem, cheapest_order(
        problem, wish=wish, seconds=seconds, stop=stop, progress=progress
    )


def _in_currency(told: Told | None, currency: Currency) -> Progress | None:
    return None if told is None else lambda advance: told(advance, currency)


def _unknown(force: Force, request: Request) -> Iterator[Finding]:
    for kind in request.want or ():
        if kind not in force.figures:
            yield unknown_choice(kind, force.figures, what="figure kind")
    for name in request.sources:
        if name not in force.sources:
            yield unknown_choice(name, force.sources, what="source")


def _problem(force: Force, owned: Strength, *, request: Request) -> OrderProblem:
    """What is to be bought, and what is there to serve it: nothing where a want is given."""
    names = request.sources or tuple(force.sources)
    is_own_want = request.want is not None
    asked = OrderProblem(
        want=_numbers(request.want if request.want is not None else owned.loose_wanted),
        sources={name: source for name, source in force.sources.items() if name in names},
        currency=force_currency(force.sources) or Currency("GBP"),
        owned={} if is_own_want else _numbers(owned.loose),
        substitutes=Substitutes(
            may_stand_for={kind: figure.may_stand_for for kind, figure in force.figures.items()},
            bought_too=request.stand_ins,
        ),
        most_parcels=1 if request.one_parcel else None,
    )
    return netted(asked)


def _numbers(kinds: Mapping[str, int]) -> Mapping[str, int]:
    return {kind: number for kind, number in kinds.items() if number}


def _minor(amount: Fraction, currency: Currency) -> int:
    return half_up(amount * Fraction(10) ** decimal_places(currency))


def _told(
    journey: OrderJourney, force: Force, *, outcome: Outcome, wish: Wish, search: Search
) -> OrderJourney:
    """The journey with its answer and what is to be said about it."""
    problem, seconds = journey.problem, search.seconds
    if problem is None:
        return journey
    match outcome:
        case NobodySells() | Barred():
            findings = refusal(force, problem, outcome=outcome)
            return replace(journey, checked=journey.checked.with_findings(*findings))
        case NotFound():
            findings = (nothing_found(force, outcome, seconds=seconds),)
            return replace(journey, checked=journey.checked.with_findings(*findings))
        case OrderAnswer():
            answer = outcome
            if search.alternatives and not wish.fewest_left_over:
                answer = with_alternatives(
                    problem, outcome, seconds=min(seconds, USUAL_SECONDS), stop=search.stop
                )
            findings = tuple(doubts(force, problem, answer=answer, seconds=seconds))
            return replace(
                journey,
                checked=journey.checked.with_findings(*findings),
                answer=answer,
                arrival=arrival(problem, answer.order),
            )
