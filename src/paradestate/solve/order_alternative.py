"""Other orders beside the cheapest: steps of cost against left over, and the next best."""

from dataclasses import replace

from paradestate.core.certainty import Exact
from paradestate.core.order import Order, OrderProblem, in_order_of_choice, is_padded
from paradestate.core.order_outcome import OrderAnswer
from paradestate.solve.clock import Clock, clock, never
from paradestate.solve.error import TooGreatError
from paradestate.solve.order_program import OrderProgram
from paradestate.solve.order_search import Found, search
from paradestate.solve.program import Ending, Stop

USUAL_SECONDS = 10.0
"""Time that the alternatives may take."""

MOST_STEPS = 100
MOST_TRIED = 100
"""Orders that are looked at for the next best, ties included."""


def with_alternatives(
    problem: OrderProblem,
    answer: OrderAnswer,
    *,
    seconds: float = USUAL_SECONDS,
    next_best: int = 3,
    stop: Stop = never,
) -> OrderAnswer:
    """The answer with its steps and next best orders, as many as the time allows.

    Only to a proved order can others be next.
    """
    if not isinstance(answer.certainty, Exact):
        return answer
    try:
        steps, all_steps = steps_from(problem, answer.order, until=clock(seconds / 2, stop=stop))
        others, all_others = next_best_after(
            problem, answer.order, number=next_best, until=clock(seconds / 2, stop=stop)
        )
    except TooGreatError:
        return answer
    # Orders of the same total that leave as much over come into their own order only here.
    first, *others = sorted((answer.order, *others), key=in_order_of_choice)
    return replace(
        answer,
        order=first,
        steps=(first, *steps[1:]),
        all_steps=all_steps,
        next_best=tuple(each for each in others if not is_padded(each, better=first))[:next_best],
        all_next_best=all_others,
    )


def steps_from(
    problem: OrderProblem, best: Order, *, until: Clock
) -> tuple[tuple[Order, ...], bool]:
    """Orders that no other beats both in total and in what is left over, and whether all of them.

    Each is the cheapest that leaves less over than the one before.
    """
    steps = [best]
    if not best.number_left_over:
        return tuple(steps), True
    program = OrderProgram(problem)
    lacking = problem.number_lacking
    while steps[-1].number_left_over and len(steps) < MOST_STEPS:
        with program.at_most(program.figures, lacking + steps[-1].number_left_over - 1):
            found = search(program, until=until)
        if found is Ending.INFEASIBLE:
            return tuple(steps), True
        if not isinstance(found, Found) or not found.settled:
            return tuple(steps), False
        if found.order.total == steps[-1].total:
            steps.pop()
        steps.append(found.order)
    return tuple(steps), not steps[-1].number_left_over


def next_best_after(
    problem: OrderProblem, best: Order, *, number: int, until: Clock
) -> tuple[list[Order], bool]:
    """So many orders that come after the best, without padded ones, and whether all of them.

    With them come all that differ from the last in packs and names only. Each order that is found
    is excluded from the program with all that only add packs to it, which then gives the next.
    """
    if not best.packs or not number:
        return [], True
    program = OrderProgram(problem)
    program.exclude(best)
    listed: list[Order] = []
    for _ in range(MOST_TRIED):
        found = search(program, until=until)
        if found is Ending.INFEASIBLE:
            return listed, True
        if not isinstance(found, Found) or not found.settled:
            break
        if len(listed) >= number and _is_beyond(found.order, listed[number - 1]):
            return listed, True
        program.exclude(found.order)
        listed.append(found.order)
    return listed, False


def _is_beyond(order: Order, last: Order) -> bool:
    """Whether an order comes after another whatever their names."""
    return in_order_of_choice(order)[:3] > in_order_of_choice(last)[:3]
