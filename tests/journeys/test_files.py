"""The files of a force folder: listed, read, tried, written and put back."""

import datetime
from pathlib import Path

import pytest

from paradestate.core.finding import Level
from paradestate.journeys import files
from paradestate.journeys.files import (
    FileKind,
    Held,
    Overtaken,
    Saved,
    Saving,
    Unchanged,
    Wording,
    files_of,
    former_file,
    mark_of,
    read_file,
    save_file,
    tried,
)
from paradestate.text.error import FileChangedError, FileError
from paradestate.text.former import former_versions

TODAY = datetime.date(2026, 3, 5)
AT = datetime.datetime(2026, 3, 5, 21, 14, 9, tzinfo=datetime.UTC)


def save(folder: Path, text: str, *, sure: bool = False, mark: str | None = None) -> Saving:
    seen = read_file(folder, "force.yaml").mark if mark is None else mark
    wording = Wording(name="force.yaml", data=text.encode(), mark=seen, sure=sure)
    return save_file(folder, wording=wording, today=TODAY, at=AT)


def text_of(folder: Path) -> str:
    return (folder / "force.yaml").read_text(encoding="utf-8")


def test_every_file_is_listed_with_what_it_is(guard: Path) -> None:
    (guard / "packs.csv").write_text("x", encoding="utf-8")
    (guard / "notes.txt").write_text("four", encoding="utf-8")
    (guard / ".hidden.yaml").touch()
    (guard / "below").mkdir()
    (guard / "out.yaml").symlink_to(guard.parent / "elsewhere.yaml")
    (guard / "nowhere.yaml").symlink_to("gone.yaml")
    listed = {each.name: each for each in files_of(guard)}
    assert {name: each.kind for name, each in listed.items()} == {
        "force.yaml": FileKind.FORCE_DATA,
        "notes.txt": FileKind.OTHER,
        "nowhere.yaml": FileKind.OTHER,
        "out.yaml": FileKind.OUTSIDE,
        "packs.csv": FileKind.SPREADSHEET,
    }
    assert listed["notes.txt"].size == 4
    assert listed["force.yaml"].mark == read_file(guard, "force.yaml").mark
    assert listed["out.yaml"].mark == listed["nowhere.yaml"].mark == ""


def test_a_folder_that_is_not_there_is_said(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="No such file"):
        files_of(tmp_path / "nowhere")


@pytest.mark.parametrize(
    "name",
    [
        "../secret.yaml",
        "/etc/passwd",
        ".former",
        "out.yaml",
        "force.txt",
        "none.yaml",
        "a\x00.yaml",
    ],
)
def test_nothing_is_read_that_is_not_a_file_of_the_force(guard: Path, name: str) -> None:
    (guard.parent / "secret.yaml").write_text("secret", encoding="utf-8")
    (guard / "out.yaml").symlink_to(guard.parent / "secret.yaml")
    with pytest.raises(FileError, match=r"[Nn]othing was read"):
        read_file(guard, name)


@pytest.mark.parametrize("name", ["../new.yaml", "out.yaml", ".new.yaml", "new.exe"])
def test_nothing_is_written_outside_the_folder(guard: Path, name: str) -> None:
    (guard / "out.yaml").symlink_to(guard.parent / "made.yaml")
    wording = Wording(name=name, data=b"title: T\n", mark="", sure=True)
    with pytest.raises(FileError, match=r"[Nn]othing was read or written"):
        save_file(guard, wording=wording, today=TODAY, at=AT)
    assert sorted(path.name for path in guard.parent.iterdir()) == ["guard"]


def test_a_picture_is_said_to_be_one(guard: Path) -> None:
    (guard / "force.yaml").write_bytes(b"\x89PNG\r\n")
    read = read_file(guard, "force.yaml")
    assert read.text is None
    assert [found.code for found in read.findings] == ["not-text"]


def test_a_change_is_tried_without_being_written(guard: Path) -> None:
    before = text_of(guard)
    new = before.replace("Ferry guard", "River guard").encode()
    read = tried(guard, name="force.yaml", data=new, today=TODAY)
    assert read.force.title == "River guard"
    assert text_of(guard) == before


def test_what_is_saved_keeps_what_was_there(guard: Path) -> None:
    before = text_of(guard)
    saved = save(guard, before.replace("Ferry", "River"))
    assert isinstance(saved, Saved)
    assert saved.former is not None
    assert saved.former.read_text(encoding="utf-8") == before
    assert "River guard" in text_of(guard)


