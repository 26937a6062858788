"""Opening: what is made and when, what is refused, and what a block leaves behind."""

import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import psycopg
import pytest

from paradestate.core.digest_chain import START
from paradestate.store.address import Address, JournalFile, ServerJournal
from paradestate.store.error import LockedError, StoreError
from paradestate.store.opening import opened
from tests.store.child import (
    all_said,
    child,
    read_as_somebody_else,
    said,
    write_as_somebody_else,
    write_many,
)
from tests.store.writing import alteration, by_hand, identity, lines, write


def tables(address: Address) -> set[str]:
    if isinstance(address, JournalFile):
        listed = "SELECT name FROM sqlite_master WHERE type = 'table'"
        return {name for (name,) in by_hand(address, listed)}
    listed = "SELECT table_name FROM information_schema.tables WHERE table_schema = 'public'"
    return {name for (name,) in by_hand(address, listed)}


def test_reading_where_there_is_no_journal_makes_nothing(nowhere: Address) -> None:
    with opened(nowhere, writing=False) as journal:
        assert journal.head() == START
        assert list(journal.links()) == []
    if isinstance(nowhere, JournalFile):
        assert list(nowhere.path.parent.iterdir()) == []
    else:
        assert tables(nowhere) == set()


def test_reading_a_collection_that_nobody_wrote_makes_no_row(new_database: str) -> None:
    write(ServerJournal(url=new_database, collection="club"), "one")
    other = ServerJournal(url=new_database, collection="other")
    assert lines(other) == []
    assert by_hand(other, "SELECT name FROM collection") == [("club",)]


def test_a_first_block_that_raises_leaves_no_line(nowhere: Address) -> None:
    with (
        pytest.raises(ZeroDivisionError),
        opened(nowhere, writing=True) as journal,
    ):
        journal.append(id=identity(1), text="one")
        raise ZeroDivisionError
    assert lines(nowhere) == []
    assert alteration(nowhere) is None
    write(nowhere, "one")
    assert [link.text for link in lines(nowhere)] == ["one"]


@pytest.mark.parametrize("writing", [True, False])
@pytest.mark.parametrize("has_tables", [True, False])
def test_a_file_that_was_emptied_is_refused_and_left_as_it_is(
    file: JournalFile, *, writing: bool, has_tables: bool
) -> None:
    if has_tables:
        write(file, "one")
        with closing(sqlite3.connect(file.path)) as connection:
            for table in tables(file):
                connection.execute(f"DROP TABLE {table}")
    else:
        file.path.touch()
    before = file.path.read_bytes()
    with pytest.raises(StoreError, match="emptied it"), opened(file, writing=writing):
        pass
    assert file.path.read_bytes() == before


@pytest.mark.parametrize("writing", [True, False])
def test_a_log_without_its_journal_is_refused_and_kept(file: JournalFile, *, writing: bool) -> None:
    log = file.path.with_name("journal.sqlite-wal")
    log.write_bytes(b"lines")
    with pytest.raises(StoreError, match="its log"), opened(file, writing=writing):
        pass
    assert (log.read_bytes(), file.path.exists()) == (b"lines", False)


@pytest.mark.parametrize("writing", [True, False])
def test_a_link_that_leads_nowhere_is_refused(
    file: JournalFile, tmp_path: Path, *, writing: bool
) -> None:
    file.path.symlink_to(tmp_path / "unplugged" / "journal.sqlite")
    with pytest.raises(StoreError, match="leads nowhere"), opened(file, writing=writing):
        pass


