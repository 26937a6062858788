"""The command `next`."""

from pathlib import Path

import pytest

from tests.chance.next.examples import OSK
from tests.cli.calling import call
from tests.forces import HEAD

QUAY = """\
sources:
  Quay:
    currency: GBP
    carriage: {0: 0}
    packs:
      gun: {price: 8, holds: {field gun: 1}}
      tank: {price: 12, holds: {tank: 1}}
      mule: {price: 3, holds: {officer: 3}}
bench:
  stages: [in packet, painted]
  minutes: {foot: {painted: 30}, gun: {painted: 90}, vehicle: {painted: 120}}
"""


@pytest.fixture
def osk_folder(tmp_path: Path) -> Path:
    """The example of section 3.13 of the computations, with what can be bought."""
    files = {"force": HEAD, "points": OSK, "prices": QUAY}
    for name, text in files.items():
        (tmp_path / f"{name}.yaml").write_text(text, encoding="utf-8")
    return tmp_path


def test_the_next_purchase_for_people(osk_folder: Path) -> None:
    answer = call("next", osk_folder, "--money", 20, "--wish", "Quay/tank=1")
    assert answer.status == 0
    for line in (
        "Evening: the best force that you can field is worth 6 to you now, on average.",
        "One Quay/gun adds 4 for £8.00; a second Quay/gun adds 0.33 for £8.00 more.",
        "Best for £20.00: 2 x Quay/gun for £16.00, 10.33 then.",
        "Quay/gun (1 field gun)   £8.00     4    10             0  ████████████████████████",
        "Quay/tank (1 tank)      £12.00  1.83  7.83          0.33  ███████████",
        "The best with what is wished for is 1 x Quay/gun and 1 x Quay/tank at 10:",
        "Who knew all dice beforehand would come to 10.33, no more.",
        "6: twice 1 x machine guns  7: 1 x guns",
        "Exact: nothing else that can be had for this comes to more, by your own worths.",
    ):
        assert line in answer.out


def test_the_next_purchase_for_programs(osk_folder: Path) -> None:
    document = call("next", osk_folder, "--money", 20, "--wish", "Quay/tank=1", "--json").document
    assert (document["now"], document["certainty"], document["bound"]) == ("6", "exact", None)
    candidates = {
        each["purchase"]: (each["cost"], each["value"], each["gain"])
        for each in document["candidates"]
    }
    assert candidates == {
        "Quay/gun": ("8.00", "10", "4"),
        "Quay/tank": ("12.00", "47/6", "11/6"),
        "Quay/mule": ("3.00", "6", "0"),
    }
    best = {"purchases": {"Quay/gun": 2}, "cost": "16.00", "value": "31/3", "gain": "13/3"}
    assert document["best"] == best
    assert document["foresight"] == "31/3"
    assert document["wish"]["price_of_fun"] == "1/3"
    assert [step["gain"] for step in document["steps"]] == ["4", "1/3"]
    assert document["outcomes"][0]["then"]["purchases"][0]["entry"] == "guns"
    assert document["games"] == {"evening": "1"}
    assert document["limit"] == "20.00"


def test_hours_at_the_bench(osk_folder: Path) -> None:
    path = osk_folder / "points.yaml"
    text = path.read_text(encoding="utf-8")
    text = text.replace("{painted: 2}", "{painted: 2, in packet: 2}", 1)
    path.write_text(text, encoding="utf-8")
    answer = call("next", osk_folder, "--hours", 1)
    assert "One machine-gun team adds 2 for 30 min; a second" in answer.out
    assert "Left out, there are no figures for one more: staff, field gun and tank." in answer.out
    document = call("next", osk_folder, "--hours", "0.5", "--json").document
    assert (document["currency"], document["best"]["cost"]) == (None, "30")


def test_the_share_of_forces(osk_folder: Path) -> None:
    answer = call("next", osk_folder, "--money", 8, "--aim", "share")
    assert "of all legal forces can be fielded now" in answer.out
    assert "wasn't computed: the dice have no part" in answer.out
    document = call("next", osk_folder, "--money", 8, "--aim", "share", "--json").document
    assert (document["aim"], document["foresight"], document["outcomes"]) == ("share", None, [])


@pytest.mark.parametrize("words", [(), ("--money", 1, "--hours", 1)])
def test_one_of_money_and_hours_is_wanted(osk_folder: Path, words: tuple[object, ...]) -> None:
    answer = call("next", osk_folder, *words)
    assert answer.status == 2
    assert "--money, or else --hours" in answer.err


def test_what_cannot_be_read_is_said(osk_folder: Path) -> None:
    answer = call("next", osk_folder, "--money", "much")
    assert answer.status == 1
    assert "much" in answer.err


def test_what_is_too_large_is_not_computed(
    osk_folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("paradestate.chance.force.diagram.MOST_POINTS", 7)
    answer = call("next", osk_folder, "--money", 20)
    assert answer.status == 0
    assert "Not computed: there are more than 7 points." in answer.out
    document = call("next", osk_folder, "--money", 20, "--json").document
    assert (document["certainty"], document["best"]) == ("not computed", None)


def test_several_games_stand_side_by_side(folder: Path) -> None:
    answer = call("next", folder, "--money", 25)
    assert "One South/S4 adds" in answer.out
    assert "together add" in answer.out
    assert "South/S6 adds nothing alone, only together: 2 x South/S6." in answer.out
    assert "whole-day defence" in answer.out


def test_where_nothing_changes_there_is_no_table_of_the_dice(osk_folder: Path) -> None:
    answer = call("next", osk_folder, "--money", 1)
    assert "the best is to keep what there is to spend." in answer.out
    assert "Where the best force changes" not in answer.out


def test_what_changes_stands_below_one_another_on_a_narrow_terminal(
    osk_folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("paradestate.cli.output.width", lambda: 40)
    answer = call("next", osk_folder, "--money", 20)
    assert "\n  now 6: twice 1 x machine guns\n  then 7: 1 x guns\n" in answer.out
    assert "█" not in answer.out


def test_how_often_games_are_played_is_said_where_they_differ(folder: Path) -> None:
    path = folder / "supporting-troops.yaml"
    text = path.read_text(encoding="utf-8")
    text = text.replace("{allowance: 10 + 2d6,", "{allowance: 10 + 2d6, weight: 2,", 1)
    path.write_text(text, encoding="utf-8")
    answer = call("next", folder, "--money", 1)
    assert answer.out.splitlines()[1].startswith("Evening attack (40 in 100 of games), evening def")
