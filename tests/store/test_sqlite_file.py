"""How a file is opened, and a disk that is full."""

import sqlite3
from pathlib import Path
from typing import Any

import pytest

from paradestate.store import sqlite_file
from paradestate.store.address import JournalFile
from paradestate.store.error import StoreError
from paradestate.store.opening import opened
from tests.store.child import all_said, write_till_the_disk_is_full
from tests.store.writing import alteration, by_hand, lines, write


def setting(journal: object, name: str) -> Any:  # noqa: ANN401 - what SQLite has
    connection = journal._connection  # type: ignore[attr-defined]  # noqa: SLF001 - nobody else has it
    return connection.exec_driver_sql(f"PRAGMA {name}").scalar()


def test_writing_is_by_a_log_fully_synchronous_and_with_foreign_keys(file: JournalFile) -> None:
    with opened(file, writing=True, wait_seconds=2.5) as journal:
        assert setting(journal, "journal_mode") == "wal"
        assert setting(journal, "synchronous") == 2
        assert setting(journal, "foreign_keys") == 1
        assert setting(journal, "busy_timeout") == 2500


def test_where_there_can_be_no_log_one_more_thing_is_synced(
    file: JournalFile, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(_: sqlite3.Connection, *, tries: int) -> str:
        assert tries == 501
        return "delete"

    monkeypatch.setattr(sqlite_file, "_with_log", refused)
    with opened(file, writing=True) as journal:
        assert setting(journal, "journal_mode") == "delete"
        assert setting(journal, "synchronous") == 3
    write(file, "one")
    assert len(lines(file)) == 1


def test_a_disk_without_room_keeps_what_was_acknowledged(
    file: JournalFile, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = sqlite_file._connected  # noqa: SLF001 - the one place where a limit can be set

    def limited(path: Path, *, mode: str, wait_seconds: float) -> sqlite3.Connection:
        connection = whole(path, mode=mode, wait_seconds=wait_seconds)
        connection.execute("PRAGMA max_page_count=20")
        return connection

    acknowledged = write(file, "one")
    with monkeypatch.context() as patch:
        patch.setattr(sqlite_file, "_connected", limited)
        with pytest.raises(StoreError, match=r"the disk is full. Nothing was written. Make room"):
            write(file, *("x" * 3000 for _ in range(30)), first=2)
        assert lines(file) == acknowledged
    write(file, "two", first=2)
    assert len(lines(file)) == 2
    assert alteration(file) is None


def test_a_file_that_can_t_grow_keeps_what_was_acknowledged(file: JournalFile) -> None:
    """The system itself refuses to write on, in the middle of whatever was written."""
    write(file, "one")
    *acknowledged, refusal = all_said(write_till_the_disk_is_full, address=file, first=2)
    assert "the disk failed or is full." in refusal
    assert acknowledged
    numbers = [link.number for link in lines(file)]
    assert numbers[: len(acknowledged) + 1] == [1, *acknowledged]
    assert len(numbers) <= len(acknowledged) + 2
    assert alteration(file) is None
    write(file, "x" * 3000, first=len(numbers) + 1)
    assert len(lines(file)) == len(numbers) + 1
    assert by_hand(file, "PRAGMA integrity_check") == [("ok",)]
