"""The batches of the order of work as rows, each with the steps that can be written down."""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.core.sentence.forecast import by_words
from paradestate.core.sentence.wording import counted, hours_words, several
from paradestate.core.sentence.work import (
    batch_details,
    batch_places,
    batch_title,
    reached_words,
    week_words,
)
from paradestate.core.unfolding import spoken
from paradestate.core.work.batch_step import BatchStep, batch_steps
from paradestate.core.work.ladder import Reached, Rung
from paradestate.journeys.bench.bench import OrderOfWork
from paradestate.web.form import Form

FIRST, FROM, TO, OF, STANDS = "first", "from", "to", "of", "stands"
"""Fields of the form that writes a step down: its first stand, its stages, how many stands it has,
and how many of these were brought on."""
MOST_CHOICES = 100
"""Numbers that are offered; of more stands the rest is written down after."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepView:
    """A step with its words."""

    step: BatchStep
    words: str
    """What it is about: `6 rifle sections, undercoated now`."""
    figures: str
    """Which figures move, where the stands don't move whole; else empty."""
    fields: Mapping[str, str]
    """By which it is known again when its form comes back."""
    choices: tuple[int, ...]
    """How many of its stands may be said, all of them first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchRow:
    """One batch as it is shown."""

    number: int
    title: str
    where: str
    hours: str
    ends: str
    when: str
    """The day or the week in which it is done; empty where neither is known."""
    details: tuple[str, ...]
    lacking: str
    reaches: tuple[str, ...]
    steps: tuple[StepView, ...]


def batch_rows(order: OrderOfWork, *, days: Mapping[int, str]) -> tuple[BatchRow, ...]:
    """Every batch of the ladder, in its order; `days` by number, where they are known."""
    reached = order.ladder.reached_of
    return tuple(
        _row(
            order,
            rung,
            day=days.get(rung.number, ""),
            reaches=tuple(_reached(order, reached[name]) for name in rung.completes),
        )
        for rung in order.ladder.rungs
    )


def _reached(order: OrderOfWork, reached: Reached) -> str:
    found = order.forecast_of.get(reached.milestone.name)
    by = "" if found is None else by_words(found)
    return reached_words(reached, week=order.week_alone, by=by)


def _row(order: OrderOfWork, rung: Rung, *, day: str, reaches: tuple[str, ...]) -> BatchRow:
    week = week_words(rung.ends, week=order.week_alone)
    return BatchRow(
        number=rung.number,
        title=batch_title(rung),
        where="; ".join(spoken(each) for each in batch_places(rung)),
        hours=hours_words(rung.minutes + rung.set_up),
        ends=hours_words(rung.ends),
        when=f"half chance by {day}" if day else week if rung.ends else "",
        details=tuple(batch_details(rung)),
        lacking=counted(rung.lacking),
        reaches=reaches,
        steps=tuple(map(_step_view, steps_of(order, rung))),
    )


def steps_of(order: OrderOfWork, rung: Rung) -> tuple[BatchStep, ...]:
    """The steps of a batch."""
    return batch_steps(rung, stages=order.force.bench.stages, raised=order.raised)


def _step_view(step: BatchStep) -> StepView:
    figures = "" if step.is_whole else counted(step.figures(step.number))
    return StepView(
        step=step,
        words=f"{several(step.number, step.pattern)}, {step.from_stage} now",
        figures=figures,
        fields=_known_by(step),
        choices=tuple(range(min(step.number, MOST_CHOICES), 0, -1)),
    )


def _known_by(step: BatchStep) -> Mapping[str, str]:
    return {
        FIRST: step.parts[0].stand,
        FROM: step.from_stage,
        TO: step.to_stage,
        OF: str(step.number),
    }


def step_said(order: OrderOfWork, form: Form) -> BatchStep | None:
    """The step that a form is about; None where nothing is any more as it was shown."""
    said = {name: form.text(name) for name in (FIRST, FROM, TO, OF)}
    every = (step for rung in order.ladder.rungs for step in steps_of(order, rung))
    return next((step for step in every if _known_by(step) == said), None)
