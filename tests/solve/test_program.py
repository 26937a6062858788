"""The wrapper around the solver."""

import subprocess
import sys

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
