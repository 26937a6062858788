"""The command `sheets`."""

import hashlib
from pathlib import Path

import pytest

from tests.cli.calling import call


def test_papers_are_written_and_labels_are_counted_twice(folder: Path, tmp_path: Path) -> None:
    out = tmp_path / "papers"
    called = call("sheets", folder, "--out", out, "--only", "labels")
    assert called.status == 0
    assert called.out == (
        f"Written: {out / 'labels.pdf'} (1 page)\n"
        "37 labels for 37 stands to label: as it should be.\n"
    )


def test_programs_get_paths_pages_and_digests(folder: Path, tmp_path: Path) -> None:
    out = tmp_path / "papers"
    words = ("sheets", folder, "--out", out, "--only", "markers", "--only", "labels", "--json")
    called = call(*words)
    labels, markers = called.document["files"]
    assert (labels["name"], labels["pages"], markers["pages"]) == ("labels", 1, 2)
    data = Path(labels["path"]).read_bytes()
    assert labels["sha256"] == hashlib.sha256(data).hexdigest()
    assert labels["replaced"] is None
    assert called.document["checks"] == [
        {"words": "37 labels for 37 stands to label", "holds": True}
    ]
    again = call(*words, "--dummies", "0").document["files"]
    assert again[0]["sha256"] == labels["sha256"]
    assert Path(again[1]["replaced"]).is_file()


def test_what_is_typed_wrongly_is_said_and_nothing_is_written(folder: Path, tmp_path: Path) -> None:
    out = tmp_path / "papers"
    called = call("sheets", folder, "--out", out, "--scale", "968")
    assert called.status == 1
    assert "[line-not-100]" in called.err
    unknown = call("sheets", folder, "--out", out, "--only", "lables", "--json")
    assert unknown.status == 1
    assert unknown.out == ""
    assert not out.exists()


def test_a_file_of_another_program_is_wrong_usage(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "labels.pdf").write_bytes(b"mine")
    called = call("sheets", folder, "--out", tmp_path, "--only", "labels")
    assert called.status == 2
    assert "nothing is overwritten" in called.err


@pytest.mark.parametrize("words", [(), ("--json",)])
def test_a_force_with_nothing_to_print_is_said(words: tuple[str, ...], tmp_path: Path) -> None:
    force = tmp_path / "force"
    force.mkdir()
    (force / "force.yaml").write_text(
        "format: 1\ntitle: Test\nraise: {formation: top}\n"
        "stands: {marker: {base: 40 mm disc, printed: yes}}\n"
        "formations: {top: {parts: {marker: 1}}}\n"
    )
    called = call("sheets", force, "--out", tmp_path / "papers", "--only", "labels", *words)
    assert called.status == 1
    if not words:
        assert called.out == "There is nothing to print.\n"


def test_papers_are_made_for_a_game_at_other_grades(folder: Path, tmp_path: Path) -> None:
    words = ("sheets", folder, "--out", tmp_path / "papers", "--only", "message slips")
    game = ("--game", "whole-day attack")
    made = call(*words, *game, "--grade", "training=recruits", "--grade", "steadfastness=low")
    assert made.status == 0
    slip = call(*words, *game, "--grade", "training")
    assert slip.status == 1
    assert "[not-names-and-numbers]" in slip.err


def test_papers_of_a_game_that_was_written_down(folder: Path, tmp_path: Path) -> None:
    words = ("sheets", folder, "--out", tmp_path / "papers", "--only", "fire missions", "--json")
    assert "[no-game]" in call(*words, "--played").err
    started = call("play", folder, "start", "--game", "whole-day attack", "--json").document
    call("play", folder, "roll", "allowance", "2", "4")
    call("play", folder, "take", "field battery=3")
    newest = call(*words, "--played").document["files"]
    assert [each["name"] for each in newest] == ["fire missions"]
    same = call(*words, "--of", started["games"][0]["id"][:8]).document["files"]
    assert same[0]["sha256"] == newest[0]["sha256"]
    assert "[said-by-game]" in call(*words, "--played", "--plan", "light tanks=2").err
