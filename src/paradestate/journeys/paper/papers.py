"""The papers of the bench: cards that lie beside the work, and what it uses up.

folder -> order of work -> batches up to a milestone -> cards, requisition
"""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.finding import Finding, Level
from paradestate.core.work.job_card import ColourCard, JobCard, colour_cards, job_cards
from paradestate.core.work.ladder import Ladder
from paradestate.core.work.requisition import Requisition, requisition, requisition_findings
from paradestate.journeys.bench.bench import order_of_work
from paradestate.journeys.check import Checked
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.text.spelling import nearest_hint


@dataclass(frozen=True, slots=True, kw_only=True)
class Papers:
    """Everything that is printed for the bench."""

    jobs: tuple[JobCard, ...]
    colours: tuple[ColourCard, ...]
    requisition: Requisition
    milestones: tuple[str, ...]
    """Those that the whole ladder still reaches, in their order."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PapersAnswer:
    """The papers, or None with the stops that prevent them."""

    checked: Checked
    papers: Papers | None = None


def papers(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    up_to: str = "",
    memory: Memory = NOTHING,
) -> PapersAnswer:
    """Cards and requisition for the order of work; with `up_to` as far as that milestone."""
    answer = order_of_work(folder, today=today, choice=choice, memory=memory)
    if answer.order is None:
        return PapersAnswer(checked=answer.checked)
    ladder, force = answer.order.ladder, answer.checked.force
    unknown = tuple(_unknown(ladder, up_to))
    if unknown:
        return PapersAnswer(checked=answer.checked.with_findings(*unknown))
    rungs = ladder.up_to(up_to)
    made = requisition(rungs, force)
    return PapersAnswer(
        checked=answer.checked.with_findings(*requisition_findings(made, force)),
        papers=Papers(
            jobs=job_cards(rungs, force),
            colours=colour_cards(rungs, force),
            requisition=made,
            milestones=tuple(each.milestone.name for each in ladder.to_reach),
        ),
    )


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
