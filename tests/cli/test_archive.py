"""The command `archive`."""

import hashlib
import json
import sqlite3
from contextlib import closing
from pathlib import Path
from zipfile import ZipFile

import pytest

from paradestate.store.error import StoreError
from paradestate.text.error import FileError
from tests.cli.calling import call


def test_everything_comes_back_with_the_same_digests(folder: Path, tmp_path: Path) -> None:
    call("log", folder, "received", "rifleman=32", "--on", "2026-03-01")
    call("log", folder, "moved", "rifleman=6", "--to", "assembled", "--on", "2026-03-02")
    call("raise", folder, "--set", "company=3")
    before = call("holdings", folder, "--json").document
    made = call("archive", folder, "--to", tmp_path / "one.zip", "--json").document
    data = (tmp_path / "one.zip").read_bytes()
    assert made["sha256"] == hashlib.sha256(data).hexdigest()
    assert (made["path"], made["entries"]) == (str(tmp_path / "one.zip"), 2)
    assert "force.yaml" in made["files"]
    assert any(path.startswith(".former/force.yaml.") for path in made["files"])
    again = tmp_path / "again"
    back = call("archive", "--restore", tmp_path / "one.zip", again, "--json").document
    assert back == made | {"path": str(again)}
    assert call("holdings", again, "--json").document == before
    assert call("check", again).err == call("check", folder).err.replace(str(folder), str(again))
    twice = call("archive", again, "--to", tmp_path / "two.zip", "--json").document
    assert (twice["files"], twice["journal_digest"]) == (made["files"], made["journal_digest"])


def test_the_same_folder_gives_the_same_archive(folder: Path, tmp_path: Path) -> None:
    call("log", folder, "received", "rifleman=32", "--on", "2026-03-01")
    for name in ("one.zip", "two.zip"):
        call("archive", folder, "--to", tmp_path / name)
    assert (tmp_path / "one.zip").read_bytes() == (tmp_path / "two.zip").read_bytes()


def test_an_archive_stands_beside_its_folder_under_a_name_that_is_free(folder: Path) -> None:
    first = call("archive", folder)
    second = call("archive", folder)
    assert (first.status, second.status) == (0, 0)
    names = sorted(path.name for path in folder.parent.glob("*.zip"))
    assert len(names) == 2
    assert all(name.startswith("marenz-2") for name in names)
    lines = first.out.splitlines()
    assert lines[0].endswith("(3 files, 0 journal entries).")
    assert lines[1].startswith("SHA-256: ")
    assert lines[2].startswith("To bring it back: paradestate archive --restore ")


def test_it_comes_back_as_the_folder_it_was_made_of(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    call("archive", folder, "--to", tmp_path / "one.zip")
    (tmp_path / "elsewhere").mkdir()
    monkeypatch.chdir(tmp_path / "elsewhere")
    answer = call("archive", "--restore", tmp_path / "one.zip")
    assert answer.out.splitlines() == [
        "Restored: marenz (3 files, 0 journal entries).",
        "Next: paradestate holdings marenz",
    ]
    assert not Path("marenz/journal.sqlite").exists()
    again = call("archive", "--restore", tmp_path / "one.zip")
    assert again.status == 2
    assert "nothing is overwritten. Name another one." in again.err


def test_a_whole_collection_is_archived(folder: Path, tmp_path: Path) -> None:
    club = tmp_path / "club"
    club.mkdir()
    folder.rename(club / "marenz")
    call("log", club, "received", "rifleman=32", "--on", "2026-03-01")
    call("archive", club / "marenz", "--to", tmp_path / "club.zip")
    call("archive", "--restore", tmp_path / "club.zip", tmp_path / "again")
    held = call("holdings", tmp_path / "again" / "marenz", "--json").document["holdings"]
    assert held == {"rifleman": {"in packet": 32}}


def test_what_would_overwrite_or_hold_itself_is_refused(folder: Path, tmp_path: Path) -> None:
    with pytest.raises(FileError, match="would hold itself"):
        call("archive", folder, "--to", folder / "in.zip")
    (tmp_path / "there.zip").touch()
    with pytest.raises(FileError, match="is there already; nothing is overwritten"):
        call("archive", folder, "--to", tmp_path / "there.zip")
    assert (tmp_path / "there.zip").read_bytes() == b""


def test_an_empty_folder_is_not_archived(tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    with pytest.raises(FileError, match="neither a force nor a journal"):
        call("archive", tmp_path / "empty")


def test_a_file_that_is_no_archive_leaves_no_folder(folder: Path, tmp_path: Path) -> None:
    call("archive", folder, "--to", tmp_path / "one.zip")
    data = (tmp_path / "one.zip").read_bytes()
    (tmp_path / "cut.zip").write_bytes(data[: len(data) // 2])
    with pytest.raises(StoreError, match="no archive, or damaged"):
        call("archive", "--restore", tmp_path / "cut.zip", tmp_path / "again")
    assert not (tmp_path / "again").exists()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "Name the folder, or with --restore the archive."),
        (("nowhere",), "There is no folder 'nowhere'."),
        ((".", "--to", "x.tar.gz"), "give it a name that ends in .zip"),
        (("--restore", "nowhere.zip"), "does not exist"),
        (("--restore", __file__, "--to", "x.zip"), "exclude each other"),
    ],
)
def test_wrong_usage_says_what_would_be_right(words: tuple[str, ...], said: str) -> None:
    answer = call("archive", *words)
    assert answer.status == 2
    assert said in answer.err


def test_links_to_files_are_archived_and_links_to_folders_told(
    folder: Path, tmp_path: Path
) -> None:
    (folder / "prices.yaml").rename(tmp_path / "prices.yaml")
    (folder / "prices.yaml").symlink_to(tmp_path / "prices.yaml")
    (folder / "photos").symlink_to(tmp_path)
    made = call("archive", folder, "--to", tmp_path / "one.zip")
    assert "photos:1:1: warn: This link leads to a folder, or nowhere. [not-archived]" in made.err
    call("archive", "--restore", tmp_path / "one.zip", tmp_path / "again")
    there = (tmp_path / "again" / "prices.yaml").read_text(encoding="utf-8")
    assert there == (tmp_path / "prices.yaml").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ["journal.toml", "journal.sqlite", "journal.sqlite-wal"])
