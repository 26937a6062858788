"""The order of work: which stands to finish next, so that a force is playable soonest.

folder -> count -> workload -> ladder, and the same work kind by kind
"""

import datetime
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.work.ladder import Ladder
from paradestate.core.work.order_of_work import ladder, ladder_by_kind
from paradestate.core.work.workload import workload
from paradestate.journeys.check import Checked
from paradestate.journeys.count import count
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderOfWork:
    """The ladder, with what it is measured against."""

    ladder: Ladder
    by_kind: Ladder
    """The same work, each kind at one go."""
    week: Fraction | None
    """Minutes at the bench in a week, where the owner says."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchAnswer:
    """The order of work, or None with the stops that prevent it."""

    checked: Checked
    order: OrderOfWork | None = None


def order_of_work(
    folder: Path, *, today: datetime.date, choice: Choice, memory: Memory = NOTHING
) -> BenchAnswer:
    """The order of work for the force of a folder; with a game, for its numbers and plan alone.

    What is lent is worked on no more than what is at hand, so it counts as it is.
    """
    found = count(folder, today=today, choice=choice, lent_too=True, memory=memory)
    if found.count is None:
        return BenchAnswer(checked=found.checked)
    load, findings = workload(found.count.force, found.count.made, game=choice.game)
    read = found.checked.with_findings(*findings)
    if load is None:
        return BenchAnswer(checked=read)
    made = OrderOfWork(ladder=ladder(load), by_kind=ladder_by_kind(load), week=load.bench.week)
    return BenchAnswer(checked=read, order=made)
