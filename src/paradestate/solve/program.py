"""A whole-number program built row by row and solved by HiGHS.

The only module that knows the solver library.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

import highspy

from paradestate.solve.error import SolverError

GREATEST = 2**53
"""Whole numbers up to here are exact in floating point."""

TIGHT = 1e-9
"""Feasibility tolerance asked of the solver; answers are rounded and checked all the same."""


class Ending(Enum):
    """How a solve ended."""

    OPTIMAL = "optimal"
    INFEASIBLE = "infeasible"
    STOPPED = "stopped"


@dataclass(frozen=True, slots=True, kw_only=True)
class Solution:
    """What the solver says. `values` are rounded; empty where it found none."""

    ending: Ending
    values: Mapping[int, int]
    bound: float
    """No solution costs less, as far as floating point can say."""


class _QuietSolver(highspy.Highs):
    """HiGHS without the banner that its own constructor prints."""

    def __init__(self) -> None:
        super(highspy.Highs, self).__init__()
        self.setOptionValue("output_flag", False)  # noqa: FBT003 - the library's call
        self.callbacks = []


class Program:
    """Whole-number variables, rows over them, and a cost to be least."""

    def __init__(self) -> None:
        self._solver = _QuietSolver()
        self._solver.setOptionValue("threads", 1)
        self._solver.setOptionValue("random_seed", 1)
        self._solver.setOptionValue("mip_rel_gap", 0.0)
        self._solver.setOptionValue("mip_abs_gap", 0.5)
        self._solver.setOptionValue("mip_feasibility_tolerance", TIGHT)
        self._solver.setOptionValue("primal_feasibility_tolerance", TIGHT)
        self._size = 0

    def variable(self, *, most: int, whole: bool = True) -> int:
        """A new variable from 0 to `most`; returns its number.

        `whole` may be False where the rows leave it no choice but a whole number.
        """
        self._solver.addCol(0.0, 0.0, float(_exact(most)), 0, [], [])
        if whole:
            self._solver.changeColIntegrality(self._size, highspy.HighsVarType.kInteger)
        self._size += 1
        return self._size - 1

    def minimise(self, terms: Mapping[int, int]) -> None:
        """Sets what is to be least."""
        for variable in range(self._size):
            self._solver.changeColCost(variable, float(_exact(terms.get(variable, 0))))

    def bound(self, variable: int, *, least: int, most: int) -> None:
        """Sets between which values a variable lies."""
        self._solver.changeColBounds(variable, float(least), float(_exact(most)))

    def row(
        self, terms: Mapping[int, int], *, least: int | None = None, most: int | None = None
    ) -> None:
        """A sum of variables times whole numbers that must lie from `least` to `most`."""
        kept = {variable: factor for variable, factor in terms.items() if factor}
        lower = -highspy.kHighsInf if least is None else float(_exact(least))
        upper = highspy.kHighsInf if most is None else float(_exact(most))
        factors = [float(_exact(factor)) for factor in kept.values()]
        self._solver.addRow(lower, upper, len(kept), list(kept), factors)

    def solved(self, *, seconds: float) -> Solution:
        """The least cost found within so many seconds. Raises SolverError where it breaks down."""
        self._solver.setOptionValue("time_limit", max(seconds, 0.01))
        self._solver.run()
        status = self._solver.getModelStatus()
        info = self._solver.getInfo()
        infeasible = {
            highspy.HighsModelStatus.kInfeasible,
            highspy.HighsModelStatus.kUnboundedOrInfeasible,
        }
        if status in infeasible:
            return Solution(ending=Ending.INFEASIBLE, values={}, bound=math.inf)
        known = {highspy.HighsModelStatus.kOptimal, highspy.HighsModelStatus.kTimeLimit}
        if status not in known:
            raise SolverError(f"HiGHS ended with: {self._solver.modelStatusToString(status)}")
        found = info.primal_solution_status == highspy.SolutionStatus.kSolutionStatusFeasible
        raw = list(self._solver.getSolution().col_value) if found else []
        optimal = status == highspy.HighsModelStatus.kOptimal
        return Solution(
            ending=Ending.OPTIMAL if optimal else Ending.STOPPED,
            values={variable: round(value) for variable, value in enumerate(raw)},
            bound=float(info.mip_dual_bound),
        )


def _exact(number: int) -> int:
    if abs(number) > GREATEST:
        raise SolverError(f"{number:,} is too great for the solver")
    return number