def test_an_archive_says_nothing_of_where_its_journal_is(
    folder: Path, tmp_path: Path, name: str
) -> None:
    call("archive", folder, "--to", tmp_path / "one.zip")
    with ZipFile(tmp_path / "one.zip") as old, ZipFile(tmp_path / "evil.zip", "w") as new:
        manifest = json.loads(old.read("manifest.json"))
        data = b'url = "postgresql://elsewhere/club"'
        manifest["files"][name] = hashlib.sha256(data).hexdigest()
        new.writestr("manifest.json", json.dumps(manifest))
        new.writestr(f"files/{name}", data)
        for member in old.namelist():
            if member != "manifest.json":
                new.writestr(member, old.read(member))
    with pytest.raises(FileError, match="which no archive has"):
        call("archive", "--restore", tmp_path / "evil.zip", tmp_path / "again")
    assert not (tmp_path / "again").exists()


def test_an_altered_journal_comes_back_as_altered(folder: Path, tmp_path: Path) -> None:
    call("log", folder, "received", "rifleman=32", "--on", "2026-03-01")
    with closing(sqlite3.connect(folder / "journal.sqlite")) as connection, connection:
        connection.execute("UPDATE entry SET text = replace(text, '32', '33')")
    assert "[journal-altered]" in call("archive", folder, "--to", tmp_path / "one.zip").err
    back = call("archive", "--restore", tmp_path / "one.zip", tmp_path / "again")
    assert "[journal-altered]" in back.err
    assert "[journal-altered]" in call("holdings", tmp_path / "again").err


def test_odd_names_come_back_and_names_that_are_no_text_are_refused(
    folder: Path, tmp_path: Path
) -> None:
    for name in ("notes: 1943.txt", "a\\b.txt", "Größe 兵.txt"):
        (folder / name).write_text(name, encoding="utf-8")
    (folder / ".force.yaml.new").touch()
    made = call("archive", folder, "--to", tmp_path / "one.zip", "--json").document
    assert ".force.yaml.new" not in made["files"]
    back = call("archive", "--restore", tmp_path / "one.zip", tmp_path / "again", "--json").document
    assert back["files"] == made["files"]
    (folder / "caf\udce9.txt").touch()
    with pytest.raises(FileError, match="this name isn't text"):
        call("archive", folder, "--to", tmp_path / "two.zip")
    assert not (tmp_path / "two.zip").exists()


def test_lines_count_even_where_the_journal_lost_its_end(folder: Path, tmp_path: Path) -> None:
    call("log", folder, "received", "rifleman=32", "--on", "2026-03-01")
    with closing(sqlite3.connect(folder / "journal.sqlite")) as connection, connection:
        connection.execute("DELETE FROM collection")
    made = call("archive", folder, "--to", tmp_path / "one.zip")
    assert "(3 files, 1 journal entry)." in made.out
    call("archive", "--restore", tmp_path / "one.zip", tmp_path / "again")
    held = call("holdings", tmp_path / "again", "--json").document["holdings"]
    assert held == {"rifleman": {"in packet": 32}}
