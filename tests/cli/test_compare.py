"""The command `compare`."""

import shutil
from pathlib import Path

import pytest

from paradestate.chance.force import diagram
from paradestate.chance.proof import both_lists
from tests.cli.calling import Called, call


def compare(*words: object) -> Called:
    return call("compare", *words, "--game", "whole-day attack")


@pytest.fixture
def newer(folder: Path) -> Path:
    """The example with a dearer gun and one entry gone."""
    copy = folder.parent / "newer"
    shutil.copytree(folder, copy)
    file = copy / "supporting-troops.yaml"
    text = file.read_text().replace("cost: {1: 4, 2: 7, 3: 10}", "cost: {1: 5, 2: 7, 3: 10}")
    start, end = text.index("  field works"), text.index("  assault training")
    file.write_text(text[:start] + text[end:])
    return copy


def test_two_versions_are_told_apart(folder: Path, newer: Path) -> None:
    answer = compare(folder, newer)
    assert answer.status == 0
    for line in (
        "supporting troops, anti-tank guns, cost:",
        "  was: one costs 4 points, two 7, three 10",
        "  is: one costs 5 points, two 7, three 10",
        "supporting troops, field works for a company: gone.",
        "    18   3,809   232       0   3,577           19        19",
        "Best before with 18 points: worth 19 for 18 points: ",
        "Exact.",
    ):
        assert line in answer.out
    assert f"{newer}/force.yaml:" in answer.err


def test_a_price_that_might_be_raised(folder: Path) -> None:
    answer = compare(folder, "--price", "anti-tank guns(1)=5", "--points", 10)
    assert "Raising 1 x anti-tank guns from 4 to 5 points removes 6 in 100 of the legal" in (
        answer.out
    )


def test_the_comparison_for_programs(folder: Path, newer: Path) -> None:
    document = compare(folder, newer, "--points", 5, "--json").document
    assert document["changes"][0] == {
        "section": "supporting troops",
        "name": "anti-tank guns",
        "part": "cost",
        "from": "one costs 4 points, two 7, three 10",
        "to": "one costs 5 points, two 7, three 10",
    }
    (game,) = document["games"]
    (level,) = game["by_points"]
    assert (level["legal_old"], level["legal_new"], level["legal_both"]) == (19, 19, 19)
    assert level["best_old"]["worth"] == "5"
    assert (level["share_lost"], game["certainty"]) == ("0", "exact")


def test_a_folder_wants_another_or_a_change(folder: Path, newer: Path) -> None:
    assert compare(folder).status == 2
    assert compare(folder, newer, "--price", "bicycle troop=5").status == 2


def test_games_left_out_are_said(folder: Path) -> None:
    answer = call("compare", folder, "--limit", "field works for a company=1", "--points", 4)
    assert "Whole-day attack: left out; field works for a company: it isn't on offer" in answer.out
    slip = call("compare", folder, "--limit", "field works=1", "--points", "x")
    assert slip.status == 1
    unfitting = call("compare", folder, "--limit", "field works=1")
    assert "[amendment-unfitting]" in unfitting.err


def test_what_is_too_large_isn_t_computed(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    words = (folder, "--worth", "bicycle troop=4", "--points", 5)
    monkeypatch.setattr(both_lists, "MOST_CASES", 0)
    answer = compare(*words)
    assert "Lost and gained weren't computed: the two lists differ in so much" in answer.out
    document = compare(*words, "--json").document
    assert document["games"][0]["certainty"] == "not computed"
    monkeypatch.setattr(diagram, "MOST_STEPS", 0)
    assert "Whole-day attack: not computed: " in compare(*words).out
    assert compare(*words, "--json").document["games"][0]["by_points"] is None


def test_without_worths_no_force_is_the_best(folder: Path) -> None:
    file = folder / "supporting-troops.yaml"
    text = file.read_text()
    start, end = text.index("worths:"), text.index("reserves:")
    file.write_text(text[:start] + text[end:])
    answer = compare(folder, "--price", "bicycle troop=5", "--points", 4)
    assert "Best before" not in answer.out
    document = compare(folder, "--price", "bicycle troop=5", "--points", 4, "--json").document
    assert document["games"][0]["by_points"][0]["best_old"] is None


def test_a_narrow_terminal_leaves_out_the_numbers_before(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("paradestate.cli.output.width", lambda: 40)
    answer = compare(folder, "--game", "whole-day attack", "--price", "anti-tank guns(1)=5")
    assert [line.split() for line in answer.out.splitlines() if line.startswith("    23")] == [
        ["23", "788", "0", "13,399", "24", "24"]
    ]
