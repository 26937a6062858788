"""How long it takes to read and verify a journal, to append to it, and a thousand writers killed.

Conditions: texts of about 150 characters; the file in the disk cache, appends synced to the disk
they stand on; one process; each through the store and, in the same group and so with the ratio
beside it, by plain `sqlite3` with the same pragmas. Verifying computes every digest anew.
"""

import os
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from functools import partial
from itertools import count
from pathlib import Path
from typing import TypeVar, cast

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from paradestate.core.digest_chain import START, Head, Link, first_altered, linked
from paradestate.store.address import Address, JournalFile, ServerJournal
from paradestate.store.opening import opened
from tests.store.cluster import running_cluster
from tests.store.killing import killed_and_looked_after
from tests.store.writing import identity

MILLION = 1_000_000
USUAL = 10_000
BULK = 2_000
KILLS = 500
"""On each database."""

T = TypeVar("T")

NUMBERS = count(MILLION)
SELECT = "SELECT number, id, text, digest FROM entry WHERE collection = ? ORDER BY number"
INSERT = "INSERT INTO entry VALUES (?, ?, ?, ?, ?)"
MOVE = "UPDATE collection SET number = ?, digest = ? WHERE name = ?"


def usual_text(number: int) -> str:
    """As an entry usually is."""
    return (
        f'{{"kind": "received", "on": "2026-03-{number % 28 + 1:02}", "what": {{"rifleman": '
        f'{number % 32}, "officer": {number % 4}}}, "from": "Source North", "note": "parcel '
        f'{number:07}, box a little dented"}}'
    )


def filled(folder: Path, *, number: int) -> JournalFile:
    """A journal of so many lines, put in as quickly as can be."""
    file = JournalFile(path=folder / f"{number}.sqlite")
    with opened(file, writing=True):
        pass
    with closing(sqlite3.connect(file.path)) as connection, connection:
        head = START
        for each in range(1, number + 1):
            link = linked(head, id=identity(each), text=usual_text(each))
            head = Head(number=link.number, digest=link.digest)
            row = (file.collection, link.number, link.id, link.text, link.digest)
            connection.execute(INSERT, row)
        connection.execute(MOVE, (head.number, head.digest, file.collection))
    return file


@pytest.fixture(scope="module")
def million(tmp_path_factory: pytest.TempPathFactory) -> JournalFile:
    return filled(tmp_path_factory.mktemp("million"), number=MILLION)


@pytest.fixture(scope="module")
def usual(tmp_path_factory: pytest.TempPathFactory) -> JournalFile:
    return filled(tmp_path_factory.mktemp("usual"), number=USUAL)


def verified(file: JournalFile) -> int:
    """The number of lines that hold."""
    with opened(file, writing=False) as journal:
        assert first_altered(journal.links(), end=journal.head()) is None
        return journal.head().number


def verified_plainly(file: JournalFile) -> int:
    """The same by a cursor of the driver."""
    with closing(sqlite3.connect(file.path)) as connection:
        asked = "SELECT number, digest FROM collection WHERE name = ?"
        number, digest = connection.execute(asked, (file.collection,)).fetchone()
        rows = connection.execute(SELECT, (file.collection,))
        links = (Link(number=n, id=i, text=t, digest=d) for n, i, t, d in rows)
        assert first_altered(links, end=Head(number=number, digest=digest)) is None
        return int(number)


def timed(benchmark: BenchmarkFixture, work: Callable[[], T], *, rounds: int) -> T:
    """What the work gives, measured in so many rounds and none to warm up."""
    return cast("T", benchmark.pedantic(work, rounds=rounds))  # type: ignore[no-untyped-call]


VERIFYING = pytest.mark.parametrize("verifying", [verified, verified_plainly])


@VERIFYING
@pytest.mark.benchmark(group="verify a million lines")
def bench_a_million_lines(
    benchmark: BenchmarkFixture, million: JournalFile, verifying: Callable[[JournalFile], int]
) -> None:
    """Streaming and verifying 1,000,000 lines."""
    assert timed(benchmark, partial(verifying, million), rounds=3) == MILLION


