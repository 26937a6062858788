"""Owners invented by lot, whose finishing is known because their days to come are drawn as well.

*Steady*: two evenings a week in the mean. *Bursty*: four a week in spells that last a month in the
mean, and none in spells as long. *Drifting*: their liking for it wanders by 5 % a week. An evening
takes one to three hours of an owner who does four hours a week, and as much longer or shorter of
another. What owners say of their week is wrong by 30 % (one standard deviation).
"""

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy
from numpy.random import Generator
from numpy.typing import NDArray

from paradestate.chance.forecast.drawn_finish import Lottery
from paradestate.chance.forecast.forecast import forecast
from paradestate.chance.forecast.weeks_drawn import USUAL_WEIGHTS, Weights
from paradestate.core.work.forecast_value import Ahead, Goal, GoalForecast
from paradestate.core.work.habit import DAYS, habit_of

KINDS = ("steady", "bursty", "drifting")
TODAY = datetime.date(2026, 3, 2)
HOURS = 4
LONGEST = 300
"""Weeks within which every owner has finished, or nearly."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Owner:
    """Somebody's minutes on each day, and what they say of their week."""

    days: NDArray[numpy.int64]
    usual: Fraction
    mean: float
    """Minutes in a week in the long run, or at the start of the log where they drift."""


def owner(kind: str, draw: Generator, *, weeks: int) -> Owner:
    """An owner of a kind, with so many weeks."""
    mean = HOURS * 60 * float(numpy.exp(draw.normal(0, 0.4)))
    evenings = draw.poisson(2 * _liking(kind, draw, weeks=weeks))
    number = int(evenings.sum())
    lengths = numpy.round(draw.integers(60, 181, size=number) * mean / (HOURS * 60))
    on = numpy.repeat(numpy.arange(weeks), evenings) * DAYS + draw.integers(DAYS, size=number)
    days = numpy.bincount(on, weights=lengths, minlength=weeks * DAYS).astype(numpy.int64)
    usual = Fraction(round(mean * float(numpy.exp(draw.normal(0, 0.3)))))
    return Owner(days=days, usual=usual, mean=mean)


def _liking(kind: str, draw: Generator, *, weeks: int) -> NDArray[numpy.float64]:
    """How much is done in each week, 1 being usual."""
    if kind == "steady":
        return numpy.ones(weeks)
    if kind == "bursty":
        turns = draw.random(weeks) < 0.25
        is_on = (numpy.cumsum(turns) + int(draw.integers(2))) % 2
        return is_on.astype(numpy.float64) * 2
    wandering: NDArray[numpy.float64] = numpy.exp(numpy.cumsum(draw.normal(0, 0.05, weeks)))
    return wandering


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """What was forecast of one owner, and when they finished."""

    found: GoalForecast
    finished: int
    """Days."""

    def is_met(self, chance: Fraction) -> bool:
        """Whether they finished by the day given with a chance; one beyond all counts as met."""
        date = next((each for each in self.found.dates if each and each.chance == chance), None)
        return date is None or self.finished <= (date.day - TODAY).days + 1


def trial(
    kind: str,
    *,
    seed: Sequence[int],
    logged: int,
    draws: int,
    weights: Weights = USUAL_WEIGHTS,
) -> Trial:
    """A forecast after so many weeks of work that takes four to twenty-five, and what came."""
    draw = numpy.random.default_rng(seed)
    made = owner(kind, draw, weeks=logged + LONGEST)
    past, future = made.days[: logged * DAYS], made.days[logged * DAYS :]
    first = TODAY - datetime.timedelta(days=len(past))
    minutes = {first + datetime.timedelta(days=day): int(spent) for day, spent in enumerate(past)}
    work = Fraction(round(made.mean * draw.uniform(4, 25)))
    habit = habit_of(minutes, since=first, begins=TODAY, usual=made.usual)
    found = forecast(
        [Goal(name="all", minutes=work)],
        habit=habit,
        ahead=Ahead(begins=TODAY),
        lottery=Lottery(draws=draws, seed=int(draw.integers(10**6)), weights=weights),
    )
    finished = int((numpy.cumsum(future) < int(work)).sum()) + 1
    return Trial(found=found.goals[0], finished=finished)
