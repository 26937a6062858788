"""When each milestone is reached."""

import datetime
from fractions import Fraction

import pytest

from paradestate.chance.forecast.drawn_finish import Lottery
from paradestate.chance.forecast.forecast import MOST_FAN_WEEKS, forecast
from paradestate.core.certainty import Exact, Sampled
from paradestate.core.work.forecast_value import (
    FOUR_IN_FIVE,
    NINETEEN_IN_TWENTY,
    Ahead,
    AwaitedParcel,
    Goal,
)
from paradestate.core.work.habit import Habit
from tests.chance.forecast.owners import KINDS, trial

MONDAY = datetime.date(2026, 3, 2)
AHEAD = Ahead(begins=MONDAY)
FOUR_HOURS = Habit(usual=Fraction(240))
FEW = Lottery(draws=500, seed=1)


def goals(*hours: int) -> list[Goal]:
    return [Goal(name=f"{each} h", minutes=Fraction(60 * each)) for each in hours]


def test_the_owners_word_alone_is_gone_through_exactly() -> None:
    found = forecast(goals(19, 34), habit=FOUR_HOURS, ahead=AHEAD)
    assert [each.certainty for each in found.goals] == [Exact(), Exact()]
    assert [date and date.week for date in found.goals[0].dates] == [6, 8, 12]
    assert (found.evidence.logged, found.evidence.usual) == (Fraction(0), Fraction(240))
    assert found.fan[-1].at_least[NINETEEN_IN_TWENTY] == 34 * 60


def test_much_work_and_many_ways_for_parcels_to_come_are_drawn() -> None:
    assert forecast(goals(64), habit=FOUR_HOURS, ahead=AHEAD).goals[0].certainty == Exact()
    much = forecast(goals(65), habit=FOUR_HOURS, ahead=AHEAD, lottery=FEW)
    assert isinstance(much.goals[0].certainty, Sampled)
    days = [MONDAY + datetime.timedelta(days=day) for day in range(9)]
    parcel = AwaitedParcel(name="North", arrivals=dict.fromkeys(days, Fraction(1, 9)))
    waiting = Ahead(begins=MONDAY, parcels=(parcel,))
    many = forecast(goals(4), habit=FOUR_HOURS, ahead=waiting, lottery=FEW)
    assert isinstance(many.goals[0].certainty, Sampled)


def test_a_log_is_drawn_from() -> None:
    habit = Habit(weeks=(240,) * 4, usual=Fraction(240), sessions=9)
    found = forecast(goals(8), habit=habit, ahead=AHEAD, lottery=FEW)
    assert isinstance(found.goals[0].certainty, Sampled)
    assert found.evidence.sessions == 9
    assert 0 < found.evidence.logged < 1


def test_the_same_question_has_the_same_answer() -> None:
    habit = Habit(weeks=(0, 300, 120), usual=Fraction(240))
    assert forecast(goals(8), habit=habit, ahead=AHEAD, lottery=FEW) == forecast(
        goals(8), habit=habit, ahead=AHEAD, lottery=FEW
    )


def test_the_fan_ends_where_the_last_is_nearly_sure_or_after_two_years() -> None:
    habit = Habit(weeks=(240,), usual=None)
    assert len(forecast(goals(8, 16), habit=habit, ahead=AHEAD, lottery=FEW).fan) == 5
    idle = forecast(goals(8), habit=Habit(), ahead=AHEAD, lottery=FEW)
    assert len(idle.fan) <= MOST_FAN_WEEKS
    assert idle.goals[0].dates == (None, None, None)
    slow = forecast(goals(600), habit=habit, ahead=AHEAD, lottery=FEW)
    assert len(slow.fan) == MOST_FAN_WEEKS + 1
    assert forecast([], habit=habit, ahead=AHEAD, lottery=FEW).fan == ()


def test_a_parcel_that_nothing_is_known_of_is_refused() -> None:
    goal = Goal(name="x", minutes=Fraction(60), waiting={"North": Fraction(60)})
    with pytest.raises(ValueError, match="North"):
        forecast([goal], habit=FOUR_HOURS, ahead=AHEAD)


TRIALS = 40
LOGGED = (16, 32)


@pytest.mark.slow
@pytest.mark.unmeasured
def test_invented_owners_finish_by_the_date_of_four_in_five_about_four_times_in_five() -> None:
    """A small sample of what `bench/bench_forecast.py` does; 240 trials vary by 5 in 100."""
    met = [
        trial(kind, seed=[7, number, logged], logged=logged, draws=300).is_met(FOUR_IN_FIVE)
        for kind in KINDS
        for logged in LOGGED
        for number in range(TRIALS)
    ]
    assert 0.72 <= sum(met) / len(met) <= 0.88
