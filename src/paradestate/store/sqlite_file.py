"""A SQLite file: how it is opened so that what was acknowledged outlives a power cut.

Write-ahead log, fully synchronous; where the file system can't keep such a log, the older journal
with one sync more. Reading never makes a file, and reads what may not be written to.
"""

import os
import sqlite3
import time
from functools import partial
from pathlib import Path

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.pool import NullPool

from paradestate.store.error import StoreError
from paradestate.store.revision import KNOWN, SELECT_VERSION, VERSION_TABLE

NO_ROOM_FOR_A_LOCK = (sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_READONLY)
"""What SQLite says where it may not make the file by which readers and writers see each other."""

PAUSE = 0.01
"""Seconds between two tries to make the write-ahead log."""

# A text that is no UTF-8 any more was altered: it must be read, for its line to be named.
_TEXT = partial(str, encoding="utf-8", errors="replace")


def file_engine(path: Path, *, writing: bool, wait_seconds: float) -> Engine:
    """What SQLAlchemy connects to a file by; it keeps no connection open."""
    connect = _to_write if writing else _to_read
    engine = create_engine(
        "sqlite://",
        creator=partial(connect, path, wait_seconds=wait_seconds),
        poolclass=NullPool,
    )
    # Read, then write: taken at once, so that nobody writes in between.
    begin = "BEGIN IMMEDIATE" if writing else "BEGIN"

    @event.listens_for(engine, "begin")
    def _begin(connection: Connection) -> None:
        connection.exec_driver_sql(begin)

    return engine


def is_absent(path: Path) -> bool:
    """Whether there is nothing of this name; not said of what merely can't be seen.

    Raises StoreError where a link leads nowhere, or only the log of a journal is left.
    """
    try:
        path.lstat()
    except FileNotFoundError:
        _refuse_log_alone(path)
        return True
    except OSError:
        return False
    if path.is_symlink() and not path.exists():
        raise StoreError(
            f"{path}: this link leads nowhere, to a disk that isn't there perhaps. Nothing was "
            "read or written. Bring back what it leads to, or take the link away."
        )
    return False


def _refuse_log_alone(path: Path) -> None:
    log = path.with_name(f"{path.name}-wal")
    if log.exists() and log.stat().st_size:
        raise StoreError(
            f"{path}: the journal is gone, and its log ({log.name}) is still there. Nothing was "
            "read or written. Bring back the journal that belongs to it, or move the log away."
        )


def put_in_place(beside: Path, *, goal: Path) -> None:
    """Gives a new file its name; where another was quicker, that one stays."""
    try:
        goal.hardlink_to(beside)
    except FileExistsError:
        return
    except OSError:  # a disk without such links
        beside.rename(goal)


def _to_write(path: Path, *, wait_seconds: float) -> sqlite3.Connection:
    is_new = not path.exists()
    connection = _connected(path, mode="rwc" if is_new else "rw", wait_seconds=wait_seconds)
    try:
        mode = connection.execute("PRAGMA journal_mode").fetchone()[0]
        if mode != "wal" and (is_new or _is_ours(connection)):
            mode = _with_log(connection, tries=1 + int(wait_seconds / PAUSE))
        connection.execute(f"PRAGMA synchronous={'FULL' if mode == 'wal' else 'EXTRA'}")
        connection.execute("PRAGMA foreign_keys=ON")
    except BaseException:
        connection.close()
        raise
    return connection


def _to_read(path: Path, *, wait_seconds: float) -> sqlite3.Connection:
    """Where nothing may be written and nobody else is there, read without any lock."""
    if os.access(path, os.W_OK) and os.access(path.parent, os.W_OK):
        connection = _connected(path, mode="rw", wait_seconds=wait_seconds)
        connection.execute("PRAGMA query_only=ON")
        return connection
    connection = _connected(path, mode="ro", wait_seconds=wait_seconds)
    try:
        connection.execute("SELECT 1 FROM sqlite_master LIMIT 1").fetchone()
    except sqlite3.OperationalError as error:
        connection.close()
        if error.sqlite_errorcode & 0xFF not in NO_ROOM_FOR_A_LOCK or not os.access(path, os.R_OK):
            raise
        _refuse_unfinished(path)
        return _connected(path, mode="ro&immutable=1", wait_seconds=wait_seconds)
    except BaseException:
        connection.close()
        raise
    return connection


def _connected(path: Path, *, mode: str, wait_seconds: float) -> sqlite3.Connection:
    """A connection that leaves beginning a transaction to us."""
    connection = sqlite3.connect(
        f"{path.absolute().as_uri()}?mode={mode}",
        uri=True,
        timeout=wait_seconds,
        isolation_level=None,
        check_same_thread=False,
    )
    connection.text_factory = _TEXT
    return connection


def _with_log(connection: sqlite3.Connection, *, tries: int) -> str:
    """The journal mode after asking for the log; SQLite doesn't itself wait for others here."""
    for left in reversed(range(tries)):
        try:
            mode: str = connection.execute("PRAGMA journal_mode=WAL").fetchone()[0]
        except sqlite3.OperationalError as error:
            if error.sqlite_errorcode & 0xFF != sqlite3.SQLITE_BUSY or not left:
                raise
            time.sleep(PAUSE)
        else:
            return mode
    raise AssertionError("the last try returns or raises")


def _is_ours(connection: sqlite3.Connection) -> bool:
    """Whether the file may be altered at all; what is wrong with another is said later on."""
    tables = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
    if VERSION_TABLE not in tables:
        return False
    return all(version in KNOWN for (version,) in connection.execute(SELECT_VERSION))


def _refuse_unfinished(path: Path) -> None:
    log = path.with_name(f"{path.name}-wal")
    if log.exists() and log.stat().st_size:
        raise StoreError(
            f"{path}: the last lines stand in {log.name} still, and can only be read where the "
            "folder may be written to. Nothing could be read. "
            "Copy both files to a folder of your own."
        )