def test_with_a_stop_it_is_written_only_when_that_is_said(guard: Path) -> None:
    before = text_of(guard)
    broken = before.replace("formation: guard", "formation: gard")
    held = save(guard, broken)
    assert isinstance(held, Held)
    assert not held.is_read_only
    assert any(found.level is Level.STOP for found in held.checked.findings)
    assert text_of(guard) == before
    assert isinstance(save(guard, broken, sure=True), Saved)
    assert text_of(guard) == broken


def test_a_broken_file_is_mended(guard: Path) -> None:
    whole = text_of(guard)
    (guard / "force.yaml").write_text(whole[:-3] + "[", encoding="utf-8")
    saved = save(guard, whole)
    assert isinstance(saved, Saved)
    assert not saved.checked.is_stopped


def test_what_is_there_already_is_not_written_again(guard: Path) -> None:
    assert isinstance(save(guard, text_of(guard)), Unchanged)
    assert former_versions(guard / "force.yaml") == ()


def test_who_comes_second_is_told_and_has_both_texts(guard: Path) -> None:
    mark = read_file(guard, "force.yaml").mark
    first, second = (text_of(guard).replace("Ferry", word) for word in ("River", "Lake"))
    save(guard, first)
    overtaken = save(guard, second, mark=mark, sure=True)
    assert overtaken == Overtaken(mine=second.encode(), there=first.encode())
    assert text_of(guard) == first


def test_who_comes_second_in_the_last_moment_is_told_as_well(
    guard: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def overtake(path: Path, data: bytes, **_: object) -> Path:
        raise FileChangedError(path, mine=data, there=None)

    monkeypatch.setattr(files, "write_changed", overtake)
    new = text_of(guard).replace("Ferry", "River")
    assert save(guard, new) == Overtaken(mine=new.encode(), there=None)


def test_a_new_file_is_made_and_never_in_the_place_of_another(guard: Path) -> None:
    made = Wording(name="prices.yaml", data=b"aim: {text: Cross}\n", mark="")
    assert isinstance(save_file(guard, wording=made, today=TODAY, at=AT), Saved)
    again = save_file(guard, wording=made, today=TODAY, at=AT)
    assert again == Overtaken(mine=made.data, there=made.data)


def test_files_of_a_newer_format_are_not_written(guard: Path) -> None:
    newer = text_of(guard).replace("format: 1", "format: 2")
    (guard / "force.yaml").write_text(newer, encoding="utf-8")
    held = save(guard, newer.replace("Ferry", "River"), sure=True)
    assert isinstance(held, Held)
    assert held.is_read_only
    assert text_of(guard) == newer


def test_a_slip_of_the_format_is_put_right(guard: Path) -> None:
    right = text_of(guard)
    (guard / "force.yaml").write_text(right.replace("format: 1", "format: 2"), encoding="utf-8")
    assert isinstance(save(guard, right), Saved)


def test_nothing_is_written_that_is_too_large(guard: Path) -> None:
    with pytest.raises(FileError, match="8 MB"):
        save(guard, "#" * (8 * 1024 * 1024 + 1), sure=True)


def test_a_former_version_is_read_and_put_back(guard: Path) -> None:
    before = text_of(guard)
    save(guard, before.replace("Ferry", "River"))
    (former,) = read_file(guard, "force.yaml").former
    data = former_file(guard, name="force.yaml", version=former.path.name)
    assert data == before.encode()
    assert isinstance(save(guard, data.decode()), Saved)
    assert text_of(guard) == before
    assert len(former_versions(guard / "force.yaml")) == 2


@pytest.mark.parametrize("version", ["", "../../secret.yaml", "force.yaml", "none"])
def test_no_other_file_is_taken_for_a_former_version(guard: Path, version: str) -> None:
    save(guard, text_of(guard).replace("Ferry", "River"))
    with pytest.raises(FileError, match="No former version"):
        former_file(guard, name="force.yaml", version=version)


def test_a_former_version_that_is_a_link_out_is_not_read(guard: Path) -> None:
    (guard / ".former").mkdir()
    name = "force.yaml.2026-03-05T21-14-09Z"
    (guard.parent / "secret").write_text("secret", encoding="utf-8")
    (guard / ".former" / name).symlink_to(guard.parent / "secret")
    with pytest.raises(FileError, match="No former version"):
        former_file(guard, name="force.yaml", version=name)


def test_the_copy_that_is_whole_is_named(guard: Path) -> None:
    whole = text_of(guard)
    save(guard, whole + "stock stands: {boat: {based", sure=True)
    read = read_file(guard, "force.yaml")
    assert read.whole is not None
    assert read.whole.path.read_text(encoding="utf-8") == whole


def test_a_mark_tells_texts_apart() -> None:
    assert mark_of(b"a") != mark_of(b"b")
