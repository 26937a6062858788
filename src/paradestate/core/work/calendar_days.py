"""Milestones and game nights as days of a calendar."""

import datetime
from collections.abc import Iterable, Iterator, Sequence

from paradestate.core.sentence.chance import hundredths_words
from paradestate.core.sentence.repair import repaired_words
from paradestate.core.sentence.wording import capital, listed, several
from paradestate.core.work.calendar_text import CalendarDay
from paradestate.core.work.forecast_value import (
    FOUR_IN_FIVE,
    HALF,
    Forecast,
    GoalForecast,
)
from paradestate.core.work.ladder import Reached

SAID = {HALF: "half chance", FOUR_IN_FIVE: "four in five"}
"""The chances whose dates go into a calendar, in words."""


def milestone_days(forecast: Forecast, *, force: str) -> Iterator[CalendarDay]:
    """Of each milestone that isn't reached yet the days of half chance and of four in five.

    `force` tells its events from those of others.
    """
    for found in forecast.goals:
        for date in found.dates:
            if date is None or found.is_reached or date.chance not in SAID:
                continue
            words = SAID[date.chance]
            yield CalendarDay(
                about=(force, "milestone", found.goal.name, words),
                day=date.day,
                summary=f"{capital(found.goal.name)}: {words}",
                description=f"Finished by this evening: {words}, as forecast on "
                f"{forecast.begins.isoformat()}.",
            )


def repair_days(repairs: Iterable[Reached], *, force: str) -> Iterator[CalendarDay]:
    """Each day on which repairs are wanted, with the stands."""
    for each in repairs:
        if each.milestone.wanted is None:
            continue
        yield CalendarDay(
            about=(force, "repairs", each.milestone.wanted.isoformat()),
            day=each.milestone.wanted,
            summary=f"{capital(each.milestone.name)}: {several(len(each.works), 'stand')}",
            description=f"Wanted finished: {repaired_words(each.works)}.",
        )


def night_days(
    nights: Sequence[datetime.date], forecast: Forecast | None, *, force: str
) -> Iterator[CalendarDay]:
    """Each game night with what is finished by the evening before, and how likely."""
    for night in nights:
        yield CalendarDay(
            about=(force, "game night", night.isoformat()),
            day=night,
            summary=f"Game night: {force}",
            description="" if forecast is None else readiness_words(forecast.goals, night=night),
        )


def readiness_words(goals: Sequence[GoalForecast], *, night: datetime.date) -> str:
    """How likely each milestone is reached before a night: `small force 72 in 100`."""
    each = [
        f"{found.goal.name} {hundredths_words(found.before(night))}"
        for found in goals
        if not found.goal.is_undated
    ]
    return f"Ready by then: {listed(each)}." if each else ""
