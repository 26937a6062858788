"""The cheapest order, proved; or why there is none."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from paradestate.core.certainty import Exact
from paradestate.core.money import Minor
from paradestate.core.order import OrderProblem, priced
from paradestate.core.order_outcome import (
    Barred,
    LeastOrder,
    Limit,
    MostOf,
    MostParcels,
    NobodySells,
    NotFound,
    OrderAnswer,
    Outcome,
    Why,
    limits_of,
    unsold,
)
from paradestate.core.source import Source
from paradestate.solve.clock import Clock, clock, never
from paradestate.solve.error import SolverError, TooGreatError
from paradestate.solve.order_program import OrderProgram
from paradestate.solve.order_race import is_large, raced
from paradestate.solve.order_search import Found, least_left_over, search, unproved
from paradestate.solve.program import Ending, Progress, Stop

USUAL_SECONDS = 60.0
"""Time that one question may take."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """What order is looked for, beside that it is cheap."""

    fewest_left_over: bool = False
    """Least left over first, then the least total."""
    within: int = 0
    """Minor units that the total may be above the least."""


CHEAPEST = Wish()


def cheapest_order(
    problem: OrderProblem,
    *,
    wish: Wish = CHEAPEST,
    seconds: float = USUAL_SECONDS,
    stop: Stop = never,
    progress: Progress | None = None,
) -> Outcome:
    """The order with the least total; of those the one with least left over, then fewest packs.

    Raises SolverError where the solver's answer doesn't stand up to the plain check.
    """
    missing = unsold(problem)
    if missing:
        return NobodySells(kinds=missing)
    if not problem.number_lacking:
        return OrderAnswer(order=priced(problem, {}), certainty=Exact())
    try:
        return _searched(problem, wish, until=clock(seconds, stop=stop), progress=progress)
    except TooGreatError:
        return NotFound(why=Why.TOO_GREAT)


def _searched(
    problem: OrderProblem, wish: Wish, *, until: Clock, progress: Progress | None
) -> Outcome:
    if not wish.fewest_left_over:
        found = _cheapest(problem, until=until, within=wish.within, progress=progress)
        return _outcome(problem, found, until=until)
    program = OrderProgram(problem)
    fewest = least_left_over(program, until=until)
    if isinstance(fewest, Ending):
        return _outcome(problem, fewest, until=until)
    with program.at_most(program.figures, fewest.order.number_bought):
        found = search(program, until=until, within=wish.within, progress=progress)
    if isinstance(found, Ending):
        found = unproved(fewest.order, until=until)
    return replace(_answer(found), least_left_over=fewest.least)


def _cheapest(
    problem: OrderProblem, *, until: Clock, within: int, progress: Progress | None
) -> Found | Ending:
    if is_large(problem):
        return raced(problem, until=until, within=within, progress=progress)
    return search(OrderProgram(problem), until=until, within=within, progress=progress)


def _answer(found: Found) -> OrderAnswer:
    return OrderAnswer(
        order=found.order,
        certainty=found.certainty,
        out_of_time=found.out_of_time,
        interrupted=found.interrupted,
    )


def _outcome(problem: OrderProblem, found: Found | Ending, *, until: Clock) -> Outcome:
    match found:
        case Found():
            return _answer(found)
        case Ending.INFEASIBLE:
            return Barred(limits=barring_limits(problem, until=until))
        case Ending.INTERRUPTED:
            return NotFound(why=Why.INTERRUPTED)
        case _:
            return NotFound(why=Why.OUT_OF_TIME)


def barring_limits(problem: OrderProblem, *, until: Clock) -> tuple[Limit, ...]:
    """Limits that together leave no order, as few as can be proved in time.

    Each limit in turn is dropped for good if there is still no order without it.
    """
    barring = limits_of(problem)
    if not barring:
        raise SolverError("the solver finds no order, and no limit bars one")
    for limit in barring:
        fewer = tuple(each for each in barring if each != limit)
        if _is_barred(with_limits(problem, fewer), until=until):
            barring = fewer
    return barring


def _is_barred(problem: OrderProblem, *, until: Clock) -> bool:
    """Whether it is proved that no order meets the want."""
    if not until.left:
        return False
    program = OrderProgram(problem).program
    return program.solved(seconds=until.left).ending is Ending.INFEASIBLE


def with_limits(problem: OrderProblem, limits: Sequence[Limit]) -> OrderProblem:
    """The problem with no other limits than these."""
    bare = {name: _without_limits(source) for name, source in problem.sources.items()}
    most_parcels = None
    for limit in limits:
        match limit:
            case LeastOrder(source=name, least=least):
                bare[name] = replace(bare[name], least_order=Minor(least))
            case MostOf(pack=(name, pack), most=most):
                packs = dict(bare[name].packs)
                packs[pack] = replace(packs[pack], most=most)
                bare[name] = replace(bare[name], packs=packs)
            case MostParcels(most=most):
                most_parcels = most
    return replace(problem, sources=bare, most_parcels=most_parcels)


def _without_limits(source: Source) -> Source:
    packs = {name: replace(pack, most=None) for name, pack in source.packs.items()}
    return replace(source, packs=packs, least_order=Minor(0))
