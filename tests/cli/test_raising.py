"""The command `raise`."""

from pathlib import Path

import pytest

from paradestate.text.error import EditError
from tests.cli.calling import call


def force_file(folder: Path) -> str:
    return (folder / "force.yaml").read_text(encoding="utf-8")


ALL_NUMBERS = (
    "In all 21 numbers of the count differ; `count --changes` lists them before they are written."
)


def test_what_is_raised_is_written_and_told(folder: Path) -> None:
    expected = call("count", folder, "--set", "company=3", "--json").document
    answer = call("raise", folder, "--set", "company=3")
    assert answer.status == 0
    lines = answer.out.split("\n")
    assert lines[:4] == [
        f"Written: {folder / 'force.yaml'}",
        "  numbers, company: 4 -> 3",
        "Must have: 37 -> 29 stands, 125 -> 96 figures.",
        ALL_NUMBERS,
    ]
    assert lines[4].startswith(f"Former version: {folder / '.former' / 'force.yaml.20'}")
    assert lines[5] == f"To take it back: paradestate raise {folder} --back"
    assert call("count", folder, "--json").document == expected


def test_taken_back_the_file_is_what_it_was(folder: Path) -> None:
    before = force_file(folder)
    call("raise", folder, "--date", "1941", "--wished", "all")
    answer = call("raise", folder, "--back")
    assert answer.status == 0
    assert answer.out.startswith(f"Put back: {folder / '.former' / 'force.yaml.20'}")
    assert "  wished: all -> none\n" in answer.out
    assert force_file(folder) == before


def test_the_same_for_programs(folder: Path) -> None:
    document = call("raise", folder, "--set", "company=3", "--json").document
    assert document["written"] is True
    assert document["decisions"] == [{"what": ["numbers", "company"], "from": "4", "to": "3"}]
    assert document["stands"] == {"from": 37, "to": 29}
    assert document["figures"] == {"from": 125, "to": 96}
    assert len(document["changes"]) == 21
    assert document["put_back"] is None
    assert Path(document["former"]).is_file()
    back = call("raise", folder, "--back", "--json").document
    assert back["put_back"] == document["former"]


def test_what_the_folder_says_already(folder: Path) -> None:
    answer = call("raise", folder, "--set", "company=4")
    assert answer.status == 0
    assert answer.out == f"{folder / 'force.yaml'} says so already; nothing was written.\n"
    assert call("raise", folder, "--date", "1943", "--json").document["written"] is False
    assert not (folder / ".former").exists()


@pytest.mark.parametrize(
    "words", [(), ("--back", "--set", "company=3"), ("--back", "--theatre", ""), ("--json",)]
)
def test_a_choice_that_names_nothing_or_too_much_is_wrong_usage(
    folder: Path, words: tuple[str, ...]
) -> None:
    answer = call("raise", folder, *words)
    assert answer.status == 2
    assert "Name what to raise" in answer.err


def test_where_nothing_is_kept_nothing_can_be_taken_back(folder: Path) -> None:
    answer = call("raise", folder, "--back")
    assert answer.status == 2
    assert "No former version of" in answer.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--set", "company=9"), "[number-outside-range]"),
        (("--set", "company"), "[not-names-and-numbers]"),
        (("--date", "1942"), "[date-holds-a-change]"),
        (("--wished", "nobody"), "[unknown-choice]"),
    ],
)
def test_a_choice_that_would_bring_a_stop_is_refused(
    folder: Path, words: tuple[str, ...], said: str
) -> None:
    before = force_file(folder)
    answer = call("raise", folder, *words)
    assert answer.status == 1
    assert answer.out == ""
    assert said in answer.err
    assert force_file(folder) == before
    assert not (folder / ".former").exists()


def test_a_theatre_is_taken_out_by_naming_none(folder: Path) -> None:
    before = force_file(folder)
    assert "theatre: nothing -> islands" in call("raise", folder, "--theatre", "islands").out
    assert "theatre: islands -> nothing" in call("raise", folder, "--theatre", "").out
    assert force_file(folder) == before


def test_notes_and_changes_by_hand_that_go_are_told(folder: Path) -> None:
    listed = "  wished:  # these\n    - headquarters scene  # the big one\n"
    text = force_file(folder).replace("  date: 1943\n", f"  date: 1943\n{listed}")
    (folder / "force.yaml").write_text(text, encoding="utf-8")
    answer = call("raise", folder, "--wished", "none")
    assert "A note stood in what was replaced and is gone: # the big one" in answer.out
    assert "  wished: none  # these\n" in force_file(folder)
    (folder / "force.yaml").write_text(force_file(folder) + "states: [x]\n", encoding="utf-8")
    assert "The force differs in more than what is raised." in call("raise", folder, "--back").out


def test_a_force_that_could_not_be_counted_has_no_numbers_from_before(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(
        "format: 1\ntitle: T\nstands: {rifle: {base: none}}\n"
        "formations: {top: {parts: [{of: rifle, number: 2-4}]}}\nraise: {formation: top}\n",
        encoding="utf-8",
    )
    answer = call("raise", tmp_path, "--set", "rifle=3")
    assert "Must have: 3 stands, 0 figures.\nFormer version" in answer.out


def test_a_change_that_can_not_be_made_is_said(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_: object, **__: object) -> None:
        raise EditError("Change it in an editor.")

    monkeypatch.setattr("paradestate.cli.raising.raise_anew", refused)
    answer = call("raise", folder, "--set", "company=3")
    assert answer.status == 1
    assert "Change it in an editor." in answer.err
