"""The command `attach`."""

from dataclasses import replace
from pathlib import Path

import pytest

from paradestate.core.certainty import Within
from paradestate.core.support.attachment import Attaching
from paradestate.journeys import attach
from paradestate.solve.attachment import BestAttachment, best_attachment
from tests.cli.calling import call

GAME = ("--game", "whole-day attack")
PLAN = ("--plan", "machine-gun platoon=2, pioneers(flame)=1")


def test_for_people(folder: Path) -> None:
    answer = call("attach", folder, *GAME, *PLAN, "--must", "pioneers")
    assert answer.status == 0
    assert answer.out.startswith(
        "Whole-day attack: worth 3. Exact: no other attachment is worth more.\n"
        "\n"
        "No 1 Company / 1 Platoon: machine-gun platoon 1 under command.\n"
        "No 1 Company / 2 Platoon: machine-gun platoon 2 under command.\n"
        "No 1 Company / 3 Platoon: pioneers(flame) under command.\n"
    )
    lines = answer.out.splitlines()
    assert "No 2 Company / 1 Platoon: worth as much  pioneers(flame) must be attached" in lines[-1]


def test_for_programs(folder: Path) -> None:
    answer = call("attach", folder, *GAME, *PLAN, "--must", "pioneers", "--json")
    found = answer.document
    assert found["total"] == "3"
    assert found["hosts"]["No 1 Company / 3 Platoon"] == ["pioneers(flame)"]
    assert found["hosts"]["No 4 Company / 3 Platoon"] == []
    assert (found["independent"], found["must"]) == ([], ["pioneers(flame)"])
    assert (found["certainty"], found["bound"]) == ("exact", None)
    gains = found["gains"]["machine-gun platoon 1"]
    assert gains["independent"] == {"gain": "-1", "forbidden": None, "because_of": []}
    assert gains["No 1 Company / 2 Platoon"] == {
        "gain": "0",
        "forbidden": "host-full",
        "because_of": ["machine-gun platoon 2"],
    }


def test_a_sheet_to_fill_in(folder: Path, tmp_path: Path) -> None:
    file = tmp_path / "worths.csv"
    answer = call("attach", folder, *GAME, *PLAN, "--form", file)
    assert (answer.status, answer.out.splitlines()[0]) == (0, f"Written: {file}")
    assert call("attach", folder, *GAME, *PLAN, "--worths", file).status == 0
    again = call("attach", folder, *GAME, *PLAN, "--form", file)
    assert (again.status, "nothing is overwritten" in again.err) == (2, True)
    other = call("attach", folder, *GAME, *PLAN, "--form", tmp_path / "w.csv", "--json")
    assert other.document == {"file": str(tmp_path / "w.csv")}


def test_a_slip_in_the_sheet_is_shown_with_its_cell(folder: Path, tmp_path: Path) -> None:
    file = tmp_path / "worths.csv"
    file.write_text("section,host,worth\npioneers(flame),No 1 Compny / 1 Platoon,2\n")
    answer = call("attach", folder, *GAME, *PLAN, "--worths", file)
    assert answer.status == 1
    assert f"{file}:2:2: stop: worths!B2: no host is called" in answer.err
    assert "Did you mean 'No 1 Company / 1 Platoon'?" in answer.err


def test_too_few_places(folder: Path) -> None:
    answer = call(
        "attach",
        folder,
        *GAME,
        "--set",
        "company=2",
        "--must",
        "all",
        "--plan",
        "machine-gun platoon=3, pioneers(flame)=2, pioneers(charges)=2",
    )
    assert answer.status == 1
    assert "Seven sections share six places; at least one has no host." in answer.err


def test_nothing_to_attach_and_slips_in_what_is_typed(folder: Path) -> None:
    answer = call("attach", folder, *GAME, "--plan", "light tanks=2")
    assert answer.out == (
        "Whole-day attack: nothing of the plan can be attached; "
        "none of its entries says 'attach'.\n"
    )
    assert call("attach", folder, *GAME, *PLAN, "--set", "company").status == 1
    assert call("attach", folder, *GAME, *PLAN, "--grade", "training").status == 1


def test_without_a_plan_it_says_how_one_is_typed(tmp_path: Path) -> None:
    """Where no plan is made it isn't judged: that a force needs something is no slip of it."""
    call("new", tmp_path / "kelmar", "--example", "kelmar")
    answer = call("attach", tmp_path / "kelmar", "--game", "club evening")
    assert answer.out == "Club evening: there is no plan, so nothing is attached.\n"
    assert "remark: No plan is made of supporting troops for club evening." in answer.err
    assert "Type one, such as --plan 'rifle company=3, field guns(shrapnel)=1'" in answer.err
    assert "below-least" not in answer.err


def test_a_bound_is_said_where_it_is_not_proved(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def bounded(question: Attaching, *, seconds: float) -> BestAttachment | None:
        found = best_attachment(question, seconds=seconds)
        return None if found is None else replace(found, certainty=Within(bound=4))

    monkeypatch.setattr(attach, "best_attachment", bounded)
    said = "worth 3. Within: nothing is worth more than 4."
    assert said in call("attach", folder, *GAME, *PLAN).out
    assert call("attach", folder, *GAME, *PLAN, "--json").document["bound"] == 4
