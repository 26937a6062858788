"""The command `proof`."""

from pathlib import Path

import pytest

from paradestate.chance.force import diagram
from tests.cli.calling import Called, call


def proof(folder: Path, *words: object) -> Called:
    return call("proof", folder, *words)


def test_a_price_table_that_contradicts_itself_is_said_first(folder: Path) -> None:
    """Section 3.24 of the computations: 1:3, 2:5, 3:9 fails since 3 + 5 = 8 < 9."""
    file = folder / "supporting-troops.yaml"
    file.write_text(file.read_text().replace("{1: 3, 2: 5, 3: 7}", "{1: 3, 2: 5, 3: 9}"))
    answer = proof(folder, "--game", "whole-day attack")
    assert answer.status == 0
    lines = answer.out.splitlines()
    assert lines[1:3] == [
        "To look at:",
        "- Machine-gun platoon: 3 cost 9, but 2 + 1 cost 8. Nobody would pay the higher price.",
    ]
    assert "machine-gun platoon             3, 2, 4 " in answer.out


def test_the_example_in_all_games(folder: Path) -> None:
    answer = proof(folder)
    for line in (
        "- Anti-tank rifles: never available; not to be had in 1943.",
        "- Evening attack, evening defence, whole-day attack and whole-day defence: fewer than",
        "Whole-day attack with 18 points, the middle of what the dice leave",
        "Field works for a company: never available here; only in defence, and this is attack.",
        "Exact: all legal forces are counted, and all that are as good as the best.",
    ):
        assert line in answer.out
    assert "Anti-tank rifles: never available here" not in answer.out


def test_the_example_for_programs(folder: Path) -> None:
    document = proof(folder, "--game", "whole-day attack", "--points", 18, "--json").document
    (game,) = document["games"]
    assert game["by_points"] == [
        {"points": 18, "chance": None, "legal": 3809, "spending_all": 977, "least_unspent": 0}
    ]
    assert game["cheapest"] == 2
    guns = game["entries"][3]
    assert guns["entry"] == "anti-tank guns"
    assert guns["steps"] == [4, 3, 3]
    assert guns["by_points"][0]["in_best"] == "every"
    assert document["certainty"] == "exact"


def test_what_is_too_large_isn_t_computed(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(diagram, "MOST_STEPS", 0)
    answer = proof(folder, "--game", "whole-day attack")
    assert "Whole-day attack: not computed: with so many points" in answer.out
    document = proof(folder, "--game", "whole-day attack", "--json").document
    assert document["certainty"] == "not computed"


def test_a_slip_stops_the_command(folder: Path) -> None:
    assert proof(folder, "--points", "many").status == 1
    assert proof(folder, "--game", "siege").status == 1


def test_where_nothing_is_rolled_no_dice_are_named(tmp_path: Path) -> None:
    call("new", tmp_path / "kelmar", "--example", "kelmar")
    answer = proof(tmp_path / "kelmar", "--game", "club evening")
    assert "\nClub evening with 120 points\n" in answer.out
    assert "- Rifle company: in every best force" not in answer.out
    assert "In best forces: how likely the dice leave points" in answer.out


def test_a_game_without_supporting_troops_has_no_table(tmp_path: Path) -> None:
    call("new", tmp_path / "sillen", "--example", "sillen")
    answer = proof(tmp_path / "sillen")
    assert "Dawn at the bridge: no supporting troops are on offer.\n" in answer.out
    assert "of legal forces" not in answer.out
