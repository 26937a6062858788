"""A whole-number program built row by row and solved by HiGHS.

This module and `heuristic/filling.py` alone know the solver library. A program is only a
description: each solve starts a fresh solver, so that the same question has the same answer
whatever was asked before.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from typing import Any, TypeAlias

import highspy

from paradestate.solve.error import SolverError, TooGreatError

GREATEST = 2**53
"""Whole numbers up to here are exact in floating point; no sum in a row may exceed it."""

NEARLY_ONE = 1.0 - 1e-6
"""Costs are whole numbers, so a solution less than one below the best can't exist."""

ALWAYS: Mapping[str, bool | int | float | str] = {
    "output_flag": False,  # first, or the solver prints its banner
    "threads": 1,  # never another number: the solver keeps its first for the whole process
    "random_seed": 1,
}

OPTIONS: Mapping[str, bool | int | float | str] = {
    "presolve": "off",  # HiGHS 1.16 presolves some small orders into none
    "mip_rel_gap": 0.0,
    # Feasibility tolerances stay as they are: tighter ones make the solver lose solutions, while
    # with these it may only take liberties, which the plain check finds out.
}

LEFT_TO_OTHERS: Mapping[str, bool] = {
    # Where somebody else looks for solutions these take longer than the proof itself.
    "mip_heuristic_run_rins": False,
    "mip_heuristic_run_rens": False,
    "mip_heuristic_run_root_reduced_cost": False,
}

SHORTEST = 0.01
"""Seconds that a solve is given at the least."""

LONG_ENOUGH = 10.0
"""Seconds for what takes far less."""


class Ending(Enum):
    """How a solve ended."""

    OPTIMAL = "optimal"
    INFEASIBLE = "infeasible"
    STOPPED = "stopped"
    INTERRUPTED = "interrupted"


