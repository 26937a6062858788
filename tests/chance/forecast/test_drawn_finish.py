"""When milestones are reached in weeks drawn by lot, beside the exact sums and the check values."""

import datetime
from collections import Counter
from fractions import Fraction

import numpy
import pytest

from paradestate.chance.forecast.drawn_finish import (
    Course,
    Lottery,
    drawn_course,
    drawn_fan,
    drawn_goal,
    sevenths,
)
from paradestate.chance.forecast.exact_finish import exact_fan, exact_goal
from paradestate.core.certainty import Sampled
from paradestate.core.span import DateSpan
from paradestate.core.work.forecast_value import (
    FOUR_IN_FIVE,
    HALF,
    NINETEEN_IN_TWENTY,
    Ahead,
    AwaitedParcel,
    Goal,
    GoalForecast,
)
from paradestate.core.work.habit import Habit

MONDAY = datetime.date(2026, 3, 2)
LOTTERY = Lottery(draws=4_000, seed=3)
ASSUMED = Habit(usual=Fraction(240))
AWAY = (DateSpan(first=datetime.date(2026, 3, 11), last=datetime.date(2026, 3, 20)),)
PARCELS = (
    AwaitedParcel(
        name="North",
        arrivals={
            datetime.date(2026, 3, 10): Fraction(7, 10),
            datetime.date(2026, 4, 1): Fraction(3, 10),
        },
    ),
    AwaitedParcel(name="South", arrivals={datetime.date(2026, 3, 25): Fraction(1)}),
)
GOAL = Goal(
    name="all",
    minutes=Fraction(1500),
    waiting={"North": Fraction(600), "South": Fraction(300), "East": Fraction(0)},
)
AHEAD = Ahead(begins=MONDAY, away=AWAY, parcels=PARCELS)


def drawn(goal: Goal, habit: Habit, *, ahead: Ahead = AHEAD) -> GoalForecast:
    course = drawn_course(habit, [goal], ahead=ahead, lottery=LOTTERY)
    return drawn_goal(goal, course, ahead=ahead, lottery=LOTTERY)


@pytest.mark.parametrize("goal", [GOAL, Goal(name="free", minutes=Fraction(900))])
def test_drawn_weeks_come_as_near_to_the_exact_chances_as_they_say(goal: Goal) -> None:
    levels = [Counter(level) for level in ASSUMED.assumed]
    exact = exact_goal(goal, ahead=AHEAD, levels=levels, most_weeks=60)
    near = drawn(goal, ASSUMED)
    assert isinstance(near.certainty, Sampled)
    off = [abs(near.by_week(week) - exact.by_week(week)) for week in range(20)]
    assert max(off) <= near.certainty.plus_or_minus * Fraction(3, 2)


def test_the_fan_of_drawn_weeks_is_near_the_exact_one() -> None:
    levels = [Counter(level) for level in ASSUMED.assumed]
    exact = exact_fan(GOAL, ahead=AHEAD, levels=levels, weeks=8)
    course = drawn_course(ASSUMED, [GOAL], ahead=AHEAD, lottery=LOTTERY)
    near = drawn_fan(GOAL, course, weeks=8)
    assert [each.week for each in near] == list(range(9))
    for mine, theirs in zip(near, exact, strict=True):
        for chance in (HALF, FOUR_IN_FIVE):
            assert abs(mine.at_least[chance] - theirs.at_least[chance]) <= 60
        assert list(mine.at_least.values()) == sorted(mine.at_least.values())


def test_a_log_of_none_one_or_two_batches_gives_the_dates_of_the_check_value() -> None:
    """Story 13 of the design: weeks of 0, 1 and 2 in proportion 1:2:1, three batches left."""
    order = numpy.random.default_rng(13).permutation([0] * 13 + [60] * 26 + [120] * 13)
    habit = Habit(weeks=tuple(int(each) for each in order), usual=Fraction(60))
    goal = Goal(name="three batches", minutes=Fraction(180))
    found = drawn(goal, habit, ahead=Ahead(begins=MONDAY))
    assert [date and date.week for date in found.dates] == [3, 4, 6]


