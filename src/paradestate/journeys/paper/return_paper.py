"""The return on top of all papers: strength, chances, and every number that was counted twice."""

from collections.abc import Iterator

from paradestate.core.paper.labels import labels
from paradestate.core.paper.opponents_sheet import opponents_sheet
from paradestate.core.paper.paper import Draft
from paradestate.core.paper.parade_state import ParadeState, parade_state
from paradestate.core.parade import ranks
from paradestate.core.sentence.cross_check import Tick, ticks
from paradestate.core.sentence.support import typed_words
from paradestate.core.support.turnout import PlanOdds
from paradestate.journeys.count import Count, count
from paradestate.journeys.odds import odds
from paradestate.journeys.paper.paper_kind import Desk
from paradestate.journeys.paper.workshop_papers import packing_list_of


def parade_state_of(desk: Desk) -> Draft[ParadeState]:
    """The return of the force; with a game that is still to come its chances too."""
    ground = desk.ground
    answer = count(desk.folder, today=desk.today, choice=desk.choice, memory=desk.memory)
    if answer.count is None:
        return Draft(shown=None)
    counted = answer.count
    return parade_state(
        counted.force,
        ranks=ranks(counted.made, strength=counted.strength, marks=ground.marks),
        strength=counted.strength,
        game="" if desk.is_of_record else ground.game,  # what was taken has no chances any more
        odds=_odds(desk),
        checks=tuple(_checks(desk, counted)),
    )


def _odds(desk: Desk) -> PlanOdds | None:
    if not desk.ground.game or desk.is_of_record:
        return None
    plan = ", ".join(map(typed_words, desk.ground.plan))
    journey = odds(
        desk.folder,
        today=desk.today,
        choice=desk.choice,
        grades=desk.grades,
        plan=plan,
        memory=desk.memory,
    )
    return journey.odds


def _checks(desk: Desk, counted: Count) -> Iterator[Tick]:
    """Those of the count, of the labels, of the trays and of what the opponent may see."""
    yield from ticks(counted.made, check=counted.check, strength=counted.strength)
    yield from labels(desk.ground).ticks
    yield from packing_list_of(desk).ticks
    if desk.ground.game or desk.ground.plan:
        yield from opponents_sheet(desk.ground).ticks
