"""When a milestone is reached that waits for parcels whose figures take no minutes."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.chance.forecast.drawn_finish import Lottery
from paradestate.chance.forecast.forecast import forecast
from paradestate.core.certainty import Exact, Sampled
from paradestate.core.work.forecast_value import Ahead, AwaitedParcel, Goal, GoalForecast
from paradestate.core.work.habit import Habit

MONDAY = datetime.date(2026, 3, 2)
DAY = datetime.timedelta(days=1)
EVERY_WEEK = Habit(usual=Fraction(240))
LOGGED = Habit(weeks=(240,) * 8)
FEW = Lottery(draws=200, seed=1)
NORTH = AwaitedParcel(name="North", arrivals={MONDAY + 30 * DAY: Fraction(1)})
UNSURE = AwaitedParcel(
    name="South", arrivals={MONDAY - DAY: Fraction(1, 4), MONDAY + 40 * DAY: Fraction(3, 4)}
)
TRUCKS = Goal(name="trucks", minutes=Fraction(0), unfinished=2)
FROM_NORTH = replace(TRUCKS, parcels=frozenset({"North"}))


def of(goal: Goal, *, habit: Habit = EVERY_WEEK) -> GoalForecast:
    ahead = Ahead(begins=MONDAY, parcels=(NORTH, UNSURE))
    (found,) = forecast([goal], habit=habit, ahead=ahead, lottery=FEW).goals
    return found


def days(found: GoalForecast) -> list[datetime.date | None]:
    return [None if each is None else each.day for each in found.dates]


def test_what_nobody_says_the_day_of_has_no_date() -> None:
    found = of(replace(TRUCKS, is_undated=True))
    assert not found.is_reached
    assert days(found) == [None] * 3
    assert found.before(datetime.date.max) == 0


def test_what_lacks_nothing_is_brought_on_today_and_not_before() -> None:
    found = of(TRUCKS)
    assert not found.is_reached
    assert days(found) == [MONDAY] * 3
    assert [found.before(MONDAY), found.before(MONDAY + DAY)] == [0, 1]


def test_the_day_of_the_parcel_is_the_day_without_a_week_that_anybody_knows() -> None:
    for habit in (EVERY_WEEK, LOGGED, Habit()):
        found = of(FROM_NORTH, habit=habit)
        assert days(found) == [MONDAY + 30 * DAY] * 3
        assert found.certainty == Exact()
        assert [found.before(MONDAY + each * DAY) for each in (30, 31)] == [0, 1]


def test_several_parcels_come_each_with_its_own_chance() -> None:
    found = of(replace(TRUCKS, parcels=frozenset({"North", "South"})))
    assert found.before(MONDAY + 31 * DAY) == Fraction(1, 4)
    assert days(found) == [MONDAY + 40 * DAY] * 3
    early = of(replace(TRUCKS, parcels=frozenset({"South"})))
    assert early.before(MONDAY + DAY) == Fraction(1, 4)


def test_work_and_parcel_must_both_be_done() -> None:
    for habit, certainty in ((EVERY_WEEK, Exact), (LOGGED, Sampled)):
        work = replace(TRUCKS, minutes=Fraction(480))
        alone = of(work, habit=habit)
        both = of(replace(work, parcels=frozenset({"North"})), habit=habit)
        assert isinstance(both.certainty, certainty)
        assert both.before(MONDAY + 30 * DAY) == 0
        for later in (31, 60, 200):
            night = MONDAY + later * DAY
            assert both.before(night) == alone.before(night) > 0
        assert days(alone)[0] != days(both)[0] == MONDAY + 30 * DAY


def test_what_is_reached_stays_so() -> None:
    assert of(replace(TRUCKS, unfinished=0)).is_reached
    assert of(replace(TRUCKS, unfinished=0)).before(MONDAY) == 1
