"""Everything that the sheet of choosing says about one game and one plan."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.game import Purchase
from paradestate.core.sentence.chance import chance_words, near_text
from paradestate.core.sentence.fork import step_words
from paradestate.core.sentence.odds import asking_sentences, points_sentence
from paradestate.core.sentence.support import allowance_words
from paradestate.core.sentence.wording import listed, several
from paradestate.core.support.chances import Chances
from paradestate.core.support.fork import forks
from paradestate.core.support.policy import Ask
from paradestate.core.support.readiness import readiness
from paradestate.core.support.terms import Terms
from paradestate.core.support.turnout import PlanOdds
from paradestate.journeys.count import Count
from paradestate.journeys.entry_odds import entry_odds
from paradestate.journeys.evening import Evening, EveningAsked, evening
from paradestate.journeys.fallback import FallbackJourney
from paradestate.journeys.odds import odds
from paradestate.journeys.terms import GameTerms, points_left
from paradestate.sheet import allowance_bars, chance_tree
from paradestate.sheet.allowance_bars import AllowanceRow, PlanLine, allowance_rows
from paradestate.sheet.svg import Drawing
from paradestate.sheet.turnout_tree import TurnoutRow, turnout_rows
from paradestate.text.typed import purchases_text
from paradestate.web.choosing.entry_row import EntryRow, Known, entry_rows
from paradestate.web.choosing.first import (
    ChartView,
    LevelsView,
    NowView,
    chart_view,
    levels_view,
    now_view,
    why_not,
)
from paradestate.web.choosing.force_view import ForceView, force_view
from paradestate.web.choosing.plan_slip import PlanSlip, judged_plan, plan_slip
from paradestate.web.choosing.question import Question
from paradestate.web.visit import Visit

MOST_TOTALS = 20
"""Totals of a roll that one message lists."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PointsView:
    """The points that are left to spend, or may be."""

    drawings: tuple[Drawing, Drawing]
    """Wide, and for a phone."""
    rows: tuple[tuple[AllowanceRow, str], ...]
    """Each number of points with the allowance that leaves it, as it is filled in."""
    sentence: str
    whence: str
    """The roll, and what is taken off it."""
    known: int | None
    is_rolled_for: bool
    """Whether the dice have a say in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnoutView:
    """What may turn up of the plan."""

    drawings: tuple[Drawing, Drawing] | None
    """None where there are too many ways to tell them apart."""
    rows: tuple[TurnoutRow, ...]
    sentence: str
    """Its chances, in a sentence."""
    asking: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoosingView:
    """What is shown of a game that can be chosen for."""

    terms: Terms
    boxes: tuple[tuple[str, str], ...]
    is_open: bool
    """Whether what may be asked for is unfolded, because a plan is put together."""
    lead: tuple[str, ...]
    """The answer in sentences, the first of them first of all."""
    points: PointsView
    now: NowView | None
    """What to do now; None before the roll, or where it isn't known."""
    chart: ChartView | None
    levels: LevelsView | None
    """What each roll would ask for first; None after it."""
    why_not: str
    """Why it can't be said what to ask for; empty where it can."""
    slip: PlanSlip
    turnout: TurnoutView | None
    """None where the plan is empty, or can't be bought at all."""
    rows: Mapping[str, tuple[EntryRow, ...]]
    forces: ForceView
    findings: tuple[Finding, ...]


def choosing_view(
    visit: Visit, played: GameTerms, *, counted: Count, terms: Terms, asked: Question
) -> ChoosingView:
    """The answers to a question about a game."""
    plan, findings = asked.plan(entries=counted.force.supporting_troops, of_game=terms.game.plan)
    allowance = points_left(terms)
    impossible = tuple(_impossible_roll(terms, allowance, rolled=asked.rolled))
    left = _left(terms, allowance, rolled=None if impossible else asked.rolled)
    judged, doubts = judged_plan(visit, played, plan=plan, points=left, asked=asked)
    reckoned = _odds(visit, plan=plan, points=left, asked=asked) if plan else None
    journey, now = evening(
        EveningAsked(
            folder=visit.folder,
            today=visit.today,
            choice=asked.choice,
            grades=asked.grades,
            points=left,
            allowed=asked.allowed,
            plan=plan,
        ),
        memory=visit.memory,
    )
    levels = levels_view(journey, terms=terms, asked=asked) if left is None else None
    return ChoosingView(
        terms=terms,
        boxes=tuple(_boxes(terms, plan=judged.judgement.spent, left=left, allowance=allowance)),
        is_open="plan" in asked.typed,
        points=_points(terms, allowance, known=left, reckoned=reckoned),
        lead=tuple(_lead(journey, now=now, levels=levels)),
        now=_now(journey, now, terms=terms, asked=asked),
        chart=_chart(visit, journey, terms=terms),
        levels=levels,
        why_not=why_not(journey),
        slip=plan_slip(judged, doubts, counted=counted, asked=asked),
        turnout=_turnout(terms, reckoned) if reckoned else None,
        rows=entry_rows(
            counted.force, terms, known=_known(visit, counted, terms=terms), plan=plan, asked=asked
        ),
        forces=force_view(visit, points=left, asked=asked),
        findings=(*findings, *impossible),
    )


def _left(terms: Terms, allowance: Chances, *, rolled: int | None) -> int | None:
    """The points left; None while they are still to be rolled for."""
    if rolled is not None:
        return rolled - terms.taken_off
    return None if len(allowance.counts) > 1 else next(iter(allowance.counts))


def _now(
    journey: FallbackJourney, now: Evening | None, *, terms: Terms, asked: Question
) -> NowView | None:
    if now is None or journey.fallback is None:
        return None
    return now_view(now, journey.fallback, terms=terms, asked=asked)


