"""One writer at a time in a folder."""

import errno
import os
from pathlib import Path

import pytest

from paradestate.text import folder_lock
from paradestate.text.error import FileError
from paradestate.text.folder_lock import locked, put_down


def test_a_second_writer_waits_and_is_told_in_the_end(tmp_path: Path) -> None:
    with (
        locked(tmp_path),
        pytest.raises(FileError, match="another program is writing"),
        locked(tmp_path, tries=2),
    ):
        raise AssertionError


def test_the_lock_is_let_go_of_and_leaves_nothing(tmp_path: Path) -> None:
    for _ in range(2):
        with locked(tmp_path, tries=1):
            pass
    assert not list(tmp_path.iterdir())


def test_where_folders_can_not_be_locked_nothing_is_done(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(folder_lock, "FCNTL", None)
    with locked(tmp_path / "gone"):
        put_down(tmp_path / "gone")


@pytest.mark.parametrize("number", [errno.EINVAL, errno.EIO])
def test_a_disk_that_can_not_be_asked_is_told_from_one_that_fails(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int
) -> None:
    def failing(_: int) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(os, "fsync", failing)
    if number == errno.EINVAL:
        put_down(tmp_path)
    else:
        with pytest.raises(OSError, match="Input/output"):
            put_down(tmp_path)