def test_a_link_leads_to_the_journal_and_its_log(file: JournalFile, tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    real = JournalFile(path=tmp_path / "real" / "club.sqlite")
    write(real, "one")
    file.path.symlink_to(real.path)
    write(file, "two", first=2)
    assert [link.text for link in lines(real)] == ["one", "two"]
    assert sorted(path.name for path in tmp_path.iterdir()) == ["journal.sqlite", "real"]


def test_after_a_block_there_is_one_file(file: JournalFile) -> None:
    write(file, "one")
    lines(file)
    assert [path.name for path in file.path.parent.iterdir()] == ["journal.sqlite"]


def test_a_path_with_signs_of_an_address_is_a_path(file: JournalFile) -> None:
    odd = JournalFile(path=file.path.with_name("a?b#c%20d 兵.sqlite"))
    write(odd, "one")
    assert [link.text for link in lines(odd)] == ["one"]
    assert [path.name for path in file.path.parent.iterdir()] == ["a?b#c%20d 兵.sqlite"]


def test_who_writes_at_once_waits_and_is_told_when_it_takes_too_long(address: Address) -> None:
    write(address, "one")
    with opened(address, writing=True) as journal:
        journal.append(id=identity(2), text="two")
        with (
            pytest.raises(LockedError, match=r"another program is writing.*Nothing was written"),
            opened(address, writing=True, wait_seconds=0.1),
        ):
            pass
        assert [link.text for link in lines(address)] == ["one"], "reading doesn't wait"
    assert [link.text for link in lines(address)] == ["one", "two"]


def test_another_program_may_hold_the_lock(file: JournalFile) -> None:
    write(file, "one")
    with closing(sqlite3.connect(file.path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        with (
            pytest.raises(LockedError, match=r"Wait until it has ended"),
            opened(file, writing=True, wait_seconds=0),
        ):
            pass
    write(file, "two", first=2)


def test_a_folder_that_is_not_there_is_said(file: JournalFile) -> None:
    lost = JournalFile(path=file.path.parent / "gone" / "journal.sqlite")
    with pytest.raises(StoreError, match=r"can't be opened. Nothing was written. See that its"):
        write(lost, "one")
    assert lines(lost) == []
    assert not lost.path.parent.exists()


@pytest.mark.parametrize("writing", [False, True])
def test_a_folder_in_place_of_the_file_is_said(file: JournalFile, *, writing: bool) -> None:
    with (
        pytest.raises(StoreError, match=r"can't be opened"),
        opened(JournalFile(path=file.path.parent), writing=writing),
    ):
        pass


@pytest.mark.parametrize("writing", [False, True])
def test_a_file_that_is_no_database_is_said_and_left_as_it_is(
    file: JournalFile, *, writing: bool
) -> None:
    file.path.write_text("title: Republic of Marenz\n" * 100)
    before = file.path.read_bytes()
    with (
        pytest.raises(StoreError, match=r"is no database. Nothing .* Name the file of a journal"),
        opened(file, writing=writing),
    ):
        pass
    assert file.path.read_bytes() == before


@pytest.mark.parametrize("writing", [False, True])
def test_a_file_cut_off_is_said(file: JournalFile, *, writing: bool) -> None:
    write(file, *("x" * 1000 for _ in range(50)))
    file.path.write_bytes(file.path.read_bytes()[:20_000])
    with (
        pytest.raises(StoreError, match=r"the file is damaged. Nothing"),
        opened(file, writing=writing) as journal,
    ):
        list(journal.links())


def test_a_text_that_is_no_text_any_more_is_named(file: JournalFile) -> None:
    write(file, "one", "two")
    by_hand(file, "UPDATE entry SET text = CAST(x'ff' AS TEXT) WHERE number = 2")
    altered = alteration(file)
    assert altered is not None
    assert (altered.number, altered.id) == (2, identity(2))


@pytest.fixture
def public() -> Iterator[JournalFile]:
    """A journal in a folder that everybody can come to, unlike those of other tests."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        folder.chmod(0o755)
        yield JournalFile(path=folder / "journal.sqlite")
        folder.chmod(0o755)


def only_to_be_read(file: JournalFile) -> None:
    """Nobody may write to the file or its folder, but root, who is nobody here."""
    file.path.chmod(0o444)
    file.path.parent.chmod(0o555)


def test_a_folder_that_may_only_be_read_is_read_and_nothing_is_left_in_it(
    public: JournalFile,
) -> None:
    write(public, "one", "two")
    only_to_be_read(public)
    assert all_said(read_as_somebody_else, address=public) == [["one", "two"]]
    assert [path.name for path in public.path.parent.iterdir()] == ["journal.sqlite"]


def test_writing_where_one_may_only_read_is_refused(public: JournalFile) -> None:
    write(public, "one")
    only_to_be_read(public)
    (refusal,) = all_said(write_as_somebody_else, address=public)
    assert "may not be written to. Nothing was written. Allow writing to both" in refusal
    public.path.parent.chmod(0o755)
    assert [link.text for link in lines(public)] == ["one"]


def test_what_may_not_even_be_read_is_refused_and_not_taken_for_empty(public: JournalFile) -> None:
    write(public, "one")
    only_to_be_read(public)
    public.path.chmod(0o200)
    (refusal,) = all_said(read_as_somebody_else, address=public)
    assert "can't be opened. Nothing could be read." in refusal


def test_lines_that_are_only_in_the_log_are_never_left_out(
    file: JournalFile, public: JournalFile
) -> None:
    """Where the folder may only be read they can't be brought in: refused, not skipped."""
    write(file, "one")
    with closing(sqlite3.connect(file.path, isolation_level=None)) as reader:
        reader.execute("BEGIN")
        reader.execute("SELECT * FROM entry").fetchall()
        write(file, "two", first=2)
        for ending in ("", "-wal"):
            held = file.path.with_name(f"{file.path.name}{ending}").read_bytes()
            public.path.with_name(f"{public.path.name}{ending}").write_bytes(held)
    only_to_be_read(public)
    (refusal,) = all_said(read_as_somebody_else, address=public)
    assert "stand in journal.sqlite-wal still" in refusal
    public.path.parent.chmod(0o755)
    assert [link.text for link in lines(public)] == ["one", "two"]


def test_two_processes_that_make_the_same_journal_at_once_both_do(nowhere: Address) -> None:
    with (
        child(write_many, address=nowhere, first=1, number=3) as (_, first),
        child(write_many, address=nowhere, first=101, number=3) as (_, second),
    ):
        assert (said(first), said(second)) == ([1, 2, 3], [101, 102, 103])
    assert len(lines(nowhere)) == 6
    assert alteration(nowhere) is None


def test_neither_reading_nor_appending_imports_the_migrations_or_the_other_database(
    file: JournalFile,
) -> None:
    write(file, "one")
    code = (
        "import sys\nfrom pathlib import Path\n"
        "from paradestate.store.address import JournalFile\n"
        "from paradestate.store.opening import opened\n"
        f"file = JournalFile(path=Path({str(file.path)!r}))\n"
        "with opened(file, writing=False) as journal: list(journal.links())\n"
        f"with opened(file, writing=True) as journal: journal.append(id={identity(2)!r}, text='')\n"
        "print(sorted({'alembic', 'psycopg', 'sqlalchemy.orm'} & set(sys.modules)))\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout == "[]\n"


def test_no_connection_to_the_server_is_left(new_database: str) -> None:
    address = ServerJournal(url=new_database, collection="club")
    write(address, "one")
    lines(address)
    count = "SELECT count(*) FROM pg_stat_activity WHERE datname = current_database()"
    with psycopg.connect(new_database) as connection:
        assert connection.execute(count).fetchone() == (1,)
