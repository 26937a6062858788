"""When work is reached in weeks that don't depend on each other."""

import datetime
from fractions import Fraction
from itertools import product

import pytest
from scipy.stats import binom

from paradestate.chance.forecast.exact_finish import exact_fan, exact_goal, left_by_week
from paradestate.core.certainty import Exact
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

MONDAY = datetime.date(2026, 3, 2)
WEEKS = {0: 1, 60: 2, 120: 1}
"""Nothing, one batch of an hour or two, with chances of a quarter, a half and a quarter."""

THREE = Goal(name="three batches", minutes=Fraction(180))
WAITING = Goal(name="three batches", minutes=Fraction(180), waiting={"North": Fraction(180)})


def in_week(week: int) -> datetime.date:
    return MONDAY + datetime.timedelta(days=7 * (week - 1) + 2)


def parcel(weeks: dict[int, Fraction], name: str = "North") -> AwaitedParcel:
    return AwaitedParcel(
        name=name, arrivals={in_week(week): chance for week, chance in weeks.items()}
    )


NORTH = parcel({2: Fraction(7, 10), 5: Fraction(3, 10)})


def found(goal: Goal, *parcels: AwaitedParcel, **said: tuple[DateSpan, ...]) -> GoalForecast:
    ahead = Ahead(begins=MONDAY, parcels=parcels, **said)
    return exact_goal(goal, ahead=ahead, levels=[WEEKS], most_weeks=100)


def test_three_batches_at_none_one_or_two_a_week() -> None:
    """Check value of the design: after n weeks the batches are binomial of 2n and a half."""
    three = found(THREE)
    assert three.by_week(2) == Fraction(5, 16)
    assert [f"{float(three.by_week(week)):.1%}" for week in (3, 4, 5, 6)] == [
        "65.6%",
        "85.5%",
        "94.5%",
        "98.1%",
    ]
    assert [date and date.week for date in three.dates] == [3, 4, 6]
    assert three.certainty == Exact()


@pytest.mark.parametrize("week", range(10))
def test_the_chances_are_those_of_another_program(week: int) -> None:
    """scipy.stats.binom."""
    theirs = binom.sf(2, 2 * week, 0.5)
    assert float(found(THREE).by_week(week)) == pytest.approx(theirs, abs=1e-12) or (
        found(THREE).by_week(week) > Fraction(199, 200)
    )


def test_work_that_waits_for_a_parcel_begins_in_the_week_after_it_comes() -> None:
    """Check value of the design: in week 2 with 7 in 10, else in week 5."""
    three = found(WAITING, NORTH)
    assert [f"{float(three.by_week(week)):.1%}" for week in (6, 7, 8, 9)] == [
        "59.9%",
        "75.5%",
        "88.3%",
        "95.2%",
    ]
    assert [date and (date.chance, date.week) for date in three.dates] == [
        (HALF, 6),
        (FOUR_IN_FIVE, 8),
        (NINETEEN_IN_TWENTY, 9),
    ]
    assert three.dates[0] is not None
    assert three.dates[0].day == datetime.date(2026, 4, 12)


def by_hand(goal: Goal, *, parcels: tuple[AwaitedParcel, ...], weeks: int) -> Fraction:
    """The chance that a goal is reached by a week, going through every course of all weeks."""
    chance = Fraction(0)
    for days in product(*(each.arrivals.items() for each in parcels)):
        come = {
            each.name: (day - MONDAY).days // 7 + 1
            for each, (day, _) in zip(parcels, days, strict=True)
        }
        weight = Fraction(1)
        for _, each in days:
            weight *= each
        for course in product(WEEKS.items(), repeat=weeks):
            ways = Fraction(1)
            left = goal.minutes - sum(goal.waiting.values())
            for week, (minutes, number) in enumerate(course, 1):
                ways *= Fraction(number, 4)
                left = max(Fraction(0), left - minutes)
                left += sum(work for name, work in goal.waiting.items() if come[name] == week)
            is_here = all(come[name] <= weeks for name in goal.waiting)
            chance += weight * ways * (is_here and not left)
    return chance


@pytest.mark.parametrize("weeks", range(6))
def test_several_parcels_are_as_if_every_course_were_gone_through(weeks: int) -> None:
    parcels = (parcel({1: Fraction(1, 2), 3: Fraction(1, 2)}), parcel({2: Fraction(1)}, "South"))
    goal = Goal(
        name="some",
        minutes=Fraction(180),
        waiting={"North": Fraction(60), "South": Fraction(60)},
    )
    assert found(goal, *parcels).by_week(weeks) == by_hand(goal, parcels=parcels, weeks=weeks)


def test_a_parcel_that_is_here_keeps_nothing_waiting() -> None:
    here = AwaitedParcel(name="North", arrivals={MONDAY - datetime.timedelta(1): Fraction(1)})
    assert found(WAITING, here).by_day == found(THREE).by_day


def test_a_week_with_days_away_brings_its_share() -> None:
    away = (DateSpan(first=MONDAY, last=MONDAY + datetime.timedelta(days=6)),)
    assert [found(THREE, away=away).by_week(week) for week in (2, 3)] == [0, Fraction(5, 16)]
    most = (DateSpan(first=MONDAY, last=MONDAY + datetime.timedelta(days=5)),)
    small = Goal(name="a seventh", minutes=Fraction(60, 7))
    assert found(small, away=most).by_week(1) == Fraction(3, 4)
    more = Goal(name="more", minutes=Fraction(61, 7))
    assert found(more, away=most).by_week(1) == Fraction(1, 4)


def test_levels_are_equally_likely() -> None:
    levels = [{60: 1}, {120: 1}]
    goal = exact_goal(THREE, ahead=Ahead(begins=MONDAY), levels=levels, most_weeks=9)
    assert [goal.by_week(week) for week in (1, 2, 3)] == [0, Fraction(1, 2), 1]


def test_what_is_never_reached_has_no_date() -> None:
    idle = exact_goal(THREE, ahead=Ahead(begins=MONDAY), levels=[{0: 1}], most_weeks=9)
    assert idle.dates == (None, None, None)
    assert idle.by_week(9) == 0


def test_nothing_left_is_reached_at_once() -> None:
    done = found(Goal(name="done", minutes=Fraction(0)))
    assert [date and date.week for date in done.dates] == [0, 0, 0]
    assert done.by_day == (Fraction(1),)


def test_all_ways_add_up_in_every_week() -> None:
    ahead = Ahead(begins=MONDAY, parcels=(NORTH,))
    for left in left_by_week(WAITING, ahead=ahead, levels=[WEEKS, {60: 4}], most_weeks=20):
        assert sum(left.ways.values()) == left.whole


def test_the_fan_says_how_much_is_done_with_which_chance() -> None:
    fan = exact_fan(THREE, ahead=Ahead(begins=MONDAY), levels=[WEEKS], weeks=3)
    assert [each.week for each in fan] == [0, 1, 2, 3]
    assert set(fan[0].at_least.values()) == {0}
    assert fan[1].at_least[HALF] == 60
    assert fan[1].at_least[NINETEEN_IN_TWENTY] == 0
    assert fan[2].at_least[HALF] == 120
    assert fan[3].at_least[HALF] == 180
    assert fan[3].at_least[FOUR_IN_FIVE] == 120
