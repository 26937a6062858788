"""Archives, and files that only look like one."""

import io
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from zipfile import ZIP_BZIP2, ZipFile

import pytest

from paradestate.core.digest_chain import START, Head, Link, linked
from paradestate.store import archive as archive_module
from paradestate.store.archive import read_archive, write_archive
from paradestate.store.error import StoreError
from tests.store.writing import identity


def chained(*texts: str) -> Iterator[Link]:
    head = START
    for number, text in enumerate(texts, start=1):
        link = linked(head, id=identity(number), text=text)
        head = Head(number=link.number, digest=link.digest)
        yield link


LINKS = tuple(chained("one", "two – ×", '{"note":"a\\nb"}'))
END = Head(number=3, digest=LINKS[-1].digest)
FILES = {"force.yaml": "title: Marenz\n", "deep/in it/notes.txt": "naïve\n", "empty": ""}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with files in it."""
    for name, text in FILES.items():
        path = tmp_path / "marenz" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return tmp_path / "marenz"


@pytest.fixture
def archive(folder: Path, tmp_path: Path) -> Path:
    """An archive of it."""
    path = tmp_path / "marenz.zip"
    path.write_bytes(archived(folder))
    return path


def archived(folder: Path) -> bytes:
    out = io.BytesIO()
    files = {name: folder / name for name in FILES}
    write_archive(out, name="marenz", files=files, links=LINKS, end=END)
    return out.getvalue()


def test_all_comes_back_as_it_was(archive: Path, tmp_path: Path) -> None:
    with read_archive(archive) as found:
        found.unpack(tmp_path / "again")
        assert tuple(found.links()) == LINKS
        assert (found.manifest.name, found.manifest.end) == ("marenz", END)
    for name, text in FILES.items():
        assert (tmp_path / "again" / name).read_text(encoding="utf-8") == text


def test_the_same_files_give_the_same_bytes(folder: Path) -> None:
    first = archived(folder)
    (folder / "force.yaml").touch()
    assert archived(folder) == first
    with (folder / "force.yaml").open("a", encoding="utf-8") as file:
        file.write("#\n")
    assert archived(folder) != first


def test_any_program_that_opens_zip_files_shows_what_is_in_it(archive: Path) -> None:
    with ZipFile(archive) as plain:
        assert plain.testzip() is None
        assert plain.namelist() == [
            "files/deep/in it/notes.txt",
            "files/empty",
            "files/force.yaml",
            "journal.jsonl",
            "manifest.json",
        ]
        first = json.loads(plain.read("journal.jsonl").split(b"\n")[0])
    assert first == {
        "number": 1,
        "id": identity(1),
        "text": "one",
        "digest": LINKS[0].digest,
    }


def test_a_file_cut_off_anywhere_is_no_archive(archive: Path, tmp_path: Path) -> None:
    whole = archive.read_bytes()
    cut = tmp_path / "cut.zip"
    for length in range(0, len(whole) - 1, 37):
        cut.write_bytes(whole[:length])
        with pytest.raises(StoreError, match="no archive, or damaged"), read_archive(cut):
            pass


def test_a_byte_changed_anywhere_is_found_or_changes_nothing(archive: Path, tmp_path: Path) -> None:
    whole = bytearray(archive.read_bytes())
    other = tmp_path / "other.zip"
    for place in range(0, len(whole), 11):
        changed = bytearray(whole)
        changed[place] ^= 0x55
        other.write_bytes(changed)
        goal = tmp_path / f"goal-{place}"
        try:
            with read_archive(other) as found:
                found.unpack(goal)
                links = tuple(found.links())
        except (StoreError, OSError):
            continue
        assert links == LINKS
        for name, text in FILES.items():
            assert (goal / name).read_text(encoding="utf-8") == text


def with_manifest(archive: Path, goal: Path, **changes: Any) -> Path:  # noqa: ANN401 - JSON
    """The archive with other words in its manifest."""
    with ZipFile(archive) as old, ZipFile(goal, "w") as new:
        for name in old.namelist():
            data = old.read(name)
            if name == "manifest.json":
                data = json.dumps(json.loads(data) | changes).encode()
            new.writestr(name, data)
    return goal


@pytest.mark.parametrize(
    "path",
    ["../out.txt", "/etc/out.txt", "a/../../out.txt", "..", "", "a//b", "./a"],
)
def test_no_path_leads_out_of_the_folder(archive: Path, tmp_path: Path, path: str) -> None:
    evil = with_manifest(archive, tmp_path / "evil.zip", files={path: "0" * 64})
    with pytest.raises(StoreError, match="manifest is damaged"), read_archive(evil):
        pass


@pytest.mark.parametrize("name", ["../out", "", ".", "a/b"])
def test_the_name_of_a_folder_is_no_path(archive: Path, tmp_path: Path, name: str) -> None:
    evil = with_manifest(archive, tmp_path / "evil.zip", name=name)
    with pytest.raises(StoreError, match="manifest is damaged"), read_archive(evil):
        pass


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"format": 2}, "a later version wrote it"),
        ({"files": []}, "manifest is damaged"),
        ({"journal": {"number": 3}}, "manifest is damaged"),
        ({"journal": {"number": "3", "digest": ""}}, "manifest is damaged"),
        ({"journal": {"number": -2, "digest": ""}}, "manifest is damaged"),
        ({"lines": -1}, "manifest is damaged"),
    ],
)
def test_a_manifest_that_says_something_else_is_refused(
    archive: Path, tmp_path: Path, changes: dict[str, Any], words: str
) -> None:
    other = with_manifest(archive, tmp_path / "other.zip", **changes)
    with pytest.raises(StoreError, match=words), read_archive(other):
        pass


def test_a_file_that_is_not_as_it_was_is_named(archive: Path, tmp_path: Path) -> None:
    wrong = with_manifest(archive, tmp_path / "wrong.zip", files={"force.yaml": "0" * 64})
    with (
        pytest.raises(StoreError, match=r"force\.yaml isn't as it was archived"),
        read_archive(wrong) as found,
    ):
        found.unpack(tmp_path / "goal")
    missing = with_manifest(archive, tmp_path / "missing.zip", files={"other.yaml": "0" * 64})
    with (
        pytest.raises(StoreError, match=r"other\.yaml is missing in it"),
        read_archive(missing) as found,
    ):
        found.unpack(tmp_path / "goal2")


@pytest.mark.parametrize(
    "line",
    [
        '{"number": 1}',
        "[]",
        "no json",
        '{"number":9e99,"id":"","text":"","digest":""}',
        r'{"number":1,"id":"a","text":"\ud800","digest":""}',
    ],
)
def test_lines_that_are_no_lines_are_refused(archive: Path, tmp_path: Path, line: str) -> None:
    goal = tmp_path / "goal.zip"
    with ZipFile(archive) as old, ZipFile(goal, "w") as new:
        new.writestr("manifest.json", old.read("manifest.json"))
        new.writestr("journal.jsonl", f"{line}\n")
    with pytest.raises(StoreError, match="journal is damaged"), read_archive(goal) as found:
        tuple(found.links())


def test_an_archive_that_would_unpack_without_end_is_refused(
    archive: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(archive_module, "MOST_BYTES", 100)
    with pytest.raises(StoreError, match="more than an archive may"), read_archive(archive):
        pass


def test_what_could_not_be_restored_is_not_archived(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(archive_module, "MOST_FILES", 2)
    with pytest.raises(StoreError, match="No archive was made"):
        archived(folder)


def test_other_ways_of_packing_are_refused(archive: Path, tmp_path: Path) -> None:
    goal = tmp_path / "goal.zip"
    with ZipFile(archive) as old, ZipFile(goal, "w", ZIP_BZIP2) as new:
        for name in old.namelist():
            new.writestr(name, old.read(name))
    with pytest.raises(StoreError, match="packed in a way"), read_archive(goal):
        pass
