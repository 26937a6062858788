"""When work will be done, as values: what is to be done, what it waits for, and with what chance.

A milestone is a number of minutes of work in the one order in which all work is done: those of the
milestones before it are among its own. Weeks to come are numbered from 1, seven days each.
"""

import datetime
from bisect import bisect_left
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from paradestate.core.certainty import Certainty
from paradestate.core.span import DateSpan
from paradestate.core.work.habit import DAYS, days_of_week, free_days, later

HALF = Fraction(1, 2)
FOUR_IN_FIVE = Fraction(4, 5)
NINETEEN_IN_TWENTY = Fraction(19, 20)
CHANCES = (HALF, FOUR_IN_FIVE, NINETEEN_IN_TWENTY)
"""The chances for which dates are given."""

FAN = (NINETEEN_IN_TWENTY, FOUR_IN_FIVE, HALF, 1 - FOUR_IN_FIVE, 1 - NINETEEN_IN_TWENTY)
"""The chances of the edges of the fan."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Goal:
    """The work up to a milestone."""

    name: str
    minutes: Fraction
    """All that is left of it, the work of earlier milestones included."""
    waiting: Mapping[str, Fraction] = field(default_factory=dict)
    """Parcel to those of these minutes that can't begin before it is there."""
    parcels: frozenset[str] = frozenset()
    """Parcels without which it isn't reached, though nothing that they bring takes minutes."""
    unfinished: int = 0
    """Its stands that aren't finished, those that take no minutes included."""
    is_undated: bool = False
    """Whether it waits for figures alone, and nobody says when all of them come."""

    @property
    def is_reached(self) -> bool:
        """Whether nothing is left to do, and all its stands are finished."""
        return not self.minutes and not self.unfinished


@dataclass(frozen=True, slots=True, kw_only=True)
class AwaitedParcel:
    """A parcel that isn't here yet. Work on it begins in the week after the one in which it comes.

    So no date rests on figures that come and are painted on one evening.
    """

    name: str
    arrivals: Mapping[datetime.date, Fraction]
    """Day to the chance that it comes on that day; together 1."""

    def __post_init__(self) -> None:
        if sum(self.arrivals.values()) != 1:
            raise ValueError(f"the chances of {self.name} add up to {sum(self.arrivals.values())}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Ahead:
    """What is known of the weeks to come."""

    begins: datetime.date
    """First day of the first of them."""
    away: tuple[DateSpan, ...] = ()
    """When no work is done."""
    parcels: tuple[AwaitedParcel, ...] = ()

    def free_days(self, week: int) -> int:
        """Days of a week to come on which the owner is there."""
        return free_days(days_of_week(self.begins, week), away=self.away)


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishDate:
    """By when something is done with a given chance."""

    chance: Fraction
    day: datetime.date
    week: int
    """Of the weeks to come that of the day; nought where it is done already."""
    earliest: datetime.date
    latest: datetime.date | None
    """In 19 of 20 samples the day lies between these; None: after the last week looked at."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GoalForecast:
    """When one milestone is reached."""

    goal: Goal
    begins: datetime.date
    """First of the days to come."""
    by_day: tuple[Fraction, ...]
    """The chance that it is reached by the end of so many days to come, the first of none."""
    certainty: Certainty
    dates: tuple[FinishDate | None, ...]
    """For each of CHANCES; None where it isn't reached in the weeks looked at."""

    @property
    def is_reached(self) -> bool:
        """Whether nothing is left to do, and all its stands are finished."""
        return self.goal.is_reached

    def before(self, day: datetime.date) -> Fraction:
        """The chance that it is reached by the evening before a day, such as one of a game."""
        days = max(0, (day - self.begins).days)
        return self.by_day[min(days, len(self.by_day) - 1)]

    def by_end_of(self, day: datetime.date) -> Fraction | None:
        """The chance that it is reached by the evening of a day; None where nobody can say."""
        return None if self.goal.is_undated else self.before(later(day, 1))

    def by_week(self, week: int) -> Fraction:
        """The chance that it is reached by the end of a week to come."""
        return self.by_day[min(DAYS * week, len(self.by_day) - 1)]


@dataclass(frozen=True, slots=True, kw_only=True)
class FanWeek:
    """How much work is done by the end of a week to come."""

    week: int
    at_least: Mapping[Fraction, Fraction]
    """Chance to minutes of which at least so many are done with it, falling."""


MOSTLY = Fraction(1, 2)
"""Share of the log below which dates are said to be mostly assumed."""

FEW_WEEKS = 8
"""Whole weeks of a log that does without `week` (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """What a forecast rests on."""

    sessions: int
    """That were logged; several of a day are several."""
    weeks: int
    """Whole weeks of the log."""
    left_out: int
    """Weeks of it with a day away."""
    logged: Fraction
    """Share of the weeks to come that is drawn from the log; the rest is assumed."""
    usual: Fraction | None
    """The owner's own minutes in a week."""
    block: int
    """Weeks in a row that are drawn together."""
    prior_weeks: int
    """Weeks of the log that the assumption weighs as much as."""

    @property
    def is_thin(self) -> bool:
        """Whether hardly anything logged stands behind the dates."""
        return self.weeks < FEW_WEEKS if self.usual is None else self.logged < MOSTLY


@dataclass(frozen=True, slots=True, kw_only=True)
class Forecast:
    """When each milestone is reached, in the order given."""

    begins: datetime.date
    goals: tuple[GoalForecast, ...]
    fan: tuple[FanWeek, ...]
    """Of the work of the last milestone."""
    evidence: Evidence

    @property
    def has_work(self) -> bool:
        """Whether any work is left; without it dates rest on parcels alone."""
        return any(each.goal.minutes for each in self.goals)


def first_reached(by_day: tuple[Fraction, ...], chance: Fraction) -> int | None:
    """The first number of days by which something has so great a chance; None where none has."""
    days = bisect_left(by_day, chance)
    return None if days == len(by_day) else days


def finish_date(
    days: int,
    *,
    chance: Fraction,
    begins: datetime.date,
    between: tuple[int, int | None] | None = None,
) -> FinishDate:
    """The date of a number of days to come, and between which it lies in 19 of 20 samples."""
    least, most = between or (days, days)
    return FinishDate(
        chance=chance,
        day=later(begins, days - 1),
        week=-(-days // DAYS),
        earliest=later(begins, least - 1),
        latest=None if most is None else later(begins, most - 1),
    )
