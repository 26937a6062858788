"""The state board."""

from dataclasses import replace

from paradestate.core.paper.ground import Ground
from paradestate.core.paper.state_board import LossStretch, MissionRow, StateBoard, state_board
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


LIMITS = """\
stands:
  section: {base: 40 x 20 mm}
  gun: {base: 40 x 40 mm}
formations:
  team: {echelon: team, called: Team, parts: {gun: 1}}
  platoon: {echelon: platoon, called: Platoon, parts: {section: 2, team: 1}}
  company: {echelon: company, called: Company, parts: {platoon: 2, gun: 1}}
  top: {parts: {company: 2, section: SECTIONS}}
loss limits:
  - {of: company, at: {a third: shaken, 5: falls back, all: gone}}
  - {of: platoon, at: {2: shaken, more than 2: gone}}
  - {of: team, at: {1: silent}}
  - {at: {half: over}}
"""


def limited(*, sections: int) -> StateBoard:
    return shown(ground_of(force_from(LIMITS.replace("SECTIONS", str(sections)))))


def test_boxes_are_marked_where_something_happens() -> None:
    made = limited(sections=1)
    assert [row.name for row in made.losses] == ["1 Company", "2 Company", "The whole force"]
    company, _, whole = made.losses
    assert (company.words, company.steps) == (
        "of 7 out",
        "at 3 shaken, at 5 falls back, at 7 gone",
    )
    assert company.stretches == (
        LossStretch(boxes=2, at=3, effects="shaken"),
        LossStretch(boxes=1, at=5, effects="falls back"),
        LossStretch(boxes=1, at=7, effects="gone"),
    )
    assert whole.stretches == (
        LossStretch(boxes=7, at=8, effects="over"),
        LossStretch(boxes=7, at=0, effects=""),
    )


def test_what_happens_to_a_unit_by_itself_stands_in_its_row() -> None:
    limits = {row.name: row.limits for row in limited(sections=1).rows}
    assert limits["1 Company, 2 Platoon"] == (
        "2 of 3 out: shaken; 3 of 3 out: gone",
        "Team, 1 of 1 out: silent",
    )
    assert limits["1 Company"] == ()


def test_too_many_boxes_for_a_row_are_said_in_words() -> None:
    whole = limited(sections=60).losses[-1]
    assert (whole.stretches, whole.words, whole.steps) == ((), "of 74 out", "at 37 over")
