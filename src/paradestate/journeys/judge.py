"""Whether a plan is legal in a game, and what stands in its way.

folder -> terms -> plan -> judged -> room and readiness -> order paragraph
"""

import datetime
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding, stops
from paradestate.core.game import Game, Purchase
from paradestate.core.place import KeyPath
from paradestate.core.sentence.plan import plan_paragraph
from paradestate.core.support.judge import Judgement, judged
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.readiness import Readiness, readiness, readiness_findings
from paradestate.core.support.refusal import rolls_by_entry
from paradestate.core.support.reserve import Reserve, reserve_findings, reserve_of
from paradestate.core.support.room import Fielded, room_findings
from paradestate.core.support.terms import Terms, terms_of
from paradestate.core.support.tow import tow_findings
from paradestate.journeys.check import Checked
from paradestate.journeys.choosing import plan_of
from paradestate.journeys.count import Count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.terms import game_terms, plan_unsaid


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is asked of the judge; what is left out is as the folder says."""

    plan: str = ""
    """As it is typed; the plan of the game when left out."""
    purchases: tuple[Purchase, ...] | None = None
    """What is taken, where that is known already; then `plan` isn't read."""
    points: int | None = None
    """Points left; the most that the dice can leave when left out."""
    allowed: tuple[tuple[str, int], ...] = ()
    """What the dice allowed, roll after roll."""
    reserve: Mapping[str, int] = field(default_factory=dict)
    """How many are kept back, by formation or by entry of the plan."""
    kept_back: tuple[Purchase, ...] = ()
    """What of the plan is kept back besides, purchase by purchase."""

    @property
    def says_plan(self) -> bool:
        """Whether it says which plan, so that the one of the game isn't meant."""
        return self.purchases is not None or bool(self.plan.strip())


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedPlan:
    """A plan judged, with what it comes to on the table."""

    terms: Terms
    judgement: Judgement
    are_most: bool
    """Whether no points were said, so that it was judged with the most there can be."""
    reserve: Reserve
    """What of the force and of the plan is kept back."""
    paragraph: tuple[str, ...]
    """The plan as the paragraph of an order."""
    paragraph_left: tuple[str, ...]
    """The same of what the dice left of it; empty where their results weren't said."""
    ready: tuple[Readiness, ...]
    is_legal: bool
    """Whether nothing stops it: no broken rule, no reserve that is too large."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgeAnswer:
    """The plan judged, or None with the stops that prevent it."""

    checked: Checked
    judged: JudgedPlan | None = None


def judge(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    grades: Mapping[str, str],
    asked: Asked,
    memory: Memory = NOTHING,
) -> JudgeAnswer:
    """Judges a plan for the chosen game of a folder, or for its only one."""
    answer = game_terms(folder, today=today, choice=choice, grades=grades, memory=memory)
    if answer.terms is None or answer.count is None:
        return JudgeAnswer(checked=answer.checked)
    terms, counted = answer.terms, answer.count
    plan, findings = _plan(terms.game, counted, asked=asked)
    if findings:
        return JudgeAnswer(checked=answer.checked.with_findings(*findings))
    at = () if asked.says_plan else ("games", terms.game.name, "plan")
    known = Known(
        are_most=asked.points is None,
        places=counted.force.places,
        at=at,
        written=_as_written(answer.checked, choice, game=terms.game.name, grades=grades),
    )
    made = judged(
        terms,
        plan,
        points=terms.most_points if asked.points is None else asked.points,
        allowed=rolls_by_entry(asked.allowed),
        known=known,
    )
    unsaid = () if asked.says_plan else plan_unsaid(terms, effect="Judged is a force without any.")
    reserve = reserve_of(
        asked.reserve, purchases=asked.kept_back, plan=plan, formations=counted.force.formations
    )
    ready, more = _on_the_table(counted, terms, plan=plan, reserve=reserve, known=known)
    every = (*made.findings, *unsaid, *more)
    return JudgeAnswer(
        checked=_instead(answer.checked, every, at=at),
        judged=JudgedPlan(
            terms=terms,
            judgement=made,
            are_most=known.are_most,
            reserve=reserve,
            paragraph=_paragraph(counted, plan, reserve=reserve),
            paragraph_left=_paragraph(counted, made.after.left, reserve=reserve)
            if made.after
            else (),
            ready=ready,
            is_legal=not stops(every),
        ),
    )


def _plan(
    game: Game, counted: Count, *, asked: Asked
) -> tuple[tuple[Purchase, ...], tuple[Finding, ...]]:
    """The plan that was asked about, or else that of the game."""
    if not asked.says_plan:
        return game.plan, ()
    if asked.purchases is not None:
        return asked.purchases, ()
    return plan_of(asked.plan, entries=counted.force.supporting_troops)


def _paragraph(counted: Count, plan: tuple[Purchase, ...], *, reserve: Reserve) -> tuple[str, ...]:
    force = counted.force
    return plan_paragraph(
        plan, entries=force.supporting_troops, reserve=reserve, reserves=force.reserves
    )


def _as_written(
    read: Checked, choice: Choice, *, game: str, grades: Mapping[str, str]
) -> Terms | None:
    """The terms without the numbers that were chosen for this sum; None where none were."""
    if not choice.numbers:
        return None
    force, _ = chosen(read.force, replace(choice, numbers={}, game=game))
    made, _ = establishment(force)
    return None if made is None else terms_of(force, made, game=game, grades=grades)[0]


def _on_the_table(
    counted: Count,
    terms: Terms,
    *,
    plan: tuple[Purchase, ...],
    reserve: Reserve,
    known: Known,
) -> tuple[tuple[Readiness, ...], tuple[Finding, ...]]:
    """Hosts, transport, reserve and how far the stands are, of what is on offer."""
    there = tuple(each for each in plan if each.entry in terms.offers)
    fielded = Fielded(force=counted.force, made=counted.made, plan=there)
    ready = readiness(counted.force, counted.made, plan=there)
    return ready, (
        *room_findings(fielded, known=known, kept_back=reserve.purchases),
        *tow_findings(fielded, known=known),
        *reserve_findings(reserve, force=counted.force, made=counted.made, plan=plan),
        *readiness_findings(ready, plan=plan, known=known),
    )


def _instead(read: Checked, findings: Iterable[Finding], *, at: KeyPath) -> Checked:
    """The findings of the judge in place of what the check said of the same plan."""
    kept = tuple(found for found in read.findings if not at or found.place.path[: len(at)] != at)
    return replace(read, findings=kept).with_findings(*findings)
