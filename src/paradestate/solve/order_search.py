"""The search for one order: least total, then least left over, then fewest packs."""

from collections.abc import Callable
from dataclasses import dataclass

from paradestate.core.certainty import Exact, Within
from paradestate.core.order import Basket, Order, order_problems, priced
from paradestate.solve.clock import Clock
from paradestate.solve.error import SolverError
from paradestate.solve.order_program import OrderProgram, Weights
from paradestate.solve.program import Advance, Ending, Progress, Solution, Start


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """An order, and what is proved of it."""

    order: Order
    certainty: Exact | Within
    """Of its total."""
    out_of_time: bool
    interrupted: bool
    settled: bool
    """Whether it is proved as well that no order of the same total leaves less over."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOver:
    """An order that leaves little over, and less than which none leaves over."""

    order: Order
    least: int


def search(
    program: OrderProgram,
    *,
    until: Clock,
    within: int = 0,
    start: Basket | None = None,
    offer: Callable[[], Basket | None] | None = None,
    progress: Progress | None = None,
) -> Found | Ending:
    """The best order of a program, or how the search ended without one.

    `start` is an order that is known already, `offer` gives those found meanwhile. One proved to
    be at most `within` minor units above the least total is good enough.

    Raises SolverError where the solver's order doesn't stand up to the plain check.
    """
    if not until.left:
        return Ending.INTERRUPTED if until.stop() else Ending.STOPPED
    weights = program.weights()
    program.program.minimise(program.weighted(weights))
    solution = program.program.solved(
        seconds=until.left,
        gap=within * weights.total,
        start=_start(program, start),
        offer=None if offer is None else lambda: _start(program, offer()),
        stop=until.stop,
        progress=None if progress is None else _of_totals(progress, weights),
    )
    if not solution.values:
        return solution.ending
    order = _checked(program, solution)
    bound = weights.least_total(solution.bound)
    return Found(
        order=order,
        certainty=Exact() if order.total <= bound else Within(bound=bound),
        out_of_time=solution.ending is Ending.STOPPED,
        interrupted=solution.ending is Ending.INTERRUPTED,
        settled=weights.is_settled(order, bound=solution.bound),
    )


def least_left_over(program: OrderProgram, *, until: Clock) -> LeftOver | Ending:
    """The least that an order can leave over, or how the search ended without any order."""
    if not until.left:
        return Ending.INTERRUPTED if until.stop() else Ending.STOPPED
    program.program.minimise(program.figures.terms)
    solution = program.program.solved(seconds=until.left, stop=until.stop)
    if not solution.values:
        return solution.ending
    order = _checked(program, solution)
    lacking = program.problem.number_lacking
    return LeftOver(order=order, least=max(0, solution.bound - lacking))


def unproved(order: Order, *, until: Clock) -> Found:
    """An order of which nothing is proved but that it is one."""
    interrupted = until.stop()
    return Found(
        order=order,
        certainty=Within(bound=0),
        out_of_time=not interrupted,
        interrupted=interrupted,
        settled=False,
    )


def _start(program: OrderProgram, packs: Basket | None) -> Start | None:
    return program.start(packs) if packs else None


def _checked(program: OrderProgram, solution: Solution) -> Order:
    """The order of a solution, priced by plain code and checked by it."""
    order = priced(program.problem, program.basket(solution))
    wrong = order_problems(program.problem, order)
    if wrong:
        raise SolverError(f"the solver's order doesn't hold: {'; '.join(wrong)}")
    return order


def _of_totals(progress: Progress, weights: Weights) -> Progress:
    """Has advances told in totals instead of weighted sums."""

    def told(advance: Advance) -> None:
        best, bound = advance.best, advance.bound
        progress(
            Advance(
                best=None if best is None else weights.least_total(best),
                bound=None if bound is None else weights.least_total(bound),
                seconds=advance.seconds,
            )
        )

    return told
