"""Files that only this user may read."""

import os
from pathlib import Path
from stat import S_IMODE

import pytest

from paradestate.text.error import FileError
from paradestate.text.private_file import (
    ExposedError,
    read_private,
    state_folder,
    write_private,
)


def test_the_folder_of_the_user_is_what_the_environment_says(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path))
    assert state_folder() == tmp_path / "paradestate"


@pytest.mark.parametrize("named", [None, "", "relative/one"])
def test_without_a_whole_path_it_is_the_usual_one(
    named: str | None, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.delenv("XDG_STATE_HOME", raising=False)
    if named is not None:
        monkeypatch.setenv("XDG_STATE_HOME", named)
    assert state_folder() == tmp_path / ".local" / "state" / "paradestate"


def test_what_is_written_is_read_and_nobody_else_can(tmp_path: Path) -> None:
    path = tmp_path / "new" / "secret"
    before = os.umask(0)
    try:
        write_private(path, b"one")
        write_private(path, b"two")
    finally:
        os.umask(before)
    assert read_private(path) == b"two"
    assert S_IMODE(path.stat().st_mode) == 0o600
    assert [each.name for each in path.parent.iterdir()] == ["secret"]


def test_what_a_killed_writer_left_is_not_in_the_way(tmp_path: Path) -> None:
    left = tmp_path / ".secret.new"
    left.write_bytes(b"half")
    left.chmod(0o666)
    write_private(tmp_path / "secret", b"whole")
    assert read_private(tmp_path / "secret") == b"whole"
    assert not left.exists()


def test_a_file_that_is_not_there_is_none(tmp_path: Path) -> None:
    assert read_private(tmp_path / "secret") is None


@pytest.mark.parametrize("mode", [0o640, 0o604, 0o620, 0o602])
def test_a_file_that_is_open_to_others_is_refused(mode: int, tmp_path: Path) -> None:
    write_private(tmp_path / "secret", b"one")
    (tmp_path / "secret").chmod(mode)
    with pytest.raises(ExposedError, match=r"others than you .* chmod 600"):
        read_private(tmp_path / "secret")


def test_a_disk_that_refuses_is_said(tmp_path: Path) -> None:
    (tmp_path / "secret").mkdir(mode=0o700)
    with pytest.raises(FileError, match="No phone is let in"):
        read_private(tmp_path / "secret")
    with pytest.raises(FileError, match="Nothing was written"):
        write_private(tmp_path / "secret", b"one")


def test_where_a_link_leads_to_it_nothing_of_the_old_one_is_left(tmp_path: Path) -> None:
    kept, link = tmp_path / "elsewhere" / "kept", tmp_path / "link"
    write_private(kept, b"a name")
    link.symlink_to(kept)
    write_private(link, b"nothing")
    assert (kept.read_bytes(), link.is_symlink()) == (b"nothing", True)
    assert [each.name for each in kept.parent.iterdir()] == ["kept"]
