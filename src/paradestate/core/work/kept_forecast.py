"""Forecasts that were kept, and how often the four-in-five date was met.

A forecast is judged when its date is past and not before: those that come true early would be
counted first otherwise, and all would look better than it is. A milestone counts as finished on the
first day for which a forecast was kept that has nothing left of it.
"""

import datetime
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptForecast:
    """What was forecast of one milestone; a date is None where none could be given."""

    milestone: str
    minutes: Fraction
    """Work that was left of it."""
    half_chance: datetime.date | None = None
    four_in_five: datetime.date | None = None
    nineteen_in_twenty: datetime.date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptOn:
    """What was forecast on a day."""

    day: datetime.date
    forecasts: tuple[KeptForecast, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Calibration:
    """How forecasts of one chance came out."""

    met: int
    """Whose date is past, and whose milestone was finished by then."""
    missed: int
    """Whose date is past, and whose milestone wasn't."""
    early: int
    """Whose milestone is finished already, before the date is past; not judged yet."""
    to_come: int
    """Whose date is to come, with work left."""
    milestones: int
    """How many different milestones those judged are of; their forecasts hang together."""

    @property
    def judged(self) -> int:
        """How many of them can be judged."""
        return self.met + self.missed


def calibration(kept: Iterable[KeptOn], *, today: datetime.date) -> Calibration:
    """How often the four-in-five date was met; of several forecasts on one day the first counts."""
    days = _first_of_each_day(kept)
    met = missed = early = to_come = 0
    judged = set()
    for at, each in enumerate(days):
        for forecast in each.forecasts:
            if forecast.four_in_five is None or not forecast.minutes:
                continue
            finished = _finished(forecast.milestone, days[at:])
            is_past = forecast.four_in_five < today
            is_met = finished is not None and finished <= forecast.four_in_five
            if is_past:
                judged.add(forecast.milestone)
            met += is_past and is_met
            missed += is_past and not is_met
            early += not is_past and is_met
            to_come += not is_past and not is_met
    return Calibration(met=met, missed=missed, early=early, to_come=to_come, milestones=len(judged))


def _first_of_each_day(kept: Iterable[KeptOn]) -> Sequence[KeptOn]:
    first: dict[datetime.date, KeptOn] = {}
    for each in kept:
        first.setdefault(each.day, each)
    return [first[day] for day in sorted(first)]


def _finished(milestone: str, days: Sequence[KeptOn]) -> datetime.date | None:
    """The first of these days on which nothing was left of a milestone."""
    for each in days:
        for forecast in each.forecasts:
            if forecast.milestone == milestone and not forecast.minutes:
                return each.day
    return None
