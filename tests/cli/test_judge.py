"""The command `judge`."""

from pathlib import Path

from tests.cli.calling import call

WHOLE_DAY = ("--game", "whole-day attack")
PLAN = "light tanks=2, tank squadron commander=1, machine-gun platoon=2"


def test_a_legal_plan_with_its_paragraph(folder: Path) -> None:
    answer = call("judge", folder, *WHOLE_DAY, "--points", "18", "--plan", PLAN)
    assert answer.status == 0
    assert answer.out == (
        "Republic of Marenz, Field Battalion, Frontier War\n"
        "Whole-day attack with 18 points: legal.\n"
        "17 spent, 1 left; worth 15 to you. Exact.\n"
        "\n"
        "Under command: 2 x machine-gun platoon (attached to a platoon, one to each at most).\n"
        "In support: 2 x light tanks and 1 x tank squadron commander.\n"
    )


def test_a_plan_that_is_not_legal(folder: Path) -> None:
    plan = f"{PLAN}, assault training for a platoon=1"
    answer = call("judge", folder, *WHOLE_DAY, "--points", "18", "--plan", plan)
    assert answer.status == 1
    assert "Whole-day attack with 18 points: not legal.\n19 spent, 1 over" in answer.out
    assert "Dropping 1 x assault training for a platoon (2)" in answer.err


def test_what_the_dice_leave(folder: Path) -> None:
    answer = call("judge", folder, *WHOLE_DAY, "--plan", PLAN, "--allowed", "light tanks=0")
    assert "Whole-day attack with 23 points, the most that the dice can leave: legal." in answer.out
    assert answer.out.endswith(
        "After the dice:\n"
        "Under command: 2 x machine-gun platoon (attached to a platoon, one to each at most).\n"
    )


def test_without_worths_nothing_is_said_of_them(folder: Path) -> None:
    answer = call("judge", folder, *WHOLE_DAY, "--plan", "field battery=1", "--points", "18")
    assert "3 spent, 15 left. Exact." in answer.out


def test_the_judgement_for_programs(folder: Path) -> None:
    options = ("--points", "18", "--plan", PLAN, "--allowed", "light tanks=0", "--json")
    document = call("judge", folder, *WHOLE_DAY, *options).document
    assert (document["legal"], document["points"], document["spent"]) == (True, 18, 17)
    assert (document["worth"], document["certainty"]) == ("15", "exact")
    assert document["plan"][0] == {"entry": "light tanks", "number": 2, "choice": ""}
    assert document["broken"] == []
    assert document["after_the_dice"]["points_free"] == 12
    assert document["ready"][0] == {
        "entry": "light tanks",
        "stand": "light tank",
        "wanted": 2,
        "finished": 0,
        "unfinished": 0,
        "lacking": {"light tank": 2},
    }
    assert "refused" in [finding["code"] for finding in document["findings"]]


def test_the_ways_out_for_programs(folder: Path) -> None:
    plan = "tank squadron commander=1"
    answer = call("judge", folder, *WHOLE_DAY, "--points", "18", "--plan", plan, "--json")
    assert answer.status == 1
    (broken,) = answer.document["broken"]
    assert (broken["code"], broken["has"], broken["bound"]) == ("need-missing", 0, 1)
    assert broken["all_ways_tried"] is True
    drop, add = broken["ways_out"]
    assert (drop["points"], drop["plan"]) == (-3, [])
    assert add["changes"] == [
        {"goes": None, "comes": {"entry": "light tanks", "number": 2, "choice": ""}}
    ]
    assert answer.document["after_the_dice"] is None


def test_slips_in_the_options_are_told_all_at_once(folder: Path) -> None:
    answer = call(
        "judge", folder, *WHOLE_DAY, "--points", "x", "--allowed", "y", "--reserve", "z=z"
    )
    assert answer.status == 1
    assert answer.err.endswith("3 stops\n")
    assert answer.out == ""


def test_an_unknown_game_prevents_the_answer(folder: Path) -> None:
    answer = call("judge", folder, "--game", "moonlight", "--plan", PLAN)
    assert (answer.status, answer.out) == (1, "")


def test_without_a_plan_it_says_how_one_is_typed(folder: Path) -> None:
    answer = call("judge", folder, *WHOLE_DAY)
    assert answer.status == 0
    assert "No plan is made of supporting troops for whole-day attack. [plan-unsaid]" in answer.err
    typed = "machine-gun platoon=1, pioneers(flame)=1"
    assert f"Type one, such as --plan '{typed}', or write it" in answer.err
    made = call("judge", folder, *WHOLE_DAY, "--plan", typed)
    assert made.status == 0
    assert "plan-unsaid" not in made.err


def test_a_choice_that_is_missing_is_told_as_it_is_typed(folder: Path) -> None:
    answer = call("judge", folder, *WHOLE_DAY, "--points", 18, "--plan", "pioneers=2")
    assert (
        "Writing pioneers(flame)=2 (6 more), pioneers(charges)=2 (6 more), "
        "pioneers(bridging)=2 (6 more) or dropping 2 x pioneers would do it."
    ) in answer.err


def test_where_nothing_is_rolled_no_dice_are_named(tmp_path: Path) -> None:
    call("new", tmp_path / "ommerath", "--example", "ommerath")
    answer = call("judge", tmp_path / "ommerath", "--game", "field battle")
    assert "Field battle with 300 points: not legal." in answer.out
    assert "dice" not in answer.out
