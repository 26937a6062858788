"""The command `marks`."""

from pathlib import Path

import pytest

from paradestate.cli import marks as command
from paradestate.core.certainty import Within
from paradestate.core.mark import colour_choice
from paradestate.text.error import EditError
from tests.cli.calling import call

GREY = "In grey royal blue and brown (0.0) and mid yellow and sky blue (6.0) run together"


def test_for_people(folder: Path) -> None:
    answer = call("marks", folder)
    assert answer.status == 0
    lines = answer.out.splitlines()
    assert lines[0] == "Least difference 34.0: royal blue and sky blue to a blue-weak viewer."
    assert lines[1].startswith(GREY)
    assert "No 2 Company, 3 Platoon   mid yellow, three bars, cross" in answer.out
    assert "0.0*" in answer.out
    assert "the light of a hall differ" in answer.out


def test_for_programs(folder: Path) -> None:
    found = call("marks", folder, "--json").document
    assert found["least_difference"] == "34.00"
    assert (found["closest"]["one"], found["closest"]["weakest"]) == ("royal blue", "blue_weak")
    assert (found["code_distance"], found["enough"]) == (2, "20.00")
    assert len(found["pairs"]) == 6
    assert sum(pair["needs_sign_in_grey"] for pair in found["pairs"]) == 2
    codes = {each["unit"]: each for each in found["codes"]}
    third = codes["No 2 Company / 3 Platoon"]
    assert third["mark"] == {
        "colour": "mid yellow",
        "value": "F2C230",
        "bars": 3,
        "sign": "cross",
        "rear_bar": False,
    }
    assert [stand["number"] for stand in third["stands"]] == [1, 2]
    assert codes[""]["mark"]["colour"] is None
    assert not codes["No 1 Company"]["stands"][-1]["wanted"]
    assert (found["chosen"], found["written"], found["read"]) == (None, None, None)


def test_whose_mark_it_is(folder: Path) -> None:
    """Story of the design: who is who."""
    answer = call("marks", folder, "--read", "yellow, three bars")
    assert answer.out.splitlines()[0] == "No 2 Company, 3 Platoon"
    read = call("marks", folder, "--read", "yellow, three bars, ring", "--json").document["read"]
    assert read["doubt"] == "misread"
    assert "No 2 Company / 3 Platoon" in [each["unit"] for each in read["units"]]


def test_colours_are_chosen_and_written_down(folder: Path) -> None:
    hand = ("--from", "brick red, sky blue, bone=E3DAC9, black")
    answer = call("marks", folder, "--choose", 4, *hand, "--write")
    assert answer.status == 0
    assert answer.out.startswith("Chosen: ")
    assert "Exact: no other choice has a greater one." in " ".join(answer.out.split())
    assert "Written: " in answer.out
    text = (folder / "force.yaml").read_text(encoding="utf-8")
    assert "bone: E3DAC9" in text
    again = call("marks", folder, "--choose", 4, *hand, "--write")
    assert "Nothing was written: the folder says that already." in again.out
    found = call("marks", folder, "--choose", 4, *hand, "--write", "--json").document
    assert found["written"] is None
    assert found["chosen"]["by_formation"]["company"][2] == "sky blue"
    assert (found["chosen"]["certainty"], found["chosen"]["bound"]) == ("exact", None)


def test_what_was_written_is_told_to_programs(folder: Path) -> None:
    found = call("marks", folder, "--choose", 3, "--write", "--json").document
    assert found["written"]["file"].endswith("force.yaml")
    assert found["chosen"]["colours"] == {
        "sky blue": "7FB8DE",
        "black": "202020",
        "orange": "E08214",
    }


def test_a_comment_that_goes_with_what_is_replaced_is_told(folder: Path) -> None:
    file = folder / "force.yaml"
    text = file.read_text(encoding="utf-8").replace(
        "[royal blue, mid yellow, sky blue, brown]",
        "[royal blue, mid yellow,  # as varnished\n    sky blue, brown]",
    )
    file.write_text(text, encoding="utf-8")
    answer = call("marks", folder, "--choose", 3, "--write")
    assert "A comment went with what was replaced: # as varnished" in answer.out


def test_writing_needs_a_choice(folder: Path) -> None:
    assert call("marks", folder, "--write").status == 2
    assert call("marks", folder, "--choose", 0).status == 2


def test_a_stop_is_told_and_status_1(folder: Path) -> None:
    answer = call("marks", folder, "--choose", 3, "--from", "puce")
    assert answer.status == 1
    assert "Nothing says how 'puce' looks." in answer.err
    assert call("marks", folder, "--set", "company").status == 1
    (folder / "more.yaml").write_text("nonsense: {}\n", encoding="utf-8")
    assert (call("marks", folder).status, call("marks", folder).out) == (1, "")


def test_a_force_of_one_body_has_nothing_to_tell_apart(tmp_path: Path) -> None:
    call("new", tmp_path / "kelmar", "--example", "kelmar")
    answer = call("marks", tmp_path / "kelmar")
    assert answer.out.startswith("Nothing is told apart by colour here.")
    assert call("marks", tmp_path / "kelmar", "--json").document["least_difference"] is None
    chosen = call("marks", tmp_path / "kelmar", "--choose", 1)
    assert "There is nothing to tell apart." in chosen.out


def test_a_bound_is_said_where_it_is_not_proved(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(colour_choice, "Exact", lambda: Within(bound=4_100))
    said = " ".join(call("marks", folder, "--choose", 4).out.split())
    assert "Least difference 34.0. Within: none is better than 41.0." in said
    assert call("marks", folder, "--choose", 4, "--json").document["chosen"]["bound"] == "41.00"


def test_a_file_that_cant_be_changed_is_a_failure(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_: object, **__: object) -> None:
        raise EditError("force.yaml: not by a program.")

    monkeypatch.setattr(command, "colour_anew", refused)
    answer = call("marks", folder, "--choose", 3, "--write")
    assert (answer.status, "not by a program" in answer.err) == (1, True)
