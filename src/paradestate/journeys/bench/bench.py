"""The order of work: which stands to finish next, so that a force is playable soonest, and when.

folder -> count -> work logged -> workload -> ladder, and the same work kind by kind -> dates
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.on_order import OnOrder
from paradestate.core.sentence.repair import repair_sentences
from paradestate.core.span import DateSpan
from paradestate.core.work.forecast_finding import undated_orders, work_left_out
from paradestate.core.work.forecast_value import GoalForecast
from paradestate.core.work.held_up import days_of_arrival, with_held_up
from paradestate.core.work.kept_forecast import Calibration, calibration
from paradestate.core.work.ladder import Ladder
from paradestate.core.work.order_of_work import ladder, ladder_by_kind
from paradestate.core.work.to_come import goals_of, orders_of, parcels_of
from paradestate.core.work.workload import workload
from paradestate.journeys.bench.bench_days import (
    days_of_batches,
    goals_of_batches,
    goals_of_repairs,
)
from paradestate.journeys.bench.forecast import (
    Dates,
    Keeping,
    WorkLogged,
    dates,
    due_work,
    keep,
    kept_forecasts,
    kept_today,
    work_logged,
    work_until,
)
from paradestate.journeys.check import Checked
from paradestate.journeys.count import Count, count
from paradestate.journeys.log import Logged
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderOfWork:
    """The ladder with its dates, what it is measured against, and what it was made from."""

    force: Force
    """With the minutes that sessions taught."""
    ladder: Ladder
    by_kind: Ladder
    """The same work, each kind at one go."""
    worked: WorkLogged
    orders: tuple[OnOrder, ...]
    """What is on order of the figures that its stands lack, soonest expected first."""
    dates: Dates
    """Of the milestones of the ladder, and beside them of its batches."""
    calibration: Calibration
    """How forecasts that were kept came out."""
    raised: frozenset[str]
    """Names of the stands of the force as it is raised; milestones may want others beside."""

    @property
    def week(self) -> Fraction | None:
        """Minutes at the bench in a week, where the owner says."""
        return self.force.bench.week

    @property
    def week_alone(self) -> Fraction | None:
        """The owner's week while nothing else is known: then weeks can be counted by it."""
        return None if self.worked.log.minutes or self.waits else self.week

    @property
    def waits(self) -> bool:
        """Whether a date waits for a parcel."""
        return any(each.goal.waiting or each.goal.parcels for each in self.forecast_of.values())

    @property
    def forecast_of(self) -> dict[str, GoalForecast]:
        """Milestone to its forecast; none where nothing says how much is done in a week."""
        found = self.dates.forecast
        return {} if found is None else {each.goal.name: each for each in found.goals}

    @property
    def forecast_beside(self) -> dict[str, GoalForecast]:
        """What is wanted beside the milestones, repairs among it, to its forecast."""
        return {each.goal.name: each for each in self.dates.beside}

    def repair_sentences(self, today: datetime.date) -> tuple[str, ...]:
        """What is in repair, by when it is wanted, and whether that can be met."""
        sentences = repair_sentences(
            self.ladder.repairs, forecasts=self.forecast_beside, today=today
        )
        return tuple(sentences)

    @property
    def deadline(self) -> DateSpan | None:
        """By when the owner wants it done, where the folder says so."""
        return self.force.aim.deadline if self.force.aim else None

    @property
    def days(self) -> Mapping[int, datetime.date]:
        """Batch that has a rung to the day by which it is done with half a chance."""
        return days_of_batches(self.dates.beside)


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchAnswer:
    """The order of work, or None with the stops that prevent it."""

    checked: Checked
    order: OrderOfWork | None = None


class Outcome(StrEnum):
    """What came of keeping a forecast."""

    WRITTEN = "written"
    KEPT_ALREADY = "kept already"
    """One of that day."""
    NO_DATES = "no dates"
    REFUSED = "refused"
    """The findings say why."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """Whether a forecast was kept, with its entry in the journal."""

    outcome: Outcome
    logged: Logged = Logged(findings=())


def order_of_work(
    folder: Path, *, today: datetime.date, choice: Choice, memory: Memory = NOTHING
) -> BenchAnswer:
    """The order of work for the force of a folder; with a game, for its numbers and plan alone.

    What is lent is worked on no more than what is at hand, so it counts as it is. Minutes that
    sessions taught stand in place of those given. Raises StoreError, and FileError.
    """
    found = count(folder, today=today, choice=choice, lent_too=True, memory=memory)
    if found.count is None:
        return BenchAnswer(checked=found.checked)
    counted = found.count
    order, findings = memory.kept(
        ("order of work", folder, choice.game, today),
        lambda: _made(folder, counted, today=today, choice=choice, memory=memory),
        rests_on=(counted,),
    )
    return BenchAnswer(checked=found.checked.with_findings(*findings), order=order)


def _made(
    folder: Path, counted: Count, *, today: datetime.date, choice: Choice, memory: Memory
) -> tuple[OrderOfWork | None, tuple[Finding, ...]]:
    given = counted.force
    patterns = {stand.name: stand.pattern for stand in counted.made.stands}
    worked = work_logged(folder, given, today=today, patterns=patterns, memory=memory)
    force = replace(given, bench=worked.learned.applied(given.bench))
    load, findings = workload(force, counted.made, game=choice.game)
    if load is None:
        return None, findings
    made = ladder(load, due_work(force, worked, today=today))
    days = days_of_arrival(made, today=today)
    made = with_held_up(made, work_until(force, worked, days=days, today=today), today=today)
    orders = orders_of(work for rung in made.rungs for work in rung.works)
    parcels = parcels_of(orders, today=today)
    goals = goals_of(made, parcels, orders=orders)
    beside = (
        *goals_of_batches(made, parcels, orders=orders),
        *goals_of_repairs(made, parcels, orders=orders),
    )
    when = dates(force, worked, today=today, goals=goals, beside=beside, parcels=parcels)
    undated = tuple(undated_orders(force, orders, today=today))
    order = OrderOfWork(
        force=force,
        ladder=made,
        by_kind=ladder_by_kind(load),
        worked=worked,
        orders=orders,
        dates=when,
        calibration=calibration(worked.kept, today=today),
        raised=frozenset(stand.name for stand in counted.made.stands),
    )
    left_out = work_left_out(force, worked.log)
    return order, (*findings, *left_out, *undated, *when.findings)


def keep_dates(
    folder: Path, answer: BenchAnswer, *, keeping: Keeping, memory: Memory = NOTHING
) -> Kept:
    """Writes the dates into the journal, once a day. Raises StoreError, and FileError."""
    found = None if answer.order is None else answer.order.dates.forecast
    if answer.order is None or found is None or not kept_forecasts(found):
        return Kept(outcome=Outcome.NO_DATES)
    if kept_today(answer.order.worked, today=keeping.today):
        return Kept(outcome=Outcome.KEPT_ALREADY)
    done = keep(folder, found, keeping=keeping, memory=memory)
    outcome = Outcome.REFUSED if done.entry is None else Outcome.WRITTEN
    return Kept(outcome=outcome, logged=done)
