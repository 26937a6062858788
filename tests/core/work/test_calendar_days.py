"""Milestones and game nights as days of a calendar."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.core.certainty import Exact
from paradestate.core.work.calendar_days import (
    milestone_days,
    night_days,
    readiness_words,
    repair_days,
)
from paradestate.core.work.forecast_value import (
    CHANCES,
    FOUR_IN_FIVE,
    HALF,
    Evidence,
    Forecast,
    Goal,
    GoalForecast,
    finish_date,
)
from paradestate.core.work.order_of_work import ladder
from tests.core.work.works import MINUTES, in_repair, sound_load

MONDAY = datetime.date(2026, 3, 2)
NIGHT = datetime.date(2026, 3, 9)
EVIDENCE = Evidence(
    sessions=0, weeks=0, left_out=0, logged=Fraction(0), usual=None, block=3, prior_weeks=4
)


def found(name: str, *, minutes: int, days: int | None) -> GoalForecast:
    return GoalForecast(
        goal=Goal(name=name, minutes=Fraction(minutes)),
        begins=MONDAY,
        by_day=(*(Fraction(0),) * 7, Fraction(3, 4)),
        certainty=Exact(),
        dates=tuple(
            None
            if days is None or chance > FOUR_IN_FIVE
            else finish_date(days, chance=chance, begins=MONDAY)
            for chance in CHANCES
        ),
    )


FORECAST = Forecast(
    begins=MONDAY,
    goals=(
        found("small force", minutes=60, days=7),
        found("all", minutes=90, days=None),
        found("ready", minutes=0, days=0),
    ),
    fan=(),
    evidence=EVIDENCE,
)


def test_a_milestone_has_a_day_of_half_chance_and_one_of_four_in_five() -> None:
    days = tuple(milestone_days(FORECAST, force="Marenz"))
    assert [(each.summary, each.day) for each in days] == [
        ("Small force: half chance", datetime.date(2026, 3, 8)),
        ("Small force: four in five", datetime.date(2026, 3, 8)),
    ]
    assert days[0].about == ("Marenz", "milestone", "small force", "half chance")
    assert days[1].description == (
        "Finished by this evening: four in five, as forecast on 2026-03-02."
    )
    assert HALF in CHANCES


def test_a_game_night_says_what_is_likely_to_be_ready() -> None:
    (day,) = night_days([NIGHT], FORECAST, force="Marenz")
    assert (day.summary, day.day) == ("Game night: Marenz", NIGHT)
    assert day.description == (
        "Ready by then: small force 75 in 100, all 75 in 100 and ready 75 in 100."
    )
    (bare,) = night_days([NIGHT], None, force="Marenz")
    assert (bare.description, bare.about) == ("", day.about)
    assert readiness_words((), night=NIGHT) == ""


def test_what_has_no_date_is_not_said_to_be_unlikely() -> None:
    sure = FORECAST.goals[0]
    undated = replace(sure, goal=replace(sure.goal, is_undated=True))
    assert readiness_words((sure, undated), night=NIGHT) == "Ready by then: small force 75 in 100."


def test_repairs_stand_on_the_day_on_which_they_are_wanted() -> None:
    repair = in_repair("3 Company / 2 Section", wanted=NIGHT, note="bayonet snapped")
    found = ladder(sound_load(MINUTES, repairs=(repair,)))
    (day,) = repair_days((*found.repairs, *found.reached), force="Osk")
    assert (day.day, day.about) == (NIGHT, ("Osk", "repairs", "2026-03-09"))
    assert day.summary == "Repairs for 9 March 2026: 1 stand"
    assert day.description == "Wanted finished: 3 Company / 2 Section (bayonet snapped)."