@VERIFYING
@pytest.mark.benchmark(group="verify ten thousand lines")
def bench_ten_thousand_lines(
    benchmark: BenchmarkFixture, usual: JournalFile, verifying: Callable[[JournalFile], int]
) -> None:
    """Opening, streaming and verifying 10,000 lines."""
    assert benchmark(verifying, usual) == USUAL


def append(file: JournalFile) -> None:
    """One line in a block of its own."""
    with opened(file, writing=True) as journal:
        number = next(NUMBERS)
        journal.append(id=identity(number), text=usual_text(number))


def append_plainly(file: JournalFile) -> None:
    """The same, in a connection of its own."""
    with closing(sqlite3.connect(file.path, isolation_level=None)) as connection:
        connection.execute("PRAGMA synchronous=FULL")
        connection.execute("BEGIN IMMEDIATE")
        add_plainly(file, connection=connection)
        connection.execute("COMMIT")


def add_plainly(file: JournalFile, *, connection: sqlite3.Connection) -> None:
    """What `Journal.append` asks of the database, by the driver."""
    asked = "SELECT number, digest FROM collection WHERE name = ?"
    number, digest = connection.execute(asked, (file.collection,)).fetchone()
    each = identity(next(NUMBERS))
    known = "SELECT text FROM entry WHERE collection = ? AND id = ?"
    assert connection.execute(known, (file.collection, each)).fetchone() is None
    link = linked(Head(number=number, digest=digest), id=each, text=usual_text(number))
    row = (file.collection, link.number, link.id, link.text, link.digest)
    connection.execute(INSERT, row)
    connection.execute(MOVE, (link.number, link.digest, file.collection))


@pytest.mark.parametrize("appending", [append, append_plainly])
@pytest.mark.benchmark(group="append a line, synced")
def bench_a_line_a_block(
    benchmark: BenchmarkFixture, usual: JournalFile, appending: Callable[[JournalFile], None]
) -> None:
    """Appends a second, each opened, synced and closed."""
    timed(benchmark, partial(appending, usual), rounds=200)


def append_many(file: JournalFile) -> None:
    """Lines of one block."""
    with opened(file, writing=True) as journal:
        for number in (next(NUMBERS) for _ in range(BULK)):
            journal.append(id=identity(number), text=usual_text(number))


def append_many_plainly(file: JournalFile) -> None:
    """The same by the driver."""
    with closing(sqlite3.connect(file.path, isolation_level=None)) as connection:
        connection.execute("PRAGMA synchronous=FULL")
        connection.execute("BEGIN IMMEDIATE")
        for _ in range(BULK):
            add_plainly(file, connection=connection)
        connection.execute("COMMIT")


@pytest.mark.parametrize("appending", [append_many, append_many_plainly])
@pytest.mark.benchmark(group="append two thousand lines in a block")
def bench_many_lines_a_block(
    benchmark: BenchmarkFixture, usual: JournalFile, appending: Callable[[JournalFile], None]
) -> None:
    """2,000 appends in one block."""
    timed(benchmark, partial(appending, usual), rounds=5)


@pytest.fixture(scope="module")
def server() -> Iterator[str]:
    with running_cluster() as url:
        yield url


@pytest.mark.parametrize("where", ["sqlite", "postgresql"])
@pytest.mark.benchmark(group="writers killed")
def bench_writers_killed(
    benchmark: BenchmarkFixture, tmp_path: Path, request: pytest.FixtureRequest, where: str
) -> None:
    """Fails where an acknowledged entry is lost; a seed of its own each time."""
    address: Address = JournalFile(path=tmp_path / "journal.sqlite")
    if where == "postgresql":
        address = ServerJournal(url=request.getfixturevalue("server"), collection="killed")
    seed = int.from_bytes(os.urandom(4))
    done = timed(
        benchmark, partial(killed_and_looked_after, address, runs=KILLS, seed=seed), rounds=1
    )
    benchmark.extra_info.update(seed=seed, entries=done)
    assert done > KILLS
