"""Two solvers that share no code prove the same least cost of the same program."""

import random
from fractions import Fraction

import pytest
from hypothesis import given, settings

from paradestate.core.order import OrderProblem, order_problems, priced
from paradestate.core.source import Pack
from paradestate.solve.order_program import OrderProgram
from paradestate.solve.program import Ending, Program, Solution
from tests.orders import marenz_problem, pack, problem, source
from tests.solve.drawn import problems_with_stand_ins
from tests.solve.second_solver import SECONDS, solved_again

KINDS = 10
PACKS = 6


def small_catalogue(seed: int) -> OrderProblem:
    """Some of each kind from three price lists, invented from a seed."""
    draw = random.Random(seed)  # noqa: S311 - the same catalogue each time is what is wanted
    kinds = [f"kind {number}" for number in range(KINDS)]
    sources = [
        source(
            name,
            *(catalogue_pack(f"{name[0]}{count}", kinds, draw=draw) for count in range(PACKS)),
            carriage={0: draw.choice((350, 500)), draw.choice((4000, 6000)): 0},
            discount={draw.choice((5000, 9000)): Fraction(draw.choice((0, 5, 10)), 100)},
        )
        for name in ("North", "South", "East")
    ]
    sold = {kind for seller in sources for each in seller.packs.values() for kind in each.holds}
    return problem(*sources, **{kind: draw.randint(3, 30) for kind in sorted(sold)})


def catalogue_pack(name: str, kinds: list[str], *, draw: random.Random) -> Pack:
    """A pack of one to three kinds, at 60 to 120 a figure and in steps of 25."""
    holds = {kind: draw.randint(2, 12) for kind in draw.sample(kinds, draw.choice((1, 1, 2, 3)))}
    price = max(25, sum(holds.values()) * draw.randint(60, 120) // 25 * 25)
    return pack(name, price, multibuy={3: price * 27 // 10}, **holds)


def cost(solution: Solution, terms: dict[int, int]) -> int:
    return sum(factor * solution.values[variable] for variable, factor in terms.items())


def both_prove_the_same(asked: OrderProblem) -> Ending:
    """Has both solvers solve the program of a problem; returns how they ended."""
    order = OrderProgram(asked)
    weights = order.weights()
    terms = dict(order.weighted(weights))
    order.program.minimise(terms)
    first = order.program.solved(seconds=SECONDS)
    second = solved_again(order.program)
    assert first.ending is second.ending is not Ending.STOPPED
    if first.ending is Ending.OPTIMAL:
        assert cost(first, terms) == first.bound == second.bound == cost(second, terms)
        bought = priced(asked, order.basket(second))
        assert order_problems(asked, bought) == ()
        assert bought.total == weights.least_total(second.bound)
    return first.ending


@pytest.mark.parametrize("names", [(), ("North",), ("South",)])
def test_both_prove_the_same_of_the_example(names: tuple[str, ...]) -> None:
    asked = marenz_problem(*names)
    assert both_prove_the_same(asked) is Ending.OPTIMAL


@pytest.mark.parametrize("seed", range(1, 5))
def test_both_prove_the_same_of_a_small_catalogue(seed: int) -> None:
    assert both_prove_the_same(small_catalogue(seed)) is Ending.OPTIMAL


def test_both_prove_that_limits_leave_no_order() -> None:
    few = source("North", pack("A", 100, most=3, rifleman=2))
    assert both_prove_the_same(problem(few, rifleman=7)) is Ending.INFEASIBLE


@pytest.mark.slow
@settings(max_examples=60)
@given(problems_with_stand_ins())
def test_both_prove_the_same_of_a_problem_drawn_by_lot(asked: OrderProblem) -> None:
    both_prove_the_same(asked)


def test_the_second_solver_sees_every_row_and_limit() -> None:
    """At least 11 out of sixes and fours, then without sixes, then with a row nothing meets."""
    program = Program()
    six, four = program.variable(most=9), program.variable(most=9)
    program.row({six: 6, four: 4}, least=11)
    sixes = program.row({six: 1})
    program.minimise({six: 7, four: 9})
    assert solved_again(program).bound == 14
    program.set_limit(sixes, most=0)
    assert solved_again(program) == Solution(
        ending=Ending.OPTIMAL, values={six: 0, four: 3}, bound=27
    )
    program.row({}, least=1)
    assert solved_again(program).ending is Ending.INFEASIBLE
