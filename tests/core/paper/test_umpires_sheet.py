"""The umpire's sheet."""

from dataclasses import replace

from paradestate.core.paper.ground import Ground
from paradestate.core.paper.umpires_sheet import TURNS, UmpiresSheet, umpires_sheet
from tests.core.paper.games import secrets
from tests.core.paper.grounds import battalion, ground_of
from tests.forces import force_from


def shown(ground: Ground, *, other: Ground | None = None) -> UmpiresSheet:
    draft = umpires_sheet(ground, other=other)
    assert draft.shown is not None
    return draft.shown


def test_both_sides_stand_side_by_side() -> None:
    made = shown(battalion(), other=secrets())
    assert [side.title for side in made.sides] == [battalion().force.title, "zzTitle"]
    assert [len(side.markers) for side in made.sides] == [8, 4]
    assert sum(unit.stands for unit in made.sides[0].units) == 37


def test_all_that_is_hidden_is_told() -> None:
    (side,) = shown(secrets()).sides
    assert side.hidden == (
        "4 x ZzMine",
        "2 x ZzPost, until revealed",
        "3 x zzBattery with zzSmoke: 3 fire missions",
    )
    assert side.dummies == 4


def test_the_timetable_says_when_where_and_by_which_roll_something_comes() -> None:
    made = shown(secrets())
    company, late = made.due
    assert (company.number, company.edge, company.first) == (1, "zzEdge", 2)
    assert company.how == "from turn 2 on, each rolling one 6-sided die: there on 4 to 6"
    assert company.last == TURNS
    assert (late.number, late.how, late.first, late.last) == (2, "in turn 3", 3, 3)
    assert made.turns == TURNS


def with_arrival(text: str) -> Ground:
    force = force_from(
        "stands: {gun: {base: 40 x 20 mm}}\nformations: {top: {parts: {gun: 3}}}\n"
        f"games: {{night: {{posture: attack, allowance: 4, arrivals: {{gun: {text}}}}}}}\n"
    )
    return replace(ground_of(force), game="night")


def test_the_last_turn_in_which_is_rolled_ends_the_row() -> None:
    (due,) = shown(with_arrival("{roll: 1d6, on: 6, from turn: 2, until turn: 5}")).due
    assert (due.number, due.last) == (3, 5)
    assert due.how == "from turn 2 to 5, each rolling one 6-sided die: there on 6"


def test_who_comes_late_makes_the_timetable_longer() -> None:
    made = shown(with_arrival("{from turn: 15}"))
    assert made.turns == 15
    assert shown(with_arrival("{roll: 1d6, on: 6, from turn: 15}")).due[0].last == 15


def test_there_is_none_of_a_force_of_nothing() -> None:
    ground = ground_of(force_from("formations: {top: {men: 5}}\n"))
    assert umpires_sheet(ground).shown is None
