"""The command `forces`."""

from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.chance.force import diagram, searched_force
from paradestate.cli.forces_report import number_text
from tests.cli.calling import Called, call
from tests.journeys.test_forces import SMALL, TANGLED


def forces(folder: Path, *words: object) -> Called:
    return call("forces", folder, "--game", "whole-day attack", *words)


@pytest.fixture
def small(tmp_path: Path) -> Path:
    (tmp_path / "force.yaml").write_text(SMALL)
    return tmp_path


def test_the_example_with_five_points(folder: Path) -> None:
    answer = forces(folder, "--points", 5)
    assert answer.status == 0
    for line in (
        "Whole-day attack with 5 points: 19 legal forces; 8 of them spend all.",
        "6 of them can be fielded with what is owned (32 in 100).",
        "The must layer itself lacks 125 figures.",
        "     5     19          8               6              5  ████████░░░░░░░░░░░░░░░░",
        "Worth most to you: 5 for 5 points, 2 x machine-gun platoon.",
        "Next: 4 for 4 points, 1 x anti-tank guns.",
        "     4      0  yes             twice 1 x assault training for a platoon",
        "Exact: every legal force is counted once, whatever the order of its purchases.",
    ):
        assert line in answer.out


def test_all_that_the_dice_leave(folder: Path) -> None:
    answer = forces(folder, "--at-random", 3)
    assert "with 18 points, the middle of what the dice leave: 3,809 legal" in answer.out
    assert "    23  14,187      3,036 " in answer.out
    assert "At random: " in answer.out
    assert "All of them" not in answer.out


def test_the_example_for_programs(folder: Path) -> None:
    document = forces(folder, "--points", 18, "--json").document
    assert document["legal"] == 3809
    assert document["spending_all"] == 977
    assert (document["fieldable"], document["fieldable_share"]) == (20, "20/3809")
    assert document["best"] == {
        "worth": "19",
        "points": 18,
        "purchases": [
            {"entry": "machine-gun platoon", "number": 2, "choice": ""},
            {"entry": "anti-tank guns", "number": 1, "choice": ""},
            {"entry": "light tanks", "number": 2, "choice": ""},
        ],
    }
    assert [each["worth"] for each in document["next_best"]] == ["18", "17", "16"]
    assert document["list"] is None
    assert document["certainty"] == document["fieldable_certainty"] == "exact"
    assert document["by_points"][5] == {
        "points": 5,
        "chance": None,
        "legal": 19,
        "spending_all": 8,
        "fieldable": 6,
        "best_worth": "5",
    }


def test_the_dice_for_programs(folder: Path) -> None:
    document = forces(folder, "--json").document
    assert (document["points"], document["points_given"]) == (18, False)
    assert document["by_points"][5]["chance"] == "1/6"


def test_a_list_for_programs(folder: Path) -> None:
    document = forces(folder, "--points", 2, "--json").document
    assert document["list"] == [
        {"worth": "0", "points": 0, "purchases": [], "can_be_fielded": True},
        {
            "worth": "0",
            "points": 2,
            "purchases": [{"entry": "assault training for a platoon", "number": 1, "choice": ""}],
            "can_be_fielded": True,
        },
    ]


def test_without_worths(small: Path) -> None:
    answer = call("forces", small, "--points", 8, "--from", "finished", "--at-random", 2)
    assert "6 of them can be fielded with what is finished" in answer.out
    assert "Nothing has a worth, so that no force is the best" in answer.out
    document = call("forces", small, "--json").document
    assert (document["best"], document["next_best"]) == (None, [])
    assert document["fieldable_best"] is None


def test_the_best_is_there(small: Path) -> None:
    (small / "worths.yaml").write_text("worths: {A: {1: 2}}\n")
    answer = call("forces", small, "--points", 8)
    assert "That can be fielded." in answer.out


def test_nothing_is_legal(small: Path) -> None:
    must = SMALL.replace("limit: {most: 3}", "limit: {least: 3, most: 3}")
    (small / "force.yaml").write_text(must)
    (small / "worths.yaml").write_text("worths: {A: {1: 2}}\n")
    answer = call("forces", small, "--points", 5)
    assert "Evening with 5 points: no force is legal, not even an empty one" in answer.out
    assert "Legal forces by points" not in answer.out
    assert "Worth" not in answer.out
    document = call("forces", small, "--points", 5, "--json").document
    assert (document["best"], document["fieldable_share"], document["list"]) == (None, None, [])


