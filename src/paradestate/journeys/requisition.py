"""What the work uses up, and the cards that lie beside it, for all of it or up to a milestone.

folder -> order of work -> batches up to the milestone -> requisition, or cards
"""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.finding import Finding, Level
from paradestate.core.work.job_card import ColourCard, JobCard, colour_cards, job_cards
from paradestate.core.work.ladder import Ladder, Rung
from paradestate.core.work.requisition import Requisition, requisition, requisition_findings
from paradestate.journeys.bench import order_of_work
from paradestate.journeys.check import Checked
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.text.spelling import nearest_hint


@dataclass(frozen=True, slots=True, kw_only=True)
class RequisitionAnswer:
    """What the work uses up, or None with the stops that prevent it."""

    checked: Checked
    made: Requisition | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Cards:
    """Everything that is printed for the bench."""

    jobs: tuple[JobCard, ...]
    colours: tuple[ColourCard, ...]
    milestones: tuple[str, ...]
    """Those that the whole ladder reaches, in their order."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CardsAnswer:
    """The cards, or None with the stops that prevent them."""

    checked: Checked
    cards: Cards | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Climbed:
    """The ladder, and its batches up to the milestone; None where there are stops."""

    checked: Checked
    ladder: Ladder | None = None
    rungs: tuple[Rung, ...] = ()


def work_requisition(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    up_to: str = "",
    memory: Memory = NOTHING,
) -> RequisitionAnswer:
    """What the order of work uses up; with `up_to` as far as that milestone."""
    climbed = _climbed(folder, today=today, choice=choice, up_to=up_to, memory=memory)
    if climbed.ladder is None:
        return RequisitionAnswer(checked=climbed.checked)
    force = climbed.checked.force
    made = requisition(climbed.rungs, force)
    checked = climbed.checked.with_findings(*requisition_findings(made, force))
    return RequisitionAnswer(checked=checked, made=made)


def work_cards(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    up_to: str = "",
    memory: Memory = NOTHING,
) -> CardsAnswer:
    """A card for each batch and for each kind of figure to be painted."""
    climbed = _climbed(folder, today=today, choice=choice, up_to=up_to, memory=memory)
    if climbed.ladder is None:
        return CardsAnswer(checked=climbed.checked)
    force = climbed.checked.force
    cards = Cards(
        jobs=job_cards(climbed.rungs, force),
        colours=colour_cards(climbed.rungs, force),
        milestones=tuple(
            each.milestone.name for each in climbed.ladder.reached if each.rung is not None
        ),
    )
    return CardsAnswer(checked=climbed.checked, cards=cards)


def _climbed(
    folder: Path, *, today: datetime.date, choice: Choice, up_to: str, memory: Memory
) -> _Climbed:
    """The order of work as far as it is wanted."""
    answer = order_of_work(folder, today=today, choice=choice, memory=memory)
    if answer.order is None:
        return _Climbed(checked=answer.checked)
    ladder = answer.order.ladder
    findings = tuple(_unknown(ladder, up_to))
    if findings:
        return _Climbed(checked=answer.checked.with_findings(*findings))
    return _Climbed(checked=answer.checked, ladder=ladder, rungs=ladder.up_to(up_to))


def _unknown(ladder: Ladder, up_to: str) -> Iterator[Finding]:
    names = [each.milestone.name for each in ladder.reached]
    if up_to and up_to not in names:
        yield Finding(
            level=Level.STOP,
            code="milestone-unknown",
            message=f"There is no milestone '{up_to}'.",
            effect="It can't be said how far the work goes.",
            hint=nearest_hint(up_to, names),
            place=CHOSEN_HERE,
        )
