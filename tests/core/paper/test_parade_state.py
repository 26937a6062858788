"""The return on top."""

from collections.abc import Mapping
from dataclasses import replace

from paradestate.core.establishment import establishment
from paradestate.core.force import Force, Wishes
from paradestate.core.mark.marking import marking
from paradestate.core.paper.paper import Draft
from paradestate.core.paper.parade_state import NO_PLAN, UNPLANNED, ParadeState, parade_state
from paradestate.core.parade import ranks
from paradestate.core.sentence.cross_check import Tick
from paradestate.core.strength import strength
from paradestate.core.support.turnout import PlanOdds
from tests.core.sentence.test_odds import ODDS
from tests.forces import force_from, marenz

HOLDS = Tick(words="1 and 1 make 2", holds=True)

MARKER = """\
stands: {marker: {base: 40 mm disc, printed: yes}}
formations: {top: {parts: {marker: 1}}}
"""


def returned(force: Force, *, game: str = "", odds: PlanOdds | None = None) -> Draft[ParadeState]:
    made, _ = establishment(force)
    assert made is not None
    found = strength(force, made)
    return parade_state(
        force,
        ranks=ranks(made, strength=found, marks=marking(force, made)),
        strength=found,
        game=game,
        odds=odds,
        checks=(HOLDS,),
    )


def shown_of(
    *, owned: Mapping[str, Mapping[str, int]] | None = None, wished: Wishes = Wishes.NONE
) -> ParadeState:
    force = marenz()
    assert force.raise_ is not None
    raised = replace(force.raise_, wished=wished)
    shown = returned(replace(force, stock_stands=owned or {}, raise_=raised)).shown
    assert shown is not None
    return shown


def test_every_company_says_its_stands_by_stage_and_the_rows_make_the_total() -> None:
    shown = shown_of(owned={"rifle section": {"based": 6}})
    assert shown.stages == ("based", "painted", "undercoated", "assembled", "in packet")
    assert [row.name for row in shown.rows][:2] == ["Battalion troops", "No 1 Company"]
    assert shown.rows[1].by_stage == (6, 0, 0, 0, 0)
    for column in range(len(shown.stages)):
        assert sum(row.by_stage[column] for row in shown.rows) == shown.total.by_stage[column]
    assert sum(row.lacking for row in shown.rows) == shown.total.lacking == 31
    assert shown.lead == "6 of 37 stands are fit to fight."
    assert shown.wished is None


def test_one_stand_that_is_finished_is_one() -> None:
    assert shown_of(owned={"rifle section": {"based": 1}}).lead.startswith("1 of 37 stands is fit")
    assert shown_of().lead == "No stand of 37 is finished yet."


def test_wished_stands_are_beside_the_total_and_not_in_it() -> None:
    shown = shown_of(wished=Wishes.ALL)
    assert shown.total.wanted == 37
    assert shown.wished is not None
    assert shown.wished.wanted == 9  # the headquarters scene, and the 8 markers as models


def test_figures_that_are_lacking_are_said_by_kind() -> None:
    figures = {row.name: row for row in shown_of(owned={"rifle section": {"based": 6}}).figures}
    riflemen = figures["Riflemen"]
    assert (riflemen.wanted, riflemen.there, riflemen.lacking) == (101, 24, 77)


def test_the_chances_of_a_game_are_said_and_add_up() -> None:
    draft = returned(marenz(), game="whole-day attack", odds=ODDS)
    assert draft.shown is not None
    assert draft.shown.chances == (
        "Planned: 1 x guns and 2 x horse, 7 points.",
        "The points pay for it with 100 in 100 rolls.",
        "If they do, all of it comes with 50 in 100.",
        "Both together: 50 in 100. Exact.",
    )
    assert draft.ticks == (
        Tick(words="the chances of 2 ways in which the plan may come out add up to 1", holds=True),
    )
    assert draft.shown.checks == (HOLDS, *draft.ticks)


def test_chances_that_dont_add_up_dont_hold() -> None:
    odd = replace(ODDS, turnouts=ODDS.turnouts[:1])
    (tick,) = returned(marenz(), game="whole-day attack", odds=odd).ticks
    assert not tick.holds


def test_a_plan_without_odds_says_so() -> None:
    draft = returned(marenz(), game="whole-day attack")
    assert draft.shown is not None
    assert draft.shown.chances == (NO_PLAN,)
    assert draft.ticks == ()


def test_a_game_without_a_plan_has_no_chances_to_say() -> None:
    draft = returned(marenz(), game="whole-day attack", odds=replace(ODDS, plan=()))
    assert draft.shown is not None
    assert draft.shown.chances == (UNPLANNED,)
    assert draft.ticks == ()


def test_all_that_is_finished_is_all() -> None:
    text = """\
figures: {rifleman: {}}
stands: {section: {base: 40 x 20 mm, figures: {rifleman: 1}}}
formations: {top: {parts: {section: 2}}}
stock stands: {section: {based: 2}}
"""
    shown = returned(force_from(text)).shown
    assert shown is not None
    assert shown.lead == "All 2 stands are finished."


def test_a_force_of_markers_alone_has_nothing_to_return() -> None:
    assert returned(force_from(MARKER)).shown is None
