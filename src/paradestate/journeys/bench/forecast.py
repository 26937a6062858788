"""When the work at the bench will be done, from what was logged of it.

journal -> work logged -> minutes learned -> habit -> weeks to come -> dates
"""

import datetime
from bisect import bisect_left
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from paradestate.chance.forecast.drawn_finish import Lottery
from paradestate.chance.forecast.forecast import USUAL_LOTTERY, forecast
from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.game_night import nights_within
from paradestate.core.journal import in_force
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_request import LogRequest
from paradestate.core.span import DateSpan
from paradestate.core.work.bench_log import BenchLog, Making, log_of_bench
from paradestate.core.work.calendar_days import milestone_days, night_days, repair_days
from paradestate.core.work.calendar_text import calendar_text
from paradestate.core.work.due_work import minutes_until, pace_of
from paradestate.core.work.forecast_finding import (
    deadline_past,
    no_habit,
    parcel_after_deadline,
)
from paradestate.core.work.forecast_value import (
    Ahead,
    AwaitedParcel,
    Forecast,
    Goal,
    GoalForecast,
)
from paradestate.core.work.habit import Habit, first_day, habit_of, later
from paradestate.core.work.kept_forecast import KeptForecast, KeptOn
from paradestate.core.work.ladder import Reached
from paradestate.core.work.learned_minutes import LearnedMinutes, learned_minutes
from paradestate.journeys.collection import collection_of
from paradestate.journeys.history import ALL, LOOKED_AT, history
from paradestate.journeys.log import Logged, log
from paradestate.journeys.memory import NOTHING, Memory

NIGHTS_AHEAD = 366
"""Days for which game nights go into a calendar."""

