"""How long a forecast takes, and how often its dates are met by owners whose finishing is known.

Conditions: in one process; ten thousand draws from one seed, five milestones, a year of weeks
logged, two parcels to come. The owners are those of `tests/chance/forecast/owners.py`, with a
thousand draws each; what is said of one in `docs/understand/forecast.md` is from here.
"""

import datetime
from fractions import Fraction

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from paradestate.chance.forecast.forecast import forecast
from paradestate.core.work.forecast_value import CHANCES, Ahead, AwaitedParcel, Goal
from paradestate.core.work.habit import Habit
from tests.chance.forecast.owners import KINDS, trial

MONDAY = datetime.date(2026, 3, 2)
HABIT = Habit(
    weeks=(0, 300, 240, 0, 420, 60, 180, 240) * 6,
    usual=Fraction(240),
    by_day=(0, 60, 0, 120, 0, 700, 300),
    sessions=90,
)
PARCELS = tuple(
    AwaitedParcel(
        name=name,
        arrivals={MONDAY + datetime.timedelta(days=day): Fraction(1, 2) for day in (9, 30)},
    )
    for name in ("North", "South")
)
GOALS = tuple(
    Goal(
        name=f"milestone {number}",
        minutes=Fraction(690 * number),
        waiting={"North": Fraction(200 * number), "South": Fraction(100)},
    )
    for number in range(1, 6)
)
TRIALS = 400
LOGGED = (4, 8, 16, 32, 64)
DRAWS = 1_000
HUNDRED = 100


def bench_a_forecast_of_five_milestones(benchmark: BenchmarkFixture) -> None:
    """The mark: under 0.3 s."""
    ahead = Ahead(begins=MONDAY, parcels=PARCELS)
    found = benchmark(lambda: forecast(GOALS, habit=HABIT, ahead=ahead))
    assert all(date is not None for goal in found.goals for date in goal.dates)


@pytest.mark.parametrize("logged", LOGGED)
@pytest.mark.parametrize("kind", KINDS)
def bench_how_often_dates_are_met(kind: str, logged: int, benchmark: BenchmarkFixture) -> None:
    """Of each chance the owners out of a hundred who finished by its date."""
    trials = [
        trial(kind, seed=[1806, number, logged], logged=logged, draws=DRAWS)
        for number in range(TRIALS)
    ]
    benchmark(lambda: None)
    for chance in CHANCES:
        met = sum(each.is_met(chance) for each in trials)
        benchmark.extra_info[f"{chance}"] = round(HUNDRED * met / TRIALS)
