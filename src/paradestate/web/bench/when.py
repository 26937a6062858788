"""When a force can be played: the fan, the dates, and what is ready on game nights."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.sentence.forecast import (
    arrival_sentences,
    before_words,
    calibration_sentence,
    dates_of,
    deadline_sentence,
    learned_sentences,
    rests_sentence,
    sure_sentence,
    thin_sentence,
    without_date_sentence,
    without_minutes_sentences,
)
from paradestate.core.sentence.wording import capital, listed, several
from paradestate.core.span import MONTH_NAMES
from paradestate.core.work.forecast_value import FOUR_IN_FIVE, HALF, Forecast, GoalForecast
from paradestate.journeys.bench.bench import OrderOfWork
from paradestate.journeys.bench.forecast import kept_today
from paradestate.sheet.finish_fan import PHONE, WIDE, Course, Level, fan_key, finish_fan
from paradestate.sheet.svg import Drawing

MOST_NIGHTS = 6
"""Game nights that are told one by one; the calendar has all of a year."""
MOST_BESIDE = 4
"""Milestones of which each night says how likely they are; the calendar has all."""
MOST_LEVELS = 8
"""Milestones that are levels of the fan; the table has all."""
SHORT_NAME = 3
NEAR = 300
"""Days within which a day is said without its year."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DateRow:
    """A milestone with its three dates."""

    name: str
    dates: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NightRow:
    """A game night with how likely each milestone is reached by the evening before."""

    day: str
    chances: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WhenView:
    """The forecast as it is shown."""

    fan: tuple[Drawing, Drawing] | None
    """None where nothing is left to do."""
    key: tuple[tuple[Drawing, str], ...]
    rows: tuple[DateRow, ...]
    nights: tuple[NightRow, ...]
    """Game nights to come, of those milestones that have a date."""
    more_nights: str
    """What of game nights isn't shown; empty where all is."""
    sentences: tuple[str, ...]
    learned: tuple[str, ...]
    is_kept: bool
    """Whether a forecast of today was written down."""


def when_view(order: OrderOfWork, *, today: datetime.date) -> WhenView | None:
    """The forecast of an order of work; None where nothing says how much is done in a week."""
    found = order.dates.forecast
    if found is None or not order.ladder.rungs:
        return None
    return WhenView(
        fan=_fan(order, found),
        key=fan_key(),
        rows=tuple(
            DateRow(name=each.goal.name, dates=tuple(_dates(each, today=today)))
            for each in found.goals
        ),
        nights=tuple(_nights(order, found, today=today)),
        more_nights=_more_nights(order, found),
        sentences=tuple(filter(None, _sentences(order, found))),
        learned=tuple(each.strip() for each in _learned(order)),
        is_kept=kept_today(order.worked, today=today),
    )


def _nights(order: OrderOfWork, found: Forecast, *, today: datetime.date) -> Iterator[NightRow]:
    for night in order.dates.nights[:MOST_NIGHTS]:
        yield NightRow(
            day=short_day(night, today=today),
            chances=tuple(before_words(each, night) for each in found.goals),
        )


def _more_nights(order: OrderOfWork, found: Forecast) -> str:
    """Nights, and milestones on each, that the table leaves out."""
    nights = len(order.dates.nights) - MOST_NIGHTS
    goals = len(found.goals) - MOST_BESIDE
    left = [
        *([f"{several(nights, 'more night')} within a year"] if nights > 0 else ()),
        *([f"{several(goals, 'more milestone')} on each"] if goals > 0 else ()),
    ]
    return f"{capital(listed(left))}: the calendar has them all." if left else ""


def _learned(order: OrderOfWork) -> Iterator[str]:
    return learned_sentences(order.worked.learned, stages=order.force.bench.stages)


def _dates(found: GoalForecast, *, today: datetime.date) -> Iterator[str]:
    for at in found.dates:
        if found.is_reached:
            yield "now"
        else:
            yield "-" if at is None else short_day(at.day, today=today)


def _fan(order: OrderOfWork, found: Forecast) -> tuple[Drawing, Drawing] | None:
    levels = [
        Level(name=each.goal.name, minutes=each.goal.minutes)
        for each in found.goals
        if each.goal.minutes
    ]
    course = Course(
        done=order.worked.log.minutes,
        begins=found.begins,
        fan=found.fan,
        levels=[*levels[: MOST_LEVELS - 1], *levels[MOST_LEVELS - 1 :][-1:]],
        nights=order.dates.nights,
    )
    wide, narrow = (finish_fan(course, width=width) for width in (WIDE, PHONE))
    return None if wide is None or narrow is None else (wide, narrow)


def _sentences(order: OrderOfWork, found: Forecast) -> Iterator[str]:
    if order.deadline is not None:
        yield deadline_sentence(found, order.deadline)
    if found.has_work:
        yield rests_sentence(found.evidence)
        yield thin_sentence(found.evidence)
    yield from without_minutes_sentences(order.ladder, [each.goal for each in found.goals])
    yield from arrival_sentences(order.ladder, parcels=found.goals[-1].goal.waiting)
    yield without_date_sentence(found)
    if found.has_work:
        yield sure_sentence(found)
    yield calibration_sentence(order.calibration)


def lead_sentence(order: OrderOfWork, name: str, *, today: datetime.date) -> str:
    """The dates of a milestone in the sentence a sheet opens with; empty where there are none."""
    found = order.forecast_of.get(name)
    at = {} if found is None else dates_of(found)
    half, four = at.get(HALF), at.get(FOUR_IN_FIVE)
    if half is None:
        return ""
    more = "" if four is None else f", four in five by {short_day(four.day, today=today)}"
    return f"Half chance by {short_day(half.day, today=today)}{more}."


def short_day(day: datetime.date, *, today: datetime.date) -> str:
    """A day as it stands beside a rail: `19 Mar`, and one far from today `Mar 2028`."""
    name = MONTH_NAMES[day.month - 1][:SHORT_NAME]
    is_near = abs((day - today).days) <= NEAR
    return f"{day.day} {name}" if is_near else f"{name} {day.year}"
