"""The private sheet."""

from dataclasses import replace

from paradestate.core.paper.ground import Ground
from paradestate.core.paper.private_sheet import PrivateSheet, private_sheet
from paradestate.core.paper.tray_rows import TrayRow, tray_rows
from paradestate.core.stand import Sight
from paradestate.core.support.terms import terms_of
from tests.core.paper.games import secrets
from tests.core.paper.grounds import battalion, ground_of, with_plan
from tests.core.paper.trays import battalion_lids
from tests.forces import force_from


def shown(ground: Ground) -> PrivateSheet:
    draft = private_sheet(ground)
    assert draft.shown is not None
    return draft.shown


def test_everything_is_on_it() -> None:
    made = shown(secrets())
    assert made.game == "ZzGame: attack, with 4 + 1d6 points"
    assert "In reserve, named: 1 zzPlatoon." in made.order
    assert len(made.markers) == 4
    assert made.dummies == 4
    assert len(made.arrivals) == 2
    assert len(made.notes) == 12
    sights = {kind.name: kind.sight for kind in made.kinds}
    assert sights["ZzMine"] is Sight.NO
    assert sights["ZzPost"] is Sight.WHEN_REVEALED
    assert sights["ZzMarker"] is Sight.NO
    assert sights["Section"] is Sight.YES


def test_the_battalion_alone_has_no_game_and_no_order() -> None:
    made = shown(battalion())
    assert (made.game, made.order, made.troops, made.arrivals) == ("", (), (), ())
    assert [(kind.number, kind.name) for kind in made.kinds][:3] == [
        (1, "Battalion Command"),
        (4, "Company Command"),
        (24, "Rifle Section"),
    ]


def test_it_says_tray_and_row_where_the_owner_has_laid_the_trays() -> None:
    laid = dict(tray_rows(battalion_lids()))
    laid["Light tanks / Light Tank 1"] = TrayRow(tray="case 2", row=7)
    made = shown(replace(with_plan(("light tanks", 2), ("field battery", 1)), laid=laid))
    assert made.units[0].where == f"Case 1, row {laid['Battalion Command'].row}"
    assert [line.where for line in made.troops] == ["Case 2, row 7", ""]
    assert made.markers_where.startswith("Case 1, row")


def test_a_camp_is_on_it_and_seen_and_is_no_marker() -> None:
    camp = force_from(
        "stands: {camp: {base: 80 x 60 mm, printed: yes}}\nformations: {top: {parts: {camp: 1}}}\n"
    )
    made = shown(ground_of(camp))
    assert (made.markers, made.dummies, made.prints) == ((), 0, ("Camp",))
    assert [kind.sight for kind in made.kinds] == [Sight.YES]


def test_it_says_nothing_of_trays_that_nobody_has_laid() -> None:
    made = shown(with_plan(("light tanks", 2)))
    assert {line.where for line in made.units} == {line.where for line in made.troops} == {""}
    assert made.markers_where == ""


def test_a_plan_makes_the_order_and_so_does_a_reserve() -> None:
    assert shown(with_plan(("light tanks", 2))).order == ("In support: 2 x light tanks.",)
    kept = replace(battalion(), reserve=replace(secrets().reserve, purchases=()))
    assert shown(kept).order == ("In reserve, named: 1 zzPlatoon.",)


def test_a_force_of_nothing_has_no_sheet() -> None:
    ground = ground_of(force_from("formations: {top: {men: 5}}\n"))
    assert private_sheet(ground).shown is None


def test_grades_that_are_not_as_usual_are_said_with_the_game() -> None:
    ground = replace(battalion(), game="whole-day attack")
    grades = {"training": "recruits"}
    terms, _ = terms_of(ground.force, ground.made, game=ground.game, grades=grades)
    words = shown(replace(ground, terms=terms)).game
    assert words.endswith("; training: recruits")
    assert shown(ground).game == words.removesuffix("; training: recruits")
