"""Everything that the sheet of the bench says of the order of work."""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.sentence.forecast import without_minutes_words
from paradestate.core.sentence.wording import hours_words, listed
from paradestate.core.sentence.work import (
    certainty_words,
    colour_sentences,
    critical_sentence,
    gain_sentence,
    lacking_sentence,
    now_sentence,
    on_order_sentence,
    reached_week_words,
    week_words,
)
from paradestate.core.unfolding import spoken
from paradestate.core.work.ladder import lacking_of
from paradestate.journeys.bench.bench import OrderOfWork
from paradestate.sheet import milestone_bars, work_ladder
from paradestate.sheet.svg import Drawing
from paradestate.web.bench.batch_row import BatchRow, batch_rows
from paradestate.web.bench.when import WhenView, lead_sentence, short_day, when_view

Pair = tuple[Drawing, Drawing]
"""The same drawing for a desk and for a phone."""

MOST_BARS = 12
"""Milestones that have bars; the table has all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MilestoneRow:
    """A milestone as the table shows it."""

    name: str
    stands: str
    hours: str
    week: str
    hours_by_kind: str
    week_by_kind: str
    lacking: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchView:
    """The order of work as it is shown."""

    boxes: tuple[tuple[str, str], ...]
    lead: tuple[str, ...]
    now: tuple[str, ...]
    """What can be played already."""
    repairs: tuple[str, ...]
    """What is in repair, by when it is wanted, and whether that can be met."""
    ladder: Pair | None
    """None where nothing is left to do."""
    bars: Pair | None
    milestones: tuple[MilestoneRow, ...]
    batches: tuple[BatchRow, ...]
    notes: tuple[str, ...]
    certainty: str
    when: WhenView | None
    """None where nothing says how much is done in a week."""
    has_week: bool
    """Whether weeks are counted: the owner says how long one is, and nothing is logged yet."""

    @property
    def first(self) -> BatchRow | None:
        """The first batch of which stands can be brought on whole, else the first of any."""
        begun = [row for row in self.batches if row.steps]
        whole = (row for row in begun if any(each.step.is_whole for each in row.steps))
        return next(whole, begun[0] if begun else None)


def bench_view(order: OrderOfWork, *, today: datetime.date) -> BenchView:
    """The sheet of an order of work."""
    ladder = order.ladder
    steps = work_ladder.ladder_steps(ladder)
    days = {number: short_day(day, today=today) for number, day in order.days.items()}
    return BenchView(
        boxes=tuple(_boxes(order)),
        lead=tuple(filter(None, _lead(order, today=today))),
        now=tuple(now_sentence(each) for each in ladder.reached if each.rung is None),
        repairs=tuple(spoken(each) for each in order.repair_sentences(today)),
        ladder=_ladder(order, steps, days=days),
        bars=_bars(order),
        milestones=tuple(_milestones(order)),
        batches=batch_rows(order, days=days),
        notes=tuple(_notes(order)),
        certainty=certainty_words(ladder),
        when=when_view(order, today=today),
        has_week=order.week_alone is not None,
    )


def _boxes(order: OrderOfWork) -> Iterator[tuple[str, str]]:
    following = order.ladder.following
    if following is not None:
        yield "To the next force", hours_words(following.ends)
        yield "All that is left", hours_words(order.ladder.minutes)
    if order.week is not None:
        yield "Usual week", hours_words(order.week)


def _lead(order: OrderOfWork, *, today: datetime.date) -> Iterator[str]:
    following = order.ladder.following
    if following is None:
        yield "Nothing is left to do at the bench."
        return
    name = following.milestone.name
    week = reached_week_words(following, week=order.week_alone)
    when = f", in {week}" if week else ""
    if following.ends:
        yield f"The {name} can be played after {hours_words(following.ends)} of work{when}."
    else:
        yield f"The {name} {without_minutes_words(following)}."
    yield lead_sentence(order, name, today=today)
    by_kind = order.by_kind.reached_of
    yield gain_sentence(following, by_kind=by_kind[name])


def _ladder(
    order: OrderOfWork, steps: Sequence[work_ladder.Step], *, days: Mapping[int, str]
) -> Pair | None:
    weeks = {
        step.last: week_words(step.ends, week=order.week_alone).removeprefix("week ")
        for step in steps
    }
    side = work_ladder.Side(
        title="half by" if days else "" if order.week_alone is None else "week",
        marks=days or weeks,
        foot="today",
    )
    drawn = [
        work_ladder.work_ladder(steps, side=side, width=width)
        for width in (work_ladder.WIDE, work_ladder.PHONE)
    ]
    return None if drawn[0] is None or drawn[1] is None else (drawn[0], drawn[1])


def _bars(order: OrderOfWork) -> Pair | None:
    by_kind = order.by_kind.reached_of
    made = [
        milestone_bars.MilestoneBar(
            name=each.milestone.name,
            here=each.ends,
            by_kind=by_kind[each.milestone.name].ends,
            week=reached_week_words(each, week=order.week_alone),
            week_by_kind=reached_week_words(by_kind[each.milestone.name], week=order.week_alone),
        )
        for each in order.ladder.to_reach
    ][:MOST_BARS]
    drawn = [
        milestone_bars.milestone_bars(made, width=width)
        for width in (milestone_bars.WIDE, milestone_bars.PHONE)
    ]
    return None if drawn[0] is None or drawn[1] is None else (drawn[0], drawn[1])


def _milestones(order: OrderOfWork) -> Iterator[MilestoneRow]:
    by_kind = order.by_kind.reached_of
    for each in order.ladder.reached:
        other = by_kind[each.milestone.name]
        yield MilestoneRow(
            name=each.milestone.name,
            stands=str(len(each.to_finish)),
            hours=hours_words(each.ends) if each.rung is not None else "now",
            week=reached_week_words(each, week=order.week_alone),
            hours_by_kind=hours_words(other.ends) if other.rung is not None else "now",
            week_by_kind=reached_week_words(other, week=order.week_alone),
            lacking=str(sum(each.lacking.values())),
        )


def _notes(order: OrderOfWork) -> Iterator[str]:
    ladder = order.ladder
    if ladder.critical is not None:
        yield spoken(critical_sentence(ladder.critical))
    yield from colour_sentences(ladder)
    lacking = lacking_of(work for rung in ladder.rungs for work in rung.works)
    if lacking:
        yield lacking_sentence(lacking)
    if order.orders:
        yield on_order_sentence(order.orders)
    left_out = [each.milestone.name for each in ladder.reached if each.milestone.left_out]
    if left_out:
        yield f"Not a legal force: {listed(left_out)}."
