"""Weeks to come, drawn from the log and from what is assumed beside it.

Blocks of consecutive weeks of the log are drawn with replacement, those at its end going on at its
beginning (the circular block bootstrap of Politis and Romano, 1992), newer ones more often. What
was drawn once is as likely to be drawn again as if it stood in the log too, so that a short log
leaves its mean uncertain as well (the scheme of Blackwell and MacQueen, 1973, by which the Bayesian
bootstrap of Rubin, 1981, looks ahead). Each block comes from what is assumed instead, as often as
the weight of that among all weights.

A log of few spells tells less than its number of weeks says: weeks like those before them count as
fewer. And where weeks differ more than those of steady work do, the level of all weeks to come is
taken as uncertain, by as much as the mean of so few independent weeks would be.

Minutes are kept in sevenths, so that a week with days away is exactly its share.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy
from numpy.typing import NDArray

from paradestate.core.work.habit import Habit

MOST_WEEKS = 520
"""Weeks looked ahead; what takes longer has no date."""

Minutes = NDArray[numpy.int64]
"""Sevenths of minutes; a row for each week, a column for each draw."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """What counts how much."""

    block: int = 6
    """Weeks in a row that are drawn together, so that lean spells stay together."""
    prior_weeks: int = 7
    """Weeks of the log that the assumption weighs as much as (by trial: `bench_forecast.py`)."""
    half_life: int = 13
    """Weeks after which a past week counts half (by trial as well)."""
    run: float = 1.0
    """How many weeks in a row tell as much as one, before a log says so itself (by trial)."""
    run_weeks: int = 8
    """Weeks of the log that this weighs as much as (by trial)."""
    steady: float = 0.7
    """Variance of steady weeks over the square of their mean (by trial)."""
    caution: float = 4.0
    """How far more than that widens the level (by trial)."""


USUAL_WEIGHTS = Weights()


def _counts(habit: Habit, weights: Weights) -> NDArray[numpy.float64]:
    """How much each past week counts."""
    return numpy.exp2(-numpy.arange(len(habit.weeks), 0, -1) / weights.half_life)


LONGEST_RUN = 0.75
"""More likeness from week to week than this no log can show."""
MOST_SPREAD = 2.0
"""Variance over the square of the mean, beyond the steady, that is reckoned with at the most."""
FEWEST = 3
"""Weeks of which a likeness can be said."""


def _run(habit: Habit, weights: Weights) -> float:
    """How many weeks in a row tell as much as one: (1 + r) / (1 - r), r the likeness of neighbours.

    The likeness is corrected for the number of weeks (Kendall, 1954).
    """
    weeks = numpy.array(habit.weeks, dtype=numpy.float64)
    off = weeks - weeks.mean() if weeks.size else weeks
    if weeks.size < FEWEST or not off.any():
        return weights.run
    like = float((off[1:] * off[:-1]).sum() / (off * off).sum())
    like = min(max(like + (1 + 3 * like) / weeks.size, 0.0), LONGEST_RUN)
    seen = (1 + like) / (1 - like)
    return (weights.run * weights.run_weeks + seen * weeks.size) / (weights.run_weeks + weeks.size)


def _variance(habit: Habit, weights: Weights) -> float:
    """How uncertain the level of the log is, over its square, beyond that of steady weeks."""
    counts = _counts(habit, weights)
    weeks = numpy.array(habit.weeks, dtype=numpy.float64)
    mean = float((counts * weeks).sum() / counts.sum()) if weeks.size else 0.0
    number = float(counts.sum() ** 2 / (counts * counts).sum()) if weeks.size else 0.0
    if not mean or number <= 1:
        return 0.0
    spread = float((counts * (weeks - mean) ** 2).sum() / counts.sum()) / mean**2
    beyond = min(max(spread * number / (number - 1) - weights.steady, 0.0), MOST_SPREAD)
    return weights.caution * beyond * _run(habit, weights) / number


def _share(habit: Habit, weights: Weights) -> float:
    """The share of weeks to come that is drawn from the log."""
    mass = float(_counts(habit, weights).sum()) / _run(habit, weights)
    beside = weights.prior_weeks if habit.assumed else 0
    return mass / (mass + beside) if habit.weeks else 0.0


def from_log(habit: Habit, weights: Weights = USUAL_WEIGHTS) -> Fraction:
    """The share of weeks to come that is drawn from the log, in hundredths."""
    return Fraction(round(_share(habit, weights) * 100), 100)


class WeeksDrawn:
    """Weeks that are drawn as far ahead as they are asked for."""

    def __init__(
        self, habit: Habit, *, draws: int, seed: int, weights: Weights = USUAL_WEIGHTS
    ) -> None:
        self._draw = numpy.random.default_rng(seed)
        self._draws = draws
        self._block = weights.block
        number = len(habit.weeks)
        counts = _counts(habit, weights)
        self._mass = float(counts.sum())
        self._upto = numpy.cumsum(counts)
        turns = (numpy.arange(weights.block)[:, None] + numpy.arange(number)) % max(number, 1)
        self._log = numpy.array(habit.weeks, dtype=numpy.int64)[turns]
        self._assumed = numpy.array(habit.assumed, dtype=numpy.int64)
        self._level = self._draw.integers(max(len(habit.assumed), 1), size=draws)
        self._from_log = _share(habit, weights)
        variance = numpy.log1p(_variance(habit, weights))
        normal = numpy.random.default_rng([seed, 2]).standard_normal(draws)
        self._times = numpy.exp(normal * numpy.sqrt(variance) - variance / 2)
        self._chosen = numpy.zeros((MOST_WEEKS, draws), dtype=numpy.int32)
        self._numbers = numpy.zeros(draws, dtype=numpy.int64)

    def more(self, free_days: Sequence[int]) -> Minutes:
        """The next weeks, for each of which so many days are free."""
        blocks = [self._next() for _ in range(-(-len(free_days) // self._block))]
        weeks = numpy.concatenate(blocks)[: len(free_days)]
        return weeks * numpy.array(free_days, dtype=numpy.int64)[:, None]

    def _next(self) -> Minutes:
        """One block for each draw."""
        block = numpy.zeros((self._block, self._draws), dtype=numpy.int64)
        is_logged = self._draw.random(self._draws) < self._from_log
        logged, rest = numpy.flatnonzero(is_logged), numpy.flatnonzero(~is_logged)
        if self._from_log:
            weeks = self._log[:, self._logged(logged)] * self._times[logged]
            block[:, logged] = numpy.rint(weeks).astype(numpy.int64)
        if self._assumed.size:
            size = (self._block, rest.size)
            shares = self._draw.integers(self._assumed.shape[1], size=size)
            block[:, rest] = self._assumed[self._level[rest], shares]
        return block

    def _logged(self, rows: NDArray[numpy.int64]) -> NDArray[numpy.int64]:
        """Which block of the log comes next in those draws; it counts as drawn from then on."""
        fresh = numpy.searchsorted(self._upto, self._draw.random(rows.size) * self._mass)
        fresh = numpy.minimum(fresh, len(self._upto) - 1)
        before = self._numbers[rows]
        seen = before * self._block
        is_again = self._draw.random(rows.size) * (self._mass + seen) < seen
        which = (self._draw.random(rows.size) * before).astype(numpy.int64)
        chosen = numpy.where(is_again, self._chosen[which, rows], fresh)
        self._chosen[before, rows] = chosen
        self._numbers[rows] += 1
        return chosen
