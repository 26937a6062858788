"""Where a collection and its journal are."""

from pathlib import Path

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.journeys.collection import collection_of
from paradestate.store.address import JournalFile, ServerJournal
from paradestate.store.error import StoreError
from paradestate.text.error import FileError
from tests.journeys.logging_to import logged, tried

URL = "postgresql://club@localhost/club"


def test_a_lone_force_is_a_collection_of_one(guard: Path) -> None:
    found = collection_of(guard)
    assert (found.root, dict(found.forces)) == (guard, {"": guard})
    assert found.address == JournalFile(path=guard / "journal.sqlite")
    assert (found.has_journal, found.force_of(guard)) == (False, "")


def test_a_folder_of_forces_is_a_collection(club: Path) -> None:
    (club / ".hidden").mkdir()
    (club / "photos").mkdir()
    found = collection_of(club)
    assert dict(found.forces) == {"guard": club / "guard", "watch": club / "watch"}
    assert (found.force_of(club), found.force_of(club / "watch")) == (None, "watch")


def test_without_a_journal_around_it_a_force_stands_alone(club: Path) -> None:
    assert collection_of(club / "guard").root == club / "guard"


def test_a_force_belongs_to_the_collection_whose_journal_is_around_it(club: Path) -> None:
    logged(club, EntryKind.RECEIVED, figures={"rifleman": 4})
    found = collection_of(club / "guard")
    assert (found.root, found.force_of(club / "guard")) == (club, "guard")
    assert found.has_journal


def test_it_is_found_from_within_as_well(club: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    logged(club, EntryKind.RECEIVED, figures={"rifleman": 4})
    monkeypatch.chdir(club / "guard")
    found = collection_of(Path())
    assert (found.root.resolve(), found.force_of(Path())) == (club.resolve(), "guard")


def test_two_journals_are_refused(club: Path) -> None:
    logged(club / "guard", EntryKind.RECEIVED, figures={"rifleman": 4})
    with pytest.raises(FileError, match="has a journal of its own"):
        tried(club, EntryKind.RECEIVED, figures={"rifleman": 4})
    assert not (club / "journal.sqlite").exists()
    (club / "guard" / "journal.sqlite").rename(club / "journal.sqlite")
    logged(club / "guard", EntryKind.RECEIVED, figures={"rifleman": 4})
    (club / "watch" / "journal.toml").touch()
    with pytest.raises(FileError, match="has a journal of its own"):
        collection_of(club / "watch")


def test_a_journal_in_two_places_is_refused(guard: Path) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"rifleman": 4})
    (guard / "journal.toml").write_text(f'url = "{URL}"\ncollection = "club"\n', encoding="utf-8")
    with pytest.raises(FileError, match="say two things of where the journal is"):
        collection_of(guard)


def test_a_folder_in_a_collection_that_holds_no_force_is_named(club: Path) -> None:
    logged(club, EntryKind.RECEIVED, figures={"rifleman": 4})
    (club / "photos").mkdir()
    with pytest.raises(FileError, match="those are: guard, watch"):
        tried(club / "photos", EntryKind.RECEIVED, figures={"rifleman": 4})


def test_a_force_with_a_journal_is_no_collection_around_folders_in_it(guard: Path) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"rifleman": 4})
    below = guard / "variant"
    below.mkdir()
    assert collection_of(below).root == below


def test_a_journal_may_be_on_a_server(guard: Path) -> None:
    (guard / "journal.toml").write_text(f'url = "{URL}"\ncollection = "club"\n', encoding="utf-8")
    found = collection_of(guard)
    assert found.address == ServerJournal(url=URL, collection="club")
    assert found.has_journal


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (f'url = "{URL}"\n', "two lines and no more"),
        (f'url = "{URL}"\ncollection = ""\n', "two lines and no more"),
        (f'url = "{URL}"\ncollection = "club"\npassword = "x"\n', "two lines and no more"),
        ("url = \n", "line 1, column 7"),
    ],
)
def test_a_file_that_does_not_say_where_the_journal_is_is_named(
    guard: Path, text: str, words: str
) -> None:
    (guard / "journal.toml").write_text(text, encoding="utf-8")
    with pytest.raises(FileError, match=words) as caught:
        collection_of(guard)
    assert str(caught.value).startswith(str(guard / "journal.toml"))


def test_a_folder_that_is_not_there_is_named(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="nowhere"):
        collection_of(tmp_path / "nowhere")


def test_hidden_files_in_the_folder_of_a_collection_make_no_force_of_it(club: Path) -> None:
    logged(club, EntryKind.RECEIVED, figures={"rifleman": 4})
    (club / ".settings.yaml").write_text("x: 1\n", encoding="utf-8")
    assert collection_of(club / "guard").root == club


def test_a_force_may_be_a_link_to_a_folder_elsewhere(club: Path, tmp_path: Path) -> None:
    logged(club, EntryKind.RECEIVED, figures={"rifleman": 4})
    (club / "watch").rename(tmp_path / "watch")
    (club / "watch").symlink_to(tmp_path / "watch")
    found = collection_of(club / "watch")
    assert (found.root, found.force_of(club / "watch")) == (club, "watch")


@pytest.mark.parametrize("name", ["journal.sqlite", "journal.sqlite-wal", "journal.toml"])
def test_a_journal_that_is_gone_is_not_taken_for_none(guard: Path, name: str) -> None:
    (guard / name).symlink_to(guard / "unplugged")
    with pytest.raises((FileError, StoreError)):
        tried(guard, EntryKind.RECEIVED, figures={"boat": 1})
