"""The wrapper around the solver."""

import subprocess
import sys
from collections.abc import Mapping

import pytest

from paradestate.solve.error import SolverError, TooGreatError
from paradestate.solve.program import GREATEST, Advance, Ending, Program


def knapsack() -> Program:
    """At least 11 out of sixes and fours, which cost 7 and 5."""
    program = Program()
    six, four = program.variable(most=9), program.variable(most=9)
    program.row({six: 6, four: 4}, least=11)
    program.minimise({six: 7, four: 5})
    return program


def test_a_program_is_solved_to_the_least_cost() -> None:
    solution = knapsack().solved(seconds=9)
    assert solution.ending is Ending.OPTIMAL
    assert solution.bound == 14
    assert 7 * solution.values[0] + 5 * solution.values[1] == 14


def test_a_program_without_solution_is_infeasible() -> None:
    program = Program()
    number = program.variable(most=3)
    program.row({number: 2}, least=7)
    solution = program.solved(seconds=9)
    assert (solution.ending, solution.values) == (Ending.INFEASIBLE, {})


def test_a_row_is_limited_anew_and_the_limit_lifted() -> None:
    program = Program()
    number = program.variable(most=9)
    row = program.row({number: 1})
    program.minimise({number: -1})
    assert program.limit(row) is None
    for most in (4, 6, None):
        program.set_limit(row, most=most)
        assert program.limit(row) == most
        assert program.solved(seconds=9).values == {number: 9 if most is None else most}


def test_advances_are_told_each_once() -> None:
    told: list[Advance] = []
    knapsack().solved(seconds=9, progress=told.append)
    said = [(each.best, each.bound) for each in told]
    assert said[-1] == (14, 14)
    assert len(said) == len(set(said))


def test_a_solve_goes_on_from_the_start_it_is_given() -> None:
    told: list[Advance] = []
    knapsack().solved(seconds=9, start={0: 0, 1: 3}, progress=told.append)
    assert told[0].best == 15
    assert (told[-1].best, told[-1].bound) == (14, 14)


def test_a_start_that_is_no_solution_does_no_harm() -> None:
    for start in ({0: 0, 1: 0}, {0: 99}):
        solution = knapsack().solved(seconds=9, start=start)
        assert (solution.ending, solution.bound) == (Ending.OPTIMAL, 14)


def test_a_solution_found_elsewhere_is_taken_over() -> None:
    """Of many knapsacks, packed one for one: far from what the solver would begin with."""
    program = Program()
    cost: dict[int, int] = {}
    for number in range(12):
        six, four = program.variable(most=9), program.variable(most=9)
        program.row({six: 6 + number, four: 4 + number}, least=31)
        cost |= {six: 7 + number, four: 5 + number}
    program.minimise(cost)
    least = program.solved(seconds=9)
    offers = iter([least.values])
    asked: list[bool] = []

    def offer() -> Mapping[int, int] | None:
        asked.append(True)
        return next(offers, None)

    again = program.solved(seconds=9, offer=offer)
    assert asked
    assert (again.ending, again.bound) == (Ending.OPTIMAL, least.bound)


def test_a_program_without_solution_tells_of_none() -> None:
    told: list[Advance] = []
    program = Program()
    number = program.variable(most=3)
    program.row({number: 2}, least=7)
    program.solved(seconds=9, progress=told.append)
    assert [each.best for each in told if each.best is not None] == []


def test_numbers_that_floating_point_does_not_hold_are_refused() -> None:
    program = Program()
    with pytest.raises(TooGreatError):
        program.variable(most=GREATEST + 1)
    number = program.variable(most=GREATEST // 2)
    program.row({number: 1}, least=GREATEST // 2)
    with pytest.raises(TooGreatError):
        program.row({number: 3})
    with pytest.raises(TooGreatError):
        program.row({number: 2}, least=5)
    with pytest.raises(TooGreatError):
        program.minimise({number: -3})


def test_an_empty_program_is_not_something_to_ask() -> None:
    with pytest.raises(SolverError, match="HiGHS ended with"):
        Program().solved(seconds=9)


def test_the_solver_prints_nothing() -> None:
    """In a process of its own, for the library writes past Python."""
    script = (
        "from paradestate.solve.program import Program\n"
        "program = Program()\n"
        "program.row({program.variable(most=3): 2}, least=3)\n"
        "program.solved(seconds=9)\n"
    )
    done = subprocess.run([sys.executable, "-c", script], check=True, capture_output=True)
    assert (done.stdout, done.stderr) == (b"", b"")
