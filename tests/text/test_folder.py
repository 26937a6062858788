"""A force folder read from disk."""

from pathlib import Path

import pytest

from paradestate.text.error import FileError
from paradestate.text.folder import read_files, read_folder, traces
from tests.forces import EXAMPLES

HEAD = "format: 1\ntitle: T\nformations: {top: {men: 3}}\nraise: {formation: top}\n"


def test_the_example_reads_without_a_finding() -> None:
    reading = read_folder(EXAMPLES / "marenz")
    assert not reading.findings
    assert reading.whole
    assert len(reading.texts) == 3
    assert reading.force.places["stands", "truck"].line == 34


def test_files_are_read_in_byte_order_and_others_passed_over(tmp_path: Path) -> None:
    (tmp_path / "b.yaml").write_text("states: [second]", encoding="utf-8")
    (tmp_path / "B.yaml").write_text(HEAD + "states: [first]", encoding="utf-8")
    (tmp_path / "notes.txt").write_text("nothing", encoding="utf-8")
    (tmp_path / "sub.yaml").mkdir()
    reading = read_folder(tmp_path)
    assert reading.force.states == ("first", "second")
    assert not reading.findings


def test_a_folder_without_force_data_is_a_stop(tmp_path: Path) -> None:
    (tmp_path / "empty.yaml").touch()
    assert [found.code for found in read_folder(tmp_path).findings] == ["no-force", "empty-file"]


def test_another_ending_is_remarked_on(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text(HEAD, encoding="utf-8")
    (tmp_path / "b.yml").write_text("figures: {}", encoding="utf-8")
    assert [found.code for found in read_folder(tmp_path).findings] == ["file-not-read"]


def test_an_empty_file_is_remarked_on() -> None:
    reading = read_files({"a.yaml": HEAD.encode(), "b.yaml": b"# nothing yet\n"})
    assert [found.code for found in reading.findings] == ["empty-file"]


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="No such file"):
        read_folder(tmp_path / "gone")


def test_a_folder_leaves_other_traces_once_anything_in_it_has_changed(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(HEAD, encoding="utf-8")
    (tmp_path / "notes.txt").write_text("nothing", encoding="utf-8")
    before = traces(tmp_path)
    assert traces(tmp_path) == before
    (tmp_path / "notes.txt").write_text("not read", encoding="utf-8")
    assert traces(tmp_path) == before
    (tmp_path / "force.yaml").write_text(HEAD + "states: [first]", encoding="utf-8")
    assert traces(tmp_path) != before
    with pytest.raises(FileError, match="No such file"):
        traces(tmp_path / "nowhere")


def test_where_a_file_breaks_off_only_that_is_said() -> None:
    reading = read_files({"a.yaml": (HEAD + "figures: {a: {}\n").encode()})
    assert [found.code for found in reading.findings] == ["half-written"]
    assert not reading.whole
    assert reading.force.title == "T"


def test_what_can_not_be_read_is_not_said_to_be_missing() -> None:
    reading = read_files({"a.yaml": b"\x89PNG"})
    assert [found.code for found in reading.findings] == ["not-text"]


def test_a_folder_without_the_words_that_must_be_there() -> None:
    reading = read_files({"a.yaml": b"figures: {}\n"})
    assert sorted(found.message for found in reading.findings) == [
        "'format' is missing.",
        "'raise' is missing.",
        "'title' is missing.",
    ]
    assert reading.force.raise_ is None


def test_hidden_files_and_former_versions_are_never_read(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(HEAD, encoding="utf-8")
    (tmp_path / ".former").mkdir()
    for name in (".force.yaml", ".b.yml", ".c.csv", ".d.xlsx", ".former/e.yaml"):
        (tmp_path / name).write_text("odd: [", encoding="utf-8")
    reading = read_folder(tmp_path)
    assert reading.findings == ()
    assert len(reading.texts) == 1


def test_a_folder_is_read_as_if_a_file_held_something_else(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(HEAD, encoding="utf-8")
    file = str(tmp_path / "force.yaml")
    reading = read_folder(tmp_path, instead={file: HEAD.replace("T", "Other").encode()})
    assert reading.force.title == "Other"
    assert read_folder(tmp_path).force.title == "T"


def test_a_folder_of_forces_offers_them(tmp_path: Path) -> None:
    for name in ("watch", "guard", "photos"):
        (tmp_path / name).mkdir()
    for name in ("watch", "guard"):
        (tmp_path / name / "force.yaml").write_text("title: x\n", encoding="utf-8")
    (found,) = read_folder(tmp_path).findings
    assert (found.code, found.hint) == (
        "no-force",
        f"Name one of the forces in it: '{tmp_path / 'guard'}', '{tmp_path / 'watch'}'.",
    )