@dataclass(frozen=True, slots=True, kw_only=True)
class Solution:
    """What the solver says. `values` are rounded; empty where it found none."""

    ending: Ending
    values: Mapping[int, int]
    bound: int
    """No solution costs less; rounded up from what floating point can say, costs being whole."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Advance:
    """How far a solve has come."""

    best: int | None
    """The least cost found; None before the first."""
    bound: int | None
    """No solution costs less; None before that is known."""
    seconds: float


Progress: TypeAlias = Callable[[Advance], None]
"""Is told of every advance in cost or bound."""

Stop: TypeAlias = Callable[[], bool]
"""Is asked, often, whether to stop with the best so far."""

Start: TypeAlias = Mapping[int, int]
"""Some variables with their values in a solution; the solver finds the others."""

Offer: TypeAlias = Callable[[], Start | None]
"""Is asked, often, for a solution found elsewhere; None where there is no new one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    terms: Mapping[int, int]
    least: int | None
    most: int | None

    def reduced(self) -> "_Row":
        """The same demand in the smallest numbers: every sum is a multiple of the divisor."""
        divisor = math.gcd(*self.terms.values()) or 1
        return _Row(
            terms={variable: factor // divisor for variable, factor in self.terms.items()},
            least=None if self.least is None else -(-self.least // divisor),
            most=None if self.most is None else self.most // divisor,
        )


class Program:
    """Whole-number variables, rows over them, and a cost to be least."""

    def __init__(self) -> None:
        self._most: list[int] = []
        self._whole: list[bool] = []
        self._rows: list[_Row] = []
        self._cost: Mapping[int, int] = {}

    def variable(self, *, most: int, whole: bool = True) -> int:
        """A new variable from 0 to `most`; returns its number.

        `whole` may be False where the rows leave it no choice but a whole number, or where any
        number between does no better.
        """
        self._most.append(_exact(most))
        self._whole.append(whole)
        return len(self._most) - 1

    def row(
        self, terms: Mapping[int, int], *, least: int | None = None, most: int | None = None
    ) -> int:
        """Demands that a sum of variables times whole numbers lies from `least` to `most`.

        Returns the number of the row.
        """
        kept = {variable: factor for variable, factor in terms.items() if factor}
        _exact(self.greatest(kept) + max(abs(least or 0), abs(most or 0)))
        self._rows.append(_Row(terms=kept, least=least, most=most))
        return len(self._rows) - 1

    def limit(self, row: int) -> int | None:
        """What a row may be at the most; None where nothing limits it."""
        return self._rows[row].most

    def set_limit(self, row: int, *, most: int | None) -> None:
        """Sets what a row may be at the most, or lifts that limit."""
        self._rows[row] = replace(self._rows[row], most=most)

    def greatest(self, terms: Mapping[int, int]) -> int:
        """No sum of these terms is greater, whatever their signs."""
        return sum(abs(factor) * self._most[variable] for variable, factor in terms.items())

    def minimise(self, terms: Mapping[int, int]) -> None:
        """Sets what is to be least."""
        _exact(self.greatest(terms))
        self._cost = terms

    def solved(
        self,
        *,
        seconds: float,
        gap: int = 0,
        start: Start | None = None,
        offer: Offer | None = None,
        stop: Stop | None = None,
        progress: Progress | None = None,
    ) -> Solution:
        """The least cost found within so many seconds, or one at most `gap` above the least.

        The solver goes on from `start` and from what `offer` gives, if those are solutions; where
        there is an `offer` it looks less for solutions by itself. Where
        `stop` comes to say so, that ends the solve with the best so far. Raises SolverError where
        the solver breaks down.
        """
        solver = _solver(seconds, gap=gap)
        for name, value in LEFT_TO_OTHERS.items() if offer else ():
            solver.setOptionValue(name, value)
        solver.passModel(self._model())
        if start:
            solver.setSolution(self._completed(start))
        told = _Told(progress, stop=stop, offer=lambda: self._offered(offer))
        solver.setCallback(told.heard, None)
        solver.startCallback(highspy.cb.HighsCallbackType.kCallbackMipInterrupt)
        if offer is not None:
            solver.startCallback(highspy.cb.HighsCallbackType.kCallbackMipUserSolution)
        solver.run()
        solution = self._solution(solver)
        if solution.values:
            info = solver.getInfo()
            best, bound = info.objective_function_value, info.mip_dual_bound
            told.tell(best, bound=bound, seconds=solver.getRunTime())
        return solution

    def _offered(self, offer: Offer | None) -> Sequence[float] | None:
        start = None if offer is None else offer()
        return list(self._completed(start).col_value) if start else None

    def _completed(self, start: Start) -> highspy.HighsSolution:
        """The solution in which some variables have these values, of no value if there is none.

        The solver could complete it by itself, but tells of the bound of that as if it were ours.
        """
        model = self._model()
        lower, upper = list(model.col_lower_), list(model.col_upper_)
        for variable, value in start.items():
            lower[variable] = upper[variable] = float(value)
        model.col_lower_, model.col_upper_ = lower, upper
        solver = _solver(LONG_ENOUGH, gap=0)
        solver.passModel(model)
        solver.run()
        return solver.getSolution()

    def _model(self) -> highspy.HighsLp:
        model = highspy.HighsLp()
        rows = [row.reduced() for row in self._rows]
        model.num_col_ = len(self._most)
        model.num_row_ = len(self._rows)
        model.col_cost_ = [float(self._cost.get(number, 0)) for number in range(len(self._most))]
        model.col_lower_ = [0.0] * len(self._most)
        model.col_upper_ = [float(most) for most in self._most]
        kinds = highspy.HighsVarType
        model.integrality_ = [kinds.kInteger if each else kinds.kContinuous for each in self._whole]
        infinity = highspy.kHighsInf
        model.row_lower_ = [-infinity if row.least is None else float(row.least) for row in rows]
        model.row_upper_ = [infinity if row.most is None else float(row.most) for row in rows]
        starts: list[int] = [0]
        where: list[int] = []
        factors: list[float] = []
        for row in rows:
            where.extend(row.terms)
            factors.extend(float(factor) for factor in row.terms.values())
            starts.append(len(where))
        model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
        model.a_matrix_.start_ = starts
        model.a_matrix_.index_ = where
        model.a_matrix_.value_ = factors
        return model

    def _solution(self, solver: highspy._core._Highs) -> Solution:
        status = solver.getModelStatus()
        ending = _ENDINGS.get(status)
        if ending is None:
            raise SolverError(f"HiGHS ended with: {solver.modelStatusToString(status)}")
        info = solver.getInfo()
        found = info.primal_solution_status == highspy.SolutionStatus.kSolutionStatusFeasible
        raw = list(solver.getSolution().col_value) if found else []
        return Solution(
            ending=ending,
            values={variable: round(value) for variable, value in enumerate(raw)},
            bound=_rounded_up(info.mip_dual_bound) or 0,
        )


_ENDINGS: Mapping[highspy.HighsModelStatus, Ending] = {
    highspy.HighsModelStatus.kOptimal: Ending.OPTIMAL,
    highspy.HighsModelStatus.kInfeasible: Ending.INFEASIBLE,
    # every variable and so every cost is bounded
    highspy.HighsModelStatus.kUnboundedOrInfeasible: Ending.INFEASIBLE,
    highspy.HighsModelStatus.kTimeLimit: Ending.STOPPED,
    highspy.HighsModelStatus.kInterrupt: Ending.INTERRUPTED,
}


def _solver(seconds: float, *, gap: int) -> highspy._core._Highs:
    return fresh_solver(
        {**OPTIONS, "time_limit": max(seconds, SHORTEST), "mip_abs_gap": gap + NEARLY_ONE}
    )


def fresh_solver(options: Mapping[str, bool | int | float | str]) -> highspy._core._Highs:
    """A solver with these options on top of those that hold for every one.

    The library's own subclass prints a banner before it can be silenced.
    """
    solver = highspy._core._Highs()  # noqa: SLF001 - as the docstring says
    for name, value in {**ALWAYS, **options}.items():
        solver.setOptionValue(name, value)
    return solver


class _Told:
    """Tells of advances, each only once, and asks whether to stop and for better solutions."""

    def __init__(
        self,
        progress: Progress | None,
        *,
        stop: Stop | None,
        offer: Callable[[], Sequence[float] | None],
    ) -> None:
        self._progress = progress
        self._stop = stop
        self._offer = offer
        self._last: tuple[int | None, int | None] = (None, None)

    def heard(self, *event: Any) -> None:  # noqa: ANN401 - kind, message, what is said, answer, data
        """Is called by the solver, often."""
        if event[0] == highspy.cb.HighsCallbackType.kCallbackMipUserSolution:
            values = self._offer()
            if values:
                event[3].setSolution(values)
            return
        said: highspy.cb.HighsCallbackOutput = event[2]
        answer: highspy.cb.HighsCallbackInput = event[3]
        self.tell(said.mip_primal_bound, bound=said.mip_dual_bound, seconds=said.running_time)
        if self._stop is not None and self._stop():
            answer.user_interrupt = True

    def tell(self, best: float, *, bound: float, seconds: float) -> None:
        """Tells of the best cost and its bound where either is new."""
        if self._progress is None:
            return
        now = round(best) if math.isfinite(best) else None, _rounded_up(bound)
        if now != self._last:
            self._last = now
            self._progress(Advance(best=now[0], bound=now[1], seconds=seconds))


def _rounded_up(bound: float) -> int | None:
    """A floating-point bound on a whole number as a whole number, with room for its error."""
    if not math.isfinite(bound):
        return None
    return math.ceil(bound - 1e-6 - 1e-10 * abs(bound))


def _exact(number: int) -> int:
    if abs(number) > GREATEST:
        raise TooGreatError(f"{number:,} is too great for the solver")
    return number
