"""The command `odds`."""

from pathlib import Path

import pytest

from tests.cli.calling import call

GAME = ("--game", "whole-day attack")
PLAN = ("--plan", "light tanks=2, tank squadron commander=1, machine-gun platoon=2")


def test_a_plan_for_people(folder: Path) -> None:
    answer = call("odds", folder, *GAME, *PLAN)
    assert answer.status == 0
    for line in (
        "The points suffice: 13/18, 72 in 100.",
        "All of it comes:    2/3, 67 in 100.",
        "Both:               13/27, 48 in 100.",
        "    16       11       83  ░░░░░░░░░░░░░░░░",
        "-- 17: the plan, 13/18, 72 in 100",
        "    17       14       72  ████████████████████",
        "2/3, 67 in 100  all of it                          -",
        "1/3, 33 in 100  2 x machine-gun platoon     12 of 17",
        "Exact: every way the dice can fall is counted.",
    ):
        assert line in answer.out


def test_a_plan_for_programs(folder: Path) -> None:
    document = call("odds", folder, *GAME, *PLAN, "--json").document
    assert document["affordable"] == "13/18"
    assert document["available"] == "2/3"
    assert document["together"] == "13/27"
    assert document["cost"] == 17
    assert document["allowance"]["13"] == "1/36"
    assert document["at_least"]["17"] == "13/18"
    assert (document["mean"], document["percentiles"]) == ("18", {"10": 15, "50": 18, "90": 21})
    assert document["rolls"] == [
        {
            "entry": "light tanks",
            "asked": 2,
            "allowed": {"0": "1/3", "2": "2/3"},
            "shared_roll": None,
        }
    ]
    assert document["turnouts"][1] == {
        "chance": "1/3",
        "purchases": [{"entry": "machine-gun platoon", "number": 2, "choice": ""}],
        "points_free": 12,
        "points_lost": 0,
    }
    assert document["asking_order"] == ["light tanks"]
    assert document["certainty"] == document["asking_order_certainty"] == "exact"


def test_points_that_were_rolled(folder: Path) -> None:
    answer = call("odds", folder, *GAME, "--plan", "field battery=1", "--points", "18")
    assert "1 x field battery costs 3 points." in answer.out
    assert "The points suffice: always." in answer.out
    assert "18 points are left to spend." in answer.out
    assert "Points left, chances" not in answer.out
    assert "Nothing of it is rolled for." in answer.out


def test_no_plan_at_all(folder: Path) -> None:
    answer = call("odds", folder, *GAME, "--set", "company=2")
    assert "no plan is made, so it is the points alone." in answer.out
    assert "20 to 30 points are left to spend, 25 on average." in answer.out
    assert "The points suffice" not in answer.out


def test_points_lost_and_many_ways_to_turn_up(folder: Path) -> None:
    text = (folder / "supporting-troops.yaml").read_text(encoding="utf-8")
    lost = text.replace("when refused: points kept", "when refused: points lost")
    (folder / "supporting-troops.yaml").write_text(lost, encoding="utf-8")
    plan = "anti-tank guns=3, armoured cars=3, light tanks=3, medium mortars=2"
    answer = call("odds", folder, *GAME, "--plan", plan, "--points", "40")
    assert "comes" in answer.out
    assert "lost" in answer.out
    assert "Best asked in this order: anti-tank guns, armoured cars and then light tanks." in (
        answer.out
    )
    assert "On average 15 points are lost; no other order loses fewer." in answer.out


SIX = """\
format: 1
title: Test
stands: {a: {base: none}}
formations: {top: {parts: {a: 1}}}
raise: {formation: top}
games: {evening: {allowance: 20d6, posture: attack}}
supporting troops:
  guns:
    cost: {1: 1, 2: 3}
    limit: any
    availability: {roll: 1d6, allows: {1-2: 0, 3-4: 1, 5-6: all}}
    when refused: points kept
"""


def test_what_is_too_long_is_folded_or_left_out(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(SIX, encoding="utf-8")
    answer = call("odds", tmp_path, "--plan", ", ".join(["guns=2"] * 5))
    assert "20-24" in answer.out
    assert " more)" in answer.out
    many = ("odds", tmp_path, "--plan", ", ".join(["guns=2"] * 9))
    assert "Not computed what may turn up: the rolls can fall in too many ways." in call(*many).out
    document = call(*many, "--json").document
    assert document["turnouts"] is None
    assert document["available"] == "1/19683"


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("--points", "many"), "not-a-number"),
        (("--grade", "training"), "not-names-and-numbers"),
        (("--plan", "light tanks=1"), "number-not-priced"),
    ],
)
def test_what_cannot_be_worked_out(folder: Path, words: tuple[str, str], code: str) -> None:
    answer = call("odds", folder, *GAME, *words)
    assert answer.status == 1
    assert f"[{code}]" in answer.err


def test_how_many_fire_missions_are_fired(folder: Path) -> None:
    """1, 4 and 4 of 9 for two missions on 3 or more; by hand."""
    entries = folder / "supporting-troops.yaml"
    text = entries.read_text(encoding="utf-8").replace(
        "    each: {fire mission: 1}\n",
        "    each: {fire mission: 1}\n    missions: {arrives: {roll: 1d6, on: 3 or more}}\n",
    )
    entries.write_text(text, encoding="utf-8")
    plan = (*GAME, "--plan", "field battery=2")
    assert (
        "If all of it comes: Field battery: of 2 missions are fired 0 (1/9, 11 in 100)"
        in call("odds", folder, *plan).out
    )
    assert call("odds", folder, *plan, "--json").document["missions"] == [
        {
            "entry": "field battery",
            "missions": 2,
            "fired": {"0": "1/9", "1": "4/9", "2": "4/9"},
            "mean_fired": "4/3",
        }
    ]
    said = " ".join(call("read-back", folder, "--only", "supporting troops").out.split())
    assert "For each mission roll one 6-sided die: it arrives on 3 or more." in said
    assert "Field battery: of 3 missions are fired 0 (1/27" in said
