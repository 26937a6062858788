"""Files that a force folder may hold by accident: each is said, and none is opened."""

import os
import socket
from pathlib import Path

import pytest

from paradestate.core.finding import Level
from paradestate.text.decoding import MOST_BYTES
from paradestate.text.folder import read_folder, traces
from paradestate.text.unfit_file import printable, unfit

HEAD = "format: 1\ntitle: T\nformations: {top: {men: 3}}\nraise: {formation: top}\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "force.yaml").write_text(HEAD, encoding="utf-8")
    return tmp_path


def codes(folder: Path) -> list[str]:
    return [found.code for found in read_folder(folder).findings]


def test_a_usual_file_and_a_folder_are_fit(folder: Path) -> None:
    (folder / "sub.yaml").mkdir()
    assert unfit(folder / "force.yaml") is None
    assert unfit(folder / "sub.yaml") is None


def test_a_pipe_keeps_nobody_waiting(folder: Path) -> None:
    os.mkfifo(folder / "pipe.yaml")
    assert codes(folder) == ["file-not-read"]
    assert read_folder(folder).whole


def test_a_socket_is_no_file(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(folder)  # the name of a socket may not be long
    with socket.socket(socket.AF_UNIX) as made:
        made.bind("socket.csv")
        assert codes(folder) == ["file-not-read"]


@pytest.mark.parametrize("target", ["nowhere.yaml", "link.yaml"])
def test_a_link_that_can_not_be_followed_is_said(folder: Path, target: str) -> None:
    (folder / "link.yaml").symlink_to(target)
    assert codes(folder) == ["file-not-read"]
    assert traces(folder) == traces(folder)


def test_the_lock_that_an_editor_lays_beside_a_file_is_no_part_of_the_force(folder: Path) -> None:
    before = traces(folder)
    (folder / ".#force.yaml").symlink_to("somebody@desk.4711:1")
    assert codes(folder) == []
    assert traces(folder) == before


def test_a_file_of_gigabytes_is_not_taken_into_memory(folder: Path) -> None:
    with (folder / "huge.yaml").open("wb") as file:
        file.truncate(20 * 1024**3)
    reading = read_folder(folder)
    assert [found.code for found in reading.findings] == ["too-large"]
    assert "20480.0 MB" in reading.findings[0].message
    assert not reading.whole


def test_a_file_just_as_large_as_may_be_is_fit(folder: Path) -> None:
    with (folder / "large.yaml").open("wb") as file:
        file.truncate(MOST_BYTES)
    assert unfit(folder / "large.yaml") is None


def test_a_name_that_is_not_utf8_stops_and_can_be_written(folder: Path) -> None:
    odd = folder / os.fsdecode(b"caf\xe9.yaml")
    odd.write_text(HEAD, encoding="utf-8")
    (found,) = read_folder(folder).findings
    assert (found.code, found.level) == ("not-utf-8", Level.STOP)
    assert found.place.file == f"{folder}/caf\N{REPLACEMENT CHARACTER}.yaml"
    assert printable("café") == "café"


def test_a_file_that_is_gone_is_the_fault_of_the_disk(folder: Path) -> None:
    with pytest.raises(FileNotFoundError):
        unfit(folder / "gone.yaml")
