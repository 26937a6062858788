"""The cheapest order, proved; its steps against what is left over; why there is none."""

import math
import time
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TypeAlias

from paradestate.core.certainty import Certainty, Exact, Within
from paradestate.core.money import Minor
from paradestate.core.order import (
    Basket,
    Order,
    OrderAnswer,
    OrderProblem,
    PackName,
    priced,
    shortcomings,
    unsold,
)
from paradestate.solve.error import SolverError
from paradestate.solve.order_program import OrderProgram
from paradestate.solve.program import Ending, Solution

USUAL_SECONDS = 60.0
"""Time that one question may take."""

HAIR = 1e-6
"""What a floating-point bound may be off by; far below one minor unit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Barred:
    """No order meets the want: kinds that nobody sells, or limits without which there is one."""

    unsold: tuple[str, ...] = ()
    most_of: tuple[PackName, ...] = ()
    least_orders: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class NotFound:
    """Time ran out before any order was found."""

    seconds: float


Outcome: TypeAlias = OrderAnswer | Barred | NotFound


def cheapest_order(problem: OrderProblem, *, seconds: float = USUAL_SECONDS) -> Outcome:
    """The order with the least total; of those the one with least left over.

    Raises SolverError where the solver's answer doesn't stand up to the plain check.
    """
    missing = unsold(problem)
    if missing:
        return Barred(unsold=missing)
    found = _least(OrderProgram(problem), seconds=seconds)
    if isinstance(found, Ending):
        if found is Ending.INFEASIBLE:
            return barring_limits(problem, seconds=seconds)
        return NotFound(seconds=seconds)
    order, certainty = found
    return OrderAnswer(order=order, certainty=certainty)


def with_alternatives(
    problem: OrderProblem, answer: OrderAnswer, *, seconds: float = USUAL_SECONDS
) -> OrderAnswer:
    """The answer with its steps and next best orders, as far as the time allows."""
    if not isinstance(answer.certainty, Exact):
        return answer
    end = time.monotonic() + seconds
    steps = tuple(_steps(problem, answer.order, end=end))
    return replace(answer, steps=steps)


def _least(
    program: OrderProgram, *, seconds: float, left_over_at_most: int | None = None
) -> tuple[Order, Certainty] | Ending:
    """The cheapest order of a program, or how the solve ended without one."""
    problem = program.problem
    figures = program.figures_bought()
    if left_over_at_most is not None:
        most = sum(problem.want.values()) + left_over_at_most
        program.program.row(figures, most=most)
    weight = program.weight_of_total()
    ties = figures if weight > 1 else {}
    program.program.minimise(
        {
            variable: weight * program.total.get(variable, 0) + ties.get(variable, 0)
            for variable in {*program.total, *ties}
        }
    )
    solution = program.program.solved(seconds=seconds)
    if not solution.values:
        return solution.ending
    order = _checked(problem, program.basket(solution))
    return order, _certainty(order, solution, weight=weight)


def _checked(problem: OrderProblem, basket: Basket) -> Order:
    """The basket priced by plain code. Raises SolverError where it isn't a good order."""
    wrong = shortcomings(problem, basket)
    if wrong:
        raise SolverError(f"the solver's order doesn't hold: {'; '.join(wrong)}")
    return priced(problem, basket)


def _certainty(order: Order, solution: Solution, *, weight: int) -> Certainty:
    """Exact only where the recomputed total is no higher than what the solver proved.

    Every order costs weight x total + figures >= bound, with fewer figures than `weight`, so
    total >= (bound - weight + 1) / weight.
    """
    least = math.ceil((solution.bound - HAIR - weight + 1) / weight)
    return Exact() if order.total <= least else Within(bound=max(least, 0))


def _steps(problem: OrderProblem, best: Order, *, end: float) -> Iterator[Order]:
    yield best
    order = best
    while order.number_left_over > 0 and time.monotonic() < end:
        found = _least(
            OrderProgram(problem),
            seconds=end - time.monotonic(),
            left_over_at_most=order.number_left_over - 1,
        )
        if isinstance(found, Ending) or not isinstance(found[1], Exact):
            return
        order = found[0]
        yield order


def barring_limits(problem: OrderProblem, *, seconds: float = USUAL_SECONDS) -> Barred:
    """The limits each of which, left away alone, would let an order be made."""
    most_of = [
        name
        for name, pack in problem.packs()
        if pack.most is not None and _possible(_without_most(problem, name), seconds=seconds)
    ]
    least_orders = [
        source.name
        for source in problem.sources.values()
        if source.least_order
        and _possible(_without_least_order(problem, source.name), seconds=seconds)
    ]
    return Barred(most_of=tuple(most_of), least_orders=tuple(least_orders))


def _possible(problem: OrderProblem, *, seconds: float) -> bool:
    return not isinstance(_least(OrderProgram(problem), seconds=seconds), Ending)


def _without_most(problem: OrderProblem, name: PackName) -> OrderProblem:
    source = problem.sources[name[0]]
    pack = replace(source.packs[name[1]], most=None)
    changed = replace(source, packs={**source.packs, name[1]: pack})
    return replace(problem, sources={**problem.sources, source.name: changed})


def _without_least_order(problem: OrderProblem, name: str) -> OrderProblem:
    changed = replace(problem.sources[name], least_order=Minor(0))
    return replace(problem, sources={**problem.sources, name: changed})