def test_what_is_not_worked_out_is_said(small: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (small / "force.yaml").write_text(TANGLED)
    monkeypatch.setattr(diagram, "MOST_NODES", 4)
    answer = call("forces", small, "--points", 8)
    assert "How many can be fielded wasn't computed: with so many points and rules" in answer.out
    document = call("forces", small, "--points", 8, "--json").document
    assert (document["fieldable"], document["fieldable_certainty"]) == (None, "not computed")
    assert document["list"][0]["can_be_fielded"] is None
    monkeypatch.setattr(diagram, "MOST_NODES", 1)
    answer = call("forces", small, "--points", 8)
    assert "Not computed: with so many points and rules more than " in answer.out
    document = call("forces", small, "--points", 8, "--json").document
    assert (document["legal"], document["certainty"]) == (None, "not computed")


def test_the_best_is_said_without_the_number_of_all(
    small: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (small / "force.yaml").write_text(TANGLED)
    (small / "worths.yaml").write_text("worths: {A: {1: 2, 2: 3}, B: {1: 3}}\n")
    monkeypatch.setattr(diagram, "MOST_NODES", 4)
    answer = call("forces", small, "--points", 7)
    best = "Worth most of what can be fielded: 5 for 5 points, 1 x A and 1 x B."
    sure = "Exact: no legal force that can be fielded is worth more, and none worth as much costs"
    assert "How many can be fielded wasn't computed: " in answer.out
    assert best in answer.out
    assert sure in answer.out
    document = call("forces", small, "--points", 7, "--json").document
    assert document["fieldable_best"]["worth"] == "5"
    monkeypatch.setattr(diagram, "MOST_NODES", 1)
    answer = call("forces", small, "--points", 7, "--at-random", 1)
    for line in (
        "Evening with 7 points: how many legal forces there are wasn't computed: with so many",
        "None was drawn at random: that needs their number.",
        "Worth most to you: 6 for 7 points, twice 1 x A and 1 x B.",
        best,
        sure,
    ):
        assert line in answer.out
    document = call("forces", small, "--points", 7, "--json").document
    assert (document["legal"], document["certainty"]) == (None, "not computed")
    assert (document["best"]["worth"], document["best_certainty"]) == ("6", "exact")
    assert document["best_bound"] is None
    assert document["fieldable_best"]["points"] == 5
    assert document["fieldable_best_certainty"] == "exact"
    assert document["fieldable_reason"] == document["reason"]


def test_the_best_of_what_can_be_fielded_may_be_unknown(
    small: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    text = SMALL.replace("{card: 1}", "{card: 1, C: 1}").replace(
        "each: {A: 1}}", "replaces: {of: C, number: 1, with: A}}"
    )
    (small / "force.yaml").write_text(text)
    (small / "worths.yaml").write_text("worths: {A: {1: 2}}\n")
    monkeypatch.setattr(diagram, "MOST_NODES", 1)
    answer = call("forces", small)
    assert "with 7 points, the middle of what the dice leave: how many legal forces" in answer.out
    assert "The best that can be fielded wasn't computed: the must layer lacks " in answer.out
    document = call("forces", small, "--json").document
    assert document["fieldable_best_certainty"] == "not computed"
    assert document["fieldable_reason"].startswith("the must layer lacks figures")


def test_a_search_that_is_stopped_gives_a_bound(
    small: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (small / "force.yaml").write_text(TANGLED)
    (small / "worths.yaml").write_text("worths: {A: {1: 2, 2: 3}, B: {1: 3}}\n")
    monkeypatch.setattr(diagram, "MOST_NODES", 1)
    monkeypatch.setattr(searched_force, "MOST_STEPS", 1)
    monkeypatch.setattr(searched_force, "MOST_STEPS", 4)
    answer = call("forces", small, "--points", 7)
    assert "Best found: 6 for 7 points, twice 1 x A and 1 x B." in answer.out
    assert "Exact in worth: no legal force is worth more. The search was stopped: " in answer.out
    assert "Best found of what can be fielded: 5 for 5 points, 1 x A and 1 x B." in answer.out
    monkeypatch.setattr(searched_force, "MOST_STEPS", 1)
    answer = call("forces", small, "--points", 7)
    assert "The search was stopped before a legal force was found; no legal force" in answer.out
    document = call("forces", small, "--points", 7, "--json").document
    assert (document["best"], document["best_certainty"]) == (None, "within")
    assert Fraction(document["best_bound"]) >= 6


def test_nothing_is_legal_or_can_be_fielded(small: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    must = TANGLED.replace("limit: {most: 3}", "limit: {least: 3, most: 3}")
    (small / "force.yaml").write_text(must)
    (small / "worths.yaml").write_text("worths: {A: {1: 2}}\n")
    monkeypatch.setattr(diagram, "MOST_NODES", 1)
    answer = call("forces", small, "--points", 7)
    assert "There is no legal force that can be fielded." in answer.out


def test_what_can_not_be_read_is_a_stop(folder: Path) -> None:
    answer = forces(folder, "--points", "many")
    assert answer.status == 1
    assert "Points: 'many' isn't" in answer.err
    assert call("forces", folder).status == 1


def test_long_numbers_are_told_by_their_first_figures() -> None:
    assert number_text(999_999_999_999) == "999,999,999,999"
    assert number_text(10**12) == "1.00 x 10^12"
    assert number_text(559 * 10**44) == "5.59 x 10^46"


def test_where_nothing_is_on_offer_there_is_no_table(tmp_path: Path) -> None:
    call("new", tmp_path / "sillen", "--example", "sillen")
    answer = call("forces", tmp_path / "sillen")
    assert "with 0 points: nothing is on offer; the one legal force is without" in answer.out
    assert "Legal forces by points" not in answer.out
    assert call("forces", tmp_path / "sillen", "--json").document["legal"] == 1


def test_of_one_force_and_of_none_it_speaks_as_of_one_and_none(folder: Path) -> None:
    assert "0 points: 1 legal force; it spends all." in forces(folder, "--points", 0).out
    one = forces(folder, "--points", 1).out
    assert "1 point: 1 legal force; it doesn't spend all." in one
    assert (
        "Nothing that can be fielded is worth anything to you." in forces(folder, "--points", 5).out
    )
    finished = forces(folder, "--points", 18, "--from", "finished").out
    assert "Legal forces by points" in finished


def test_many_levels_are_told_in_steps(folder: Path) -> None:
    assert "Legal forces by points, every 2 points" in forces(folder, "--points", 40).out
