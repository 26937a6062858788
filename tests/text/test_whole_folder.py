"""A folder is made whole or not at all."""

from pathlib import Path

import pytest

from paradestate.text.error import FileError, FolderTakenError
from paradestate.text.whole_folder import new_folder, refuse_taken


def test_a_folder_stands_in_its_place_when_it_is_filled(tmp_path: Path) -> None:
    goal = tmp_path / "deep" / "marenz"
    with new_folder(goal) as beside:
        (beside / "force.yaml").write_text("x", encoding="utf-8")
        assert not goal.exists()
    assert [path.name for path in goal.iterdir()] == ["force.yaml"]
    assert [path.name for path in goal.parent.iterdir()] == ["marenz"]
    assert goal.stat().st_mode & 0o777 == 0o755


def test_an_empty_folder_is_filled_and_any_other_refused(tmp_path: Path) -> None:
    refuse_taken(tmp_path / "marenz")
    (tmp_path / "marenz").mkdir()
    with new_folder(tmp_path / "marenz") as beside:
        (beside / "force.yaml").touch()
    with pytest.raises(FolderTakenError, match="holds something"), new_folder(tmp_path / "marenz"):
        pass
    (tmp_path / "file").touch()
    with pytest.raises(FolderTakenError, match="nothing is overwritten"):
        refuse_taken(tmp_path / "file")


def test_where_it_can_not_be_filled_nothing_is_left(tmp_path: Path) -> None:
    with pytest.raises(KeyError), new_folder(tmp_path / "marenz") as beside:
        fail_after_filling(beside)
    assert list(tmp_path.iterdir()) == []


def fail_after_filling(folder: Path) -> None:
    (folder / "force.yaml").touch()
    raise KeyError


def test_a_disk_that_refuses_is_told_in_words(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    with pytest.raises(FileError, match="File exists"), new_folder(tmp_path / "file" / "in it"):
        pass
    with pytest.raises(FileError, match="No such file"), new_folder(tmp_path / "marenz") as beside:
        beside.rmdir()
    assert [path.name for path in tmp_path.iterdir()] == ["file"]
