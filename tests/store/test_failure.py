"""What the codes of the drivers mean in plain words."""

import sqlite3

import psycopg
import pytest

from paradestate.store.failure import AWAY, BY_SQLITE_CODE, BY_SQLSTATE, FULL, LOCKED, complaint_of


def sqlite_error(code: int) -> sqlite3.Error:
    error = sqlite3.OperationalError("whatever it says")
    error.sqlite_errorcode = code
    return error


@pytest.mark.parametrize("code", BY_SQLITE_CODE)
def test_a_finer_code_of_sqlite_means_what_its_kind_does(code: int) -> None:
    finer = code | 3 << 8
    assert complaint_of(sqlite_error(finer)) == BY_SQLITE_CODE[code]


def test_a_code_of_sqlite_that_nobody_foresaw_is_quoted() -> None:
    assert complaint_of(sqlite_error(sqlite3.SQLITE_NOLFS)).what == "SQLite says: whatever it says"
    assert complaint_of(sqlite3.ProgrammingError("closed")).what == "SQLite says: closed"


@pytest.mark.parametrize(
    ("kind", "complaint"),
    [
        (psycopg.errors.LockNotAvailable, LOCKED),
        (psycopg.errors.DeadlockDetected, LOCKED),
        (psycopg.errors.DiskFull, BY_SQLSTATE["53100"]),
        (psycopg.errors.AdminShutdown, AWAY),
        (psycopg.errors.ConnectionFailure, AWAY),
        (psycopg.OperationalError, AWAY),
    ],
)
def test_what_the_server_says(kind: type[psycopg.Error], complaint: object) -> None:
    assert complaint_of(kind("in its own words")) == complaint


def test_an_answer_of_the_server_that_nobody_foresaw_is_told_by_its_code_alone() -> None:
    said = complaint_of(psycopg.errors.DivisionByZero("with what was sent"))
    assert said.what == "the server answers 22012"


def test_only_a_lock_is_a_lock() -> None:
    assert LOCKED.is_lock
    assert not FULL.is_lock
