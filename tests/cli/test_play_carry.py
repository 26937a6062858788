"""The actions `carry` and `bring` of `play`."""

import json
from pathlib import Path

import pytest

from tests.cli.calling import Called, call
from tests.entries import uuid
from tests.journeys.game.test_bring import opened
from tests.journeys.game.test_table_entries import told


def play(folder: Path, *words: object) -> Called:
    return call("play", folder, *words)


def given(folder: Path, *entries: object) -> Path:
    head = {"given back": 1, "force": folder.name, "entries": 2}
    file = folder.parent / "back.txt"
    file.write_text("".join(f"{json.dumps(each)}\n" for each in (head, *entries)), "utf-8")
    return file


def test_a_file_is_written_once_and_never_over_another(folder: Path) -> None:
    out = folder.parent / "evening.html"
    assert f"Written: {out} (" in play(folder, "carry", "--out", out).out
    data = out.read_bytes()
    assert data.startswith(b"<!doctype html>")
    again = play(folder, "carry", "--out", out)
    assert (again.status, "nothing is overwritten" in again.err) == (2, True)
    assert out.read_bytes() == data
    other = folder.parent / "other.html"
    said = play(folder, "carry", "--out", other, "--json").document
    assert said["bytes"] == other.stat().st_size
    assert said["id"].encode() in other.read_bytes()


@pytest.mark.parametrize(
    ("words", "slip"),
    [
        (("carry",), "--out evening.html"),
        (("carry", "--out", "evening.txt"), "ends in .html"),
        (("carry", "now", "--out", "evening.html"), "'now'"),
        (("bring",), "Name the files"),
        (("bring", "nowhere.txt"), "There is no file 'nowhere.txt'"),
    ],
)
def test_what_is_said_wrongly_is_wrong_usage(
    folder: Path, words: tuple[str, ...], slip: str
) -> None:
    answer = play(folder, *words)
    assert (answer.status, slip in answer.err) == (2, True)


def test_a_folder_that_can_not_be_read_gives_no_file(folder: Path) -> None:
    (folder / "force.yaml").write_text("format: 1\ntitle: [", "utf-8")
    out = folder.parent / "evening.html"
    assert play(folder, "carry", "--out", out).status == 1
    assert not out.exists()
    assert play(folder, "bring", given(folder)).status == 1


def test_what_was_given_back_is_brought_and_what_lacks_is_told(folder: Path) -> None:
    file = given(folder, opened(1), told(2))
    first = play(folder, "bring", file)
    assert (first.status, "Taken: 2 entries.\n" in first.out) == (0, True)
    again = play(folder, "bring", file, file)
    assert "Taken: 0 entries; 2 had come before.\n" in again.out
    piped = call("play", folder, "bring", "-", typed=file.read_text("utf-8"))
    assert "2 had come before" in piped.out
    assert uuid(1)[:8] in play(folder).out
    cut = play(folder, "bring", given(folder, opened(1)), "--json")
    assert cut.status == 1
    assert cut.document == {"taken": 0, "there": 1, "is_whole": False}
    assert f"{file}:1:1: warn: Of 2 entries 1 stand here" in cut.err
