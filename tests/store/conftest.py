"""Both databases, each for the tests that ask for it. No test is left out for lack of one."""

from itertools import count
from pathlib import Path

import psycopg
import pytest

from paradestate.store.address import Address, JournalFile, ServerJournal

BOTH = ("sqlite", "postgresql")
_NUMBERS = count(1)


@pytest.fixture
def new_database(cluster: str) -> str:
    """The address of a database in which there is nothing yet."""
    name = f"database_{next(_NUMBERS)}"
    with psycopg.connect(cluster, autocommit=True) as connection:
        connection.execute(f"CREATE DATABASE {name}".encode())
    return cluster.replace("/postgres?", f"/{name}?")


@pytest.fixture
def file(tmp_path: Path) -> JournalFile:
    """Where there is no journal yet."""
    return JournalFile(path=tmp_path / "journal.sqlite")


@pytest.fixture(params=BOTH)
def address(request: pytest.FixtureRequest, tmp_path: Path) -> Address:
    """A journal that isn't there yet; on the server other collections may be."""
    if request.param == "sqlite":
        return JournalFile(path=tmp_path / "journal.sqlite")
    url: str = request.getfixturevalue("cluster")
    return ServerJournal(url=url, collection=f"collection {next(_NUMBERS)}")


@pytest.fixture(params=BOTH)
def nowhere(request: pytest.FixtureRequest, tmp_path: Path) -> Address:
    """A journal where there are no tables yet either."""
    if request.param == "sqlite":
        return JournalFile(path=tmp_path / "journal.sqlite")
    url: str = request.getfixturevalue("new_database")
    return ServerJournal(url=url, collection="club")
