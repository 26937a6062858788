"""Papers of a game that another journey has to work out first."""

from dataclasses import replace

from paradestate.core.certainty import NotComputed
from paradestate.core.choice import Choice
from paradestate.core.finding import stops
from paradestate.core.paper.decision_chart import DecisionChart, decision_chart, likeliest
from paradestate.core.paper.ground import NO_RESERVE
from paradestate.core.paper.paper import Draft
from paradestate.core.paper.umpires_sheet import UmpiresSheet, umpires_sheet
from paradestate.journeys.count import count
from paradestate.journeys.fallback import FallbackJourney, best_fallback
from paradestate.journeys.marking import marking_of
from paradestate.journeys.paper.paper_kind import Desk


def umpires_of(desk: Desk) -> Draft[UmpiresSheet]:
    """The umpire's sheet, with the other side where its folder was named.

    What is amiss in that folder is said; with a stop in it there is no sheet.
    """
    if desk.asked.other is None:
        return umpires_sheet(desk.ground)
    answer = count(desk.asked.other, today=desk.today, choice=Choice(), memory=desk.memory)
    halts = stops(answer.checked.findings)
    if answer.count is None:
        return Draft(shown=None, findings=halts)
    force = answer.count.force
    game = desk.ground.game if desk.ground.game in force.games else ""
    other = replace(
        desk.ground,
        force=force,
        made=answer.count.made,
        marks=marking_of(answer.count, memory=desk.memory),
        game=game,
        plan=force.games[game].plan if game else (),
        dummies=None,
        strength=answer.count.strength,
        reserve=NO_RESERVE,
        revealed=(),
        terms=None,
        arranged=(),
    )
    return umpires_sheet(desk.ground, other=other)


def chart_of(desk: Desk) -> Draft[DecisionChart]:
    """The decision chart for the points that were typed, or for the likeliest.

    There is none in a game without points, or where the owner says no worths.
    """
    if not desk.ground.game:
        return Draft(shown=None)
    begun = _best(desk, points=desk.points)
    if begun.allowance is None or isinstance(begun.certainty, NotComputed):
        return Draft(shown=None)
    found = begun if begun.fallback is not None else _best(desk, points=likeliest(begun.allowance))
    if found.fallback is None:
        return Draft(shown=None)
    chart = decision_chart(
        found.fallback,
        game=desk.ground.game,
        levels=begun.levels,
        allowance=begun.allowance,
    )
    return Draft(shown=chart)


def _best(desk: Desk, *, points: int | None) -> FallbackJourney:
    return best_fallback(
        desk.folder,
        today=desk.today,
        choice=desk.choice,
        grades=desk.grades,
        points=points,
        memory=desk.memory,
    )