def course(*weeks: int, by_day: tuple[int, ...] = (0,) * 7, away: tuple[int, ...] = ()) -> Course:
    sums = numpy.cumsum([0, *weeks])[:, None] * 7
    return Course(
        sums=numpy.repeat(sums, 10, axis=1),
        arrivals={},
        by_day=numpy.cumsum(by_day),
        is_whole=numpy.array([week not in away for week in range(len(weeks) + 1)]),
    )


def day_of(minutes: int, made: Course) -> int | None:
    goal = Goal(name="x", minutes=Fraction(minutes))
    found = drawn_goal(goal, made, ahead=Ahead(begins=MONDAY), lottery=Lottery(draws=10, seed=1))
    date = found.dates[0]
    return None if date is None else (date.day - MONDAY).days + 1


def test_the_day_of_a_week_is_the_one_by_which_so_much_is_usually_done() -> None:
    """Two thirds on the sixth day of a week, the rest on the last."""
    saturdays = (0, 0, 0, 0, 0, 200, 100)
    made = course(60, 60, 60, by_day=saturdays, away=(3,))
    assert day_of(40, made) == 6
    assert day_of(41, made) == 7
    assert day_of(60, made) == 7
    assert day_of(61, made) == 13
    assert day_of(121, made) == 21
    assert day_of(181, made) is None
    assert day_of(0, made) == 0


def test_without_a_log_the_day_is_the_last_of_its_week() -> None:
    assert day_of(1, course(60, 60)) == 7


def test_weeks_are_drawn_until_nearly_all_are_reached_and_no_longer_than_ten_years() -> None:
    ahead = Ahead(begins=MONDAY)
    far = Goal(name="far", minutes=Fraction(60 * 40))
    assert drawn_course(Habit(weeks=(60,)), [far], ahead=ahead, lottery=LOTTERY).weeks == 52
    never = Goal(name="never", minutes=Fraction(60 * 600))
    few = Lottery(draws=10, seed=1)
    made = drawn_course(Habit(weeks=(60,)), [never], ahead=ahead, lottery=few)
    assert made.weeks == 520
    assert drawn_goal(never, made, ahead=ahead, lottery=few).dates == (None, None, None)
    idle = drawn_course(Habit(weeks=(0,)), [far], ahead=ahead, lottery=few)
    assert idle.weeks == 26


def test_dates_lie_between_those_of_other_ranks() -> None:
    found = drawn(GOAL, Habit(weeks=(0, 300, 240, 0, 420, 60), by_day=(1,) * 7))
    for date in found.dates:
        assert date is not None
        assert date.latest is not None
        assert date.earliest <= date.day <= date.latest
    few = Lottery(draws=30, seed=1)
    made = drawn_course(ASSUMED, [GOAL], ahead=AHEAD, lottery=few)
    last = drawn_goal(GOAL, made, ahead=AHEAD, lottery=few).dates[-1]
    assert last is not None
    assert (last.chance, last.latest) == (NINETEEN_IN_TWENTY, None)
    one = Lottery(draws=1, seed=1)
    made = drawn_course(ASSUMED, [GOAL], ahead=AHEAD, lottery=one)
    date = drawn_goal(GOAL, made, ahead=AHEAD, lottery=one).dates[0]
    assert date is not None
    assert date.earliest <= date.day


def test_how_far_chances_may_be_off_is_rounded_up_to_a_thousandth() -> None:
    assert Lottery().certainty == Sampled(plus_or_minus=Fraction(1, 100), draws=10_000, seed=1)
    assert Lottery(draws=1_000).certainty.plus_or_minus == Fraction(31, 1000)


def test_minutes_are_kept_in_sevenths_rounded_up() -> None:
    assert [sevenths(Fraction(each)) for each in ("0", "1", "0.01")] == [0, 7, 1]
