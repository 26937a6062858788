"""The state board."""

from dataclasses import replace

from paradestate.core.paper.ground import Ground
from paradestate.core.paper.state_board import MissionRow, StateBoard, state_board
from tests.core.paper.games import secrets
from tests.core.paper.grounds import battalion, ground_of, with_plan
from tests.forces import force_from


def shown(ground: Ground) -> StateBoard:
    made = state_board(ground).shown
    assert made is not None
    return made


def test_each_platoon_has_a_row_with_a_box_for_each_stand_and_none_for_a_marker() -> None:
    made = shown(battalion())
    assert len(made.rows) == 17
    assert sum(len(row.stands) for row in made.rows) == 37
    assert made.states == ()


def test_supporting_troops_have_rows_and_their_missions_boxes() -> None:
    made = shown(with_plan(("light tanks", 2), ("field battery", 3)))
    assert made.rows[-1].stands == ("1 Light Tank", "2 Light Tank")
    assert made.missions == (MissionRow(name="3 x field battery", number=3),)


def test_states_are_the_owners_words() -> None:
    assert shown(secrets()).states == ("zzState",)


def test_without_stands_there_is_none() -> None:
    ground = ground_of(force_from("formations: {top: {men: 5}}\n"))
    assert state_board(replace(ground, plan=())).shown is None
