"""A force copied as a variant, in a collection."""

from pathlib import Path

import pytest

from paradestate.journeys.collection import collection_of
from paradestate.journeys.variant_copy import LoneForceError, copy_as_variant
from paradestate.store.opening import opened
from paradestate.text.error import FileError
from paradestate.text.folder import read_folder


@pytest.fixture
def shared(club: Path) -> Path:
    """A collection with its journal."""
    with opened(collection_of(club).address, writing=True):
        return club


def test_all_files_come_along_and_the_title_says_that_it_is_a_variant(shared: Path) -> None:
    (shared / "guard" / "notes.txt").write_text("notes", encoding="utf-8")
    (shared / "guard" / ".former").mkdir()
    copy = copy_as_variant(shared / "guard")
    assert copy.folder == shared / "ferry-guard-variant"
    assert copy.title_unmarked == ""
    assert sorted(path.name for path in copy.folder.iterdir()) == ["force.yaml", "notes.txt"]
    before = (shared / "guard" / "force.yaml").read_text(encoding="utf-8")
    after = (copy.folder / "force.yaml").read_text(encoding="utf-8")
    assert after == before.replace("title: Ferry guard", "title: Ferry guard (variant)")
    assert "ferry-guard-variant" in collection_of(shared).forces


def test_a_variant_of_a_variant_counts_on(shared: Path) -> None:
    first = copy_as_variant(shared / "guard")
    second = copy_as_variant(first.folder)
    third = copy_as_variant(second.folder)
    assert [second.title, third.title] == ["Ferry guard (variant 2)", "Ferry guard (variant 3)"]


def test_no_folder_is_ever_taken_twice(shared: Path) -> None:
    folders = {copy_as_variant(shared / "guard").folder for _ in range(3)}
    assert len(folders) == 3
    taken = frozenset({"town-watch-variant"})
    assert copy_as_variant(shared / "watch", taken=taken).folder.name == "town-watch-variant-2"


def test_a_lone_force_has_no_variant(guard: Path, club: Path) -> None:
    """Without a journal the folders beside each other share nothing."""
    for folder in (guard, club / "guard"):
        with pytest.raises(LoneForceError):
            copy_as_variant(folder)


@pytest.mark.parametrize(
    ("line", "said"),
    [("", "no title"), ("title: &a Ferry guard\n", "can't be changed")],
)
def test_where_the_title_cannot_be_marked_that_is_said(shared: Path, line: str, said: str) -> None:
    file = shared / "guard" / "force.yaml"
    text = file.read_text(encoding="utf-8").replace("title: Ferry guard\n", line)
    file.write_text(text, encoding="utf-8")
    copy = copy_as_variant(shared / "guard")
    assert said in copy.title_unmarked
    assert (copy.folder / "force.yaml").read_text(encoding="utf-8") == text


def test_links_that_lead_out_are_not_followed_unless_they_are_read(shared: Path) -> None:
    (shared / "secret.txt").write_text("secret", encoding="utf-8")
    (shared / "guard" / "out.txt").symlink_to(shared / "secret.txt")
    copy = copy_as_variant(shared / "guard")
    assert not (copy.folder / "out.txt").exists()


def test_what_is_no_force_of_the_collection_leaves_nothing(shared: Path) -> None:
    (shared / "empty").mkdir()
    before = sorted(shared.iterdir())
    with pytest.raises(FileError, match="holds no force"):
        copy_as_variant(shared / "empty")
    assert sorted(shared.iterdir()) == before


def test_the_variant_reads_as_the_force_did(shared: Path) -> None:
    copy = copy_as_variant(shared / "watch")
    assert (
        read_folder(copy.folder).force.formations == read_folder(shared / "watch").force.formations
    )