MOST_READ_ANEW = 100
"""Newest entries whose work is read each time it is asked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkLogged:
    """What the journal says of the work on a force."""

    log: BenchLog = BenchLog()
    learned: LearnedMinutes = LearnedMinutes()
    kept: tuple[KeptOn, ...] = ()
    """Forecasts that were kept."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Dates:
    """The forecast, or None where nothing says how much is done in a week."""

    forecast: Forecast | None
    findings: tuple[Finding, ...]
    nights: tuple[datetime.date, ...] = ()
    """Game nights of the year to come."""
    beside: tuple[GoalForecast, ...] = ()
    """Of what was asked about beside the milestones."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Keeping:
    """When a forecast is kept, and under which id."""

    today: datetime.date
    written: datetime.datetime
    id: str


def work_logged(
    folder: Path,
    force: Force,
    *,
    today: datetime.date,
    patterns: Mapping[str, str],
    memory: Memory = NOTHING,
) -> WorkLogged:
    """The work on a force up to the end of a day; `patterns` are those of its stands by name.

    Raises StoreError, and FileError.
    """
    past = history(folder, today=today, last=ALL, memory=memory)
    own = collection_of(folder).force_of(folder) or ""
    counted = tuple(entry for entry in in_force(past.entries[::-1]) if entry.on <= today)
    making = Making(
        stages=force.bench.stages,
        on_stand={name: stand.modelled for name, stand in force.stands.items()},
        patterns=patterns,
    )
    read = _bench_log(folder, counted, making=making, force=own, memory=memory)
    return WorkLogged(
        log=read,
        learned=learned_minutes(
            read.stretches,
            bench=force.bench,
            figures=force.figures,
            on_stand=making.on_stand,
        ),
        kept=tuple(_kept(counted, force=own)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _DaysRead:
    """The work of whole days, kept in mind: the newest ones are read anew each time."""

    making: Making
    entries: tuple[JournalEntry, ...] = ()
    log: BenchLog = BenchLog()

    def is_beginning_of(self, entries: Sequence[JournalEntry], *, making: Making) -> bool:
        """Whether it is the work of the first days of these entries, without a part of a day."""
        number = len(self.entries)
        if self.making != making or entries[:number] != self.entries:
            return False
        return number in {0, len(entries)} or entries[number].on > self.entries[-1].on


def _bench_log(
    folder: Path,
    entries: tuple[JournalEntry, ...],
    *,
    making: Making,
    force: str,
    memory: Memory,
) -> BenchLog:
    """The work that entries say, in the order in which they count."""
    key = ("bench log", folder)
    known = memory.last(key, _DaysRead)
    if known is None or not known.is_beginning_of(entries, making=making):
        known = _DaysRead(making=making)
    if len(entries) - len(known.entries) > MOST_READ_ANEW:
        newest = entries[-LOOKED_AT].on
        first = bisect_left(entries, newest, key=lambda entry: entry.on)
        more = entries[len(known.entries) : first]
        work = log_of_bench(more, making, force=force, before=known.log)
        known = _DaysRead(making=making, entries=entries[:first], log=work)
        memory.keep(key, known)
    rest = entries[len(known.entries) :]
    return log_of_bench(rest, making, force=force, before=known.log)


def _kept(entries: Sequence[JournalEntry], *, force: str) -> Iterator[KeptOn]:
    for entry in entries:
        if entry.kind is EntryKind.FORECAST and entry.force == force:
            yield KeptOn(day=entry.on, forecasts=entry.forecasts)


def weeks_so_far(
    force: Force, worked: WorkLogged, *, today: datetime.date
) -> tuple[datetime.date, Habit]:
    """The first day of the weeks to come, and how much is done in a week."""
    begins = first_day(worked.log.minutes, today=today)
    habit = habit_of(
        worked.log.minutes,
        since=worked.log.since,
        begins=begins,
        away=force.bench.away,
        usual=force.bench.week,
        sessions=worked.log.sessions,
    )
    return begins, habit


def due_work(
    force: Force, worked: WorkLogged, *, today: datetime.date
) -> Mapping[datetime.date, Fraction]:
    """Day on which repairs are wanted to the minutes of work up to the evening before it."""
    begins, habit = weeks_so_far(force, worked, today=today)
    pace = pace_of(habit)
    return {
        each.wanted: minutes_until(each.wanted, begins=begins, away=force.bench.away, pace=pace)
        for each in force.repairs
    }


def work_until(
    force: Force, worked: WorkLogged, *, days: Iterable[datetime.date], today: datetime.date
) -> Mapping[datetime.date, Fraction | None]:
    """Day to the minutes of work up to its evening at the usual pace; None where none is known."""
    begins, habit = weeks_so_far(force, worked, today=today)
    pace, away = pace_of(habit), force.bench.away
    return {
        day: None
        if pace is None
        else minutes_until(later(day, 1), begins=begins, away=away, pace=pace)
        for day in days
    }


def dates(
    force: Force,
    worked: WorkLogged,
    *,
    today: datetime.date,
    goals: Sequence[Goal],
    beside: Sequence[Goal] = (),
    parcels: Sequence[AwaitedParcel] = (),
    lottery: Lottery = USUAL_LOTTERY,
) -> Dates:
    """When each milestone is reached; `goals` hold minutes of all work up to each, in order.

    What is `beside` them is told from the same weeks to come; no more of it than of the last goal.
    """
    begins, habit = weeks_so_far(force, worked, today=today)
    bench = force.bench
    is_work_left = any(goal.minutes for goal in goals)
    findings: list[Finding] = []
    if not all(goal.is_reached for goal in goals):
        findings.extend(deadline_past(force, today=today))
        for parcel in parcels:
            findings.extend(parcel_after_deadline(force, parcel, today=today))
    nights = _nights(force, begins=begins)
    if is_work_left and habit.is_idle:
        return Dates(forecast=None, findings=(*findings, no_habit(force)), nights=nights)
    found = forecast(
        (*beside, *goals),
        habit=habit,
        ahead=Ahead(begins=begins, away=bench.away, parcels=tuple(parcels)),
        lottery=lottery,
    )
    return Dates(
        forecast=replace(found, goals=found.goals[len(beside) :]),
        findings=tuple(findings),
        nights=nights,
        beside=found.goals[: len(beside)],
    )


def _nights(force: Force, *, begins: datetime.date) -> tuple[datetime.date, ...]:
    nights = force.aim.game_nights if force.aim else ()
    return nights_within(nights, span=DateSpan(first=begins, last=later(begins, NIGHTS_AHEAD)))


def kept_today(worked: WorkLogged, *, today: datetime.date) -> bool:
    """Whether a forecast of that day was kept already."""
    return any(each.day == today for each in worked.kept)


def keep(folder: Path, found: Forecast, *, keeping: Keeping, memory: Memory = NOTHING) -> Logged:
    """Writes a forecast into the journal, so that it can be seen later how it came out.

    Nothing else writes one: what only reads keeps nothing unasked. Once a day is enough, which
    `kept_today` tells. Raises StoreError, and FileError.
    """
    request = LogRequest(
        id=keeping.id,
        kind=EntryKind.FORECAST,
        written=keeping.written,
        on=keeping.today,
        forecasts=kept_forecasts(found),
    )
    return log(folder, today=keeping.today, request=request, memory=memory)


def kept_forecasts(found: Forecast) -> tuple[KeptForecast, ...]:
    """A forecast as it is kept.

    What waits for parcels alone is left out: nothing is left to do of it, which would say later
    that it was reached on that day.
    """
    kept = (each for each in found.goals if each.goal.minutes or each.is_reached)
    return tuple(_as_kept(each) for each in kept)


def _as_kept(found: GoalForecast) -> KeptForecast:
    days = (None if each is None or found.is_reached else each.day for each in found.dates)
    half_chance, four_in_five, nineteen_in_twenty = days
    return KeptForecast(
        milestone=found.goal.name,
        minutes=found.goal.minutes,
        half_chance=half_chance,
        four_in_five=four_in_five,
        nineteen_in_twenty=nineteen_in_twenty,
    )


def calendar(
    found: Dates, *, force: str, made: datetime.datetime, repairs: Sequence[Reached] = ()
) -> str:
    """Milestones, repairs and game nights as a calendar file (RFC 5545). `force` names it."""
    days = [] if found.forecast is None else list(milestone_days(found.forecast, force=force))
    days.extend(repair_days(repairs, force=force))
    days.extend(night_days(found.nights, found.forecast, force=force))
    return calendar_text(days, made=made)