def _chart(visit: Visit, journey: FallbackJourney, *, terms: Terms) -> ChartView | None:
    """The chart from the start, drawn once for every plan that is looked at beside it."""
    fallback = journey.fallback
    if fallback is None:
        return None
    return visit.memory.kept(
        ("fall-back chart", visit.folder, fallback.points),
        lambda: chart_view(fallback, terms=terms),
        rests_on=(fallback,),
    )


def _lead(
    journey: FallbackJourney, *, now: Evening | None, levels: LevelsView | None
) -> Iterator[str]:
    """The answer in sentences, the first of them first of all."""
    if now is not None:
        yield f"{step_words(forks(now.step))}."
        if isinstance(now.step, Ask):
            worth = near_text(now.step.worth)
            yield f"{worth} to come on average, asked and bought as well as can be; exact."
    elif levels is not None:
        yield f"{levels.title}{'' if levels.is_varied else ' first, whatever is rolled'}."
        yield f"Worth {levels.mean} on average, asked and bought as well as can be; exact."
    elif journey.value is None:
        yield "What to ask for first isn't known."


def _impossible_roll(terms: Terms, allowance: Chances, *, rolled: int | None) -> Iterator[Finding]:
    """A stop for an allowance that can't be rolled."""
    if rolled is None or rolled - terms.taken_off in allowance.counts:
        return
    totals = [each + terms.taken_off for each in allowance.counts]
    is_without_gap = totals[-1] - totals[0] == len(totals) - 1
    if is_without_gap and len(totals) > 1:
        reach = f"{totals[0]} to {totals[-1]}"
    else:
        reach = listed((str(each) for each in totals[:MOST_TOTALS]), joint="or")
    yield Finding(
        level=Level.STOP,
        code="allowance-impossible",
        message=f"{rolled} can't be rolled: it is {reach}.",
        effect="The sheet is as before the roll.",
        hint="Enter the whole allowance as it was rolled, before anything is taken off.",
        place=CHOSEN_HERE,
    )


def _boxes(
    terms: Terms, *, plan: int, left: int | None, allowance: Chances
) -> Iterator[tuple[str, str]]:
    points = tuple(allowance.counts)
    reach = f"{points[0]} to {points[-1]}" if len(points) > 1 else f"{points[0]}"
    yield "Game", terms.game.name
    yield "Points left", reach if left is None else f"{left}"
    yield "Plan", several(plan, "point")


def _points(
    terms: Terms, allowance: Chances, *, known: int | None, reckoned: PlanOdds | None
) -> PointsView:
    plans = (PlanLine(name="the plan", cost=reckoned.cost),) if reckoned else ()
    wide, phone = (
        allowance_bars.allowance_bars(allowance, plans=plans, known=known, width=width)
        for width in (allowance_bars.WIDE, allowance_bars.PHONE)
    )
    off = f", {several(terms.taken_off, 'point')} taken off" if terms.taken_off else ""
    return PointsView(
        drawings=(wide, phone),
        rows=tuple((row, f"{row.points + terms.taken_off}") for row in allowance_rows(allowance)),
        sentence=points_sentence(allowance),
        whence=f"{allowance_words(terms.game.allowance).removeprefix('with ')}{off}",
        known=known,
        is_rolled_for=len(allowance.counts) > 1,
    )


def _odds(
    visit: Visit, *, plan: tuple[Purchase, ...], points: int | None, asked: Question
) -> PlanOdds | None:
    """The odds of a plan; None where something of it can't be bought at all."""
    return odds(
        visit.folder,
        today=visit.today,
        choice=asked.choice,
        grades=asked.grades,
        plan=purchases_text(plan),
        points=points,
        memory=visit.memory,
    ).odds


def _turnout(terms: Terms, reckoned: PlanOdds) -> TurnoutView:
    drawings = None
    if reckoned.turnouts:
        drawings = (
            chance_tree.chance_tree(reckoned, width=chance_tree.WIDE),
            chance_tree.chance_tree(reckoned, width=chance_tree.PHONE),
        )
    return TurnoutView(
        drawings=drawings,
        rows=turnout_rows(reckoned),
        sentence=_chances_sentence(reckoned),
        asking=tuple(asking_sentences(reckoned, asking=terms.asking)),
    )


def _chances_sentence(reckoned: PlanOdds) -> str:
    """Such as `The plan comes off 13/27, 48 in 100: the points allow it 13/18, 72 in 100; ...`."""
    whole = f"The plan comes off {chance_words(reckoned.together)}"
    if Fraction(1) in {reckoned.affordable, reckoned.available} or not reckoned.together:
        reasons = [
            words
            for chance, words in (
                (reckoned.affordable, "the points always suffice"),
                (reckoned.available, "all of it always comes"),
            )
            if chance == 1
        ]
        return f"{whole}; {' and '.join(reasons)}." if reasons else f"{whole}."
    return (
        f"{whole}: the points suffice {chance_words(reckoned.affordable)}; "
        f"all of it comes {chance_words(reckoned.available)}."
    )


def _known(visit: Visit, counted: Count, *, terms: Terms) -> Known:
    """What is known of every entry of a game, kept while its terms hold."""
    return visit.memory.kept(
        ("entries known", visit.folder),
        lambda: Known(
            odds=entry_odds(terms),
            ready={
                offer.name: readiness(
                    counted.force,
                    counted.made,
                    plan=(Purchase(entry=offer.name, number=max(offer.cost)),),
                )
                for offer in terms.offers.values()
            },
        ),
        rests_on=(counted, terms),
    )
