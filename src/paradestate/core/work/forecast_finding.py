"""What is to be said about a forecast: why there is none, and what it rests on."""

import datetime
from collections.abc import Iterable, Iterator

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.log_finding import duration_words
from paradestate.core.on_order import OnOrder
from paradestate.core.place import Place, nearest_place
from paradestate.core.sentence.journal import SHORT
from paradestate.core.sentence.wording import counted, day_words, end_words, listed
from paradestate.core.work.bench_log import BenchLog
from paradestate.core.work.forecast_value import AwaitedParcel


def no_habit(force: Force) -> Finding:
    """The warning where nothing says how much is done in a week."""
    return Finding(
        level=Level.WARN,
        code="week-unsaid",
        message="Nothing says how much work is done in a week: no week of sessions is logged, and "
        "`week` isn't given.",
        effect="No date is given.",
        hint="Write `week: 4 h` under `bench`, or log your sessions for a week.",
        place=_place(force, "bench", "week"),
    )


def deadline_past(force: Force, *, today: datetime.date) -> Iterator[Finding]:
    """The warning for a deadline that is over while work is left."""
    deadline = force.aim.deadline if force.aim else None
    if deadline is not None and deadline.last < today:
        yield Finding(
            level=Level.WARN,
            code="deadline-past",
            message=f"The deadline was {end_words(deadline)}.",
            effect="Nothing can be ready by then; the dates are for the work as it stands.",
            hint="Write a new `deadline` under `aim`, or take it out.",
            place=_place(force, "aim", "deadline"),
        )


def parcel_after_deadline(
    force: Force, parcel: AwaitedParcel, *, today: datetime.date
) -> Iterator[Finding]:
    """The warning for a parcel that comes after the deadline, however it comes."""
    deadline = force.aim.deadline if force.aim else None
    soonest = min(parcel.arrivals)
    if deadline is not None and today <= deadline.last < soonest:
        yield Finding(
            level=Level.WARN,
            code="parcel-after-deadline",
            message=f"The parcel from {parcel.name} comes on {day_words(soonest)} at the soonest; "
            f"the deadline is {end_words(deadline)}.",
            effect="What it brings isn't part of what is ready by then.",
            hint="Look for its figures at a source that sends sooner, or play without them first.",
            place=_place(force, "aim", "deadline"),
        )


def undated_orders(
    force: Force, orders: Iterable[OnOrder], *, today: datetime.date
) -> Iterator[Finding]:
    """What is to be said of orders for which no date can wait."""
    for order in orders:
        what = f"{counted(order.figures)} from {order.source}, ordered on {day_words(order.day)}"
        here = "The dates are as if they were here when their turn comes."
        if order.expected is None:
            yield Finding(
                level=Level.WARN,
                code="parcel-without-day",
                message=f"Nobody says when these come: {what}.",
                effect=here,
                hint="Strike the order out and log it again with --expected; its id begins with "
                f"{order.entry[:SHORT]}.",
                place=_place(force, "sources", order.source),
            )
        elif order.expected < today:
            yield Finding(
                level=Level.WARN,
                code="parcel-overdue",
                message=f"Expected on {day_words(order.expected)} and not received: {what}.",
                effect=here,
                hint="Log them 'received' with their source, 'cancelled' if they won't come, or "
                "strike the order out and log it again with --expected; its id begins with "
                f"{order.entry[:SHORT]}.",
                place=_place(force, "sources", order.source),
            )


def work_left_out(force: Force, log: BenchLog) -> Iterator[Finding]:
    """The remark for work at stages, or on stands, that the force doesn't have any more."""
    if not log.left_out:
        return
    names = listed(f"'{name}'" for name in sorted(log.unknown))
    yield Finding(
        level=Level.REMARK,
        code="work-left-out",
        message=f"{duration_words(log.left_out)} of logged work brought something on at {names}, "
        "which the force doesn't have.",
        effect="It counts in what you do in a week; what work takes isn't learned from it.",
        hint="Bring the name back if it was changed by a slip; else nothing needs to be done.",
        place=_place(force, "bench", "stages"),
    )


def _place(force: Force, *path: str) -> Place:
    return nearest_place(force.places, path)
