"""The log of a writer cut off or damaged anywhere: the lines up to there, in a chain that holds."""

import random
import sqlite3
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

import pytest

from paradestate.core.digest_chain import Link, first_altered
from paradestate.store.address import JournalFile
from paradestate.store.opening import opened
from tests.store.writing import lines, write

BLOCKS = 8
FRAME = 4096 + 24
HEADER = 32
CUTS = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Live:
    """The two files of a writer as they were in the middle of its work."""

    database: bytes
    log: bytes
    links: list[Link]


@pytest.fixture
def live(file: JournalFile) -> Live:
    """Taken while a reader keeps the log from being brought in."""
    write(file, "entry 1")
    with closing(sqlite3.connect(file.path, isolation_level=None)) as reader:
        reader.execute("BEGIN")
        reader.execute("SELECT * FROM entry").fetchall()
        for number in range(2, BLOCKS + 2):
            write(file, f"entry {number}", first=number)
        log = file.path.with_name(f"{file.path.name}-wal").read_bytes()
        database = file.path.read_bytes()
    return Live(database=database, log=log, links=lines(file))


def restored(folder: Path, *, database: bytes, log: bytes) -> JournalFile:
    file = JournalFile(path=folder / "copy.sqlite")
    for path in folder.glob("copy.sqlite*"):
        path.unlink()
    file.path.write_bytes(database)
    file.path.with_name("copy.sqlite-wal").write_bytes(log)
    return file


def prefix_found(file: JournalFile, *, of: list[Link]) -> int:
    """How many of these lines are there, from the first on; nothing else may be."""
    with opened(file, writing=False) as journal:
        found = list(journal.links())
        assert first_altered(found, end=journal.head()) is None
    assert found == of[: len(found)]
    return len(found)


@pytest.mark.slow
def test_a_log_cut_anywhere_leaves_a_prefix(live: Live, tmp_path: Path) -> None:
    draw = random.Random(7)  # noqa: S311 - the same places each time
    frames = range(HEADER, len(live.log) + 1, FRAME)
    edges = {place + by for place in frames for by in (-1, 0, 1)}
    places = edges | {draw.randrange(len(live.log)) for _ in range(CUTS)} | {0, len(live.log)}
    kept = []
    for place in sorted(place for place in places if place <= len(live.log)):
        file = restored(tmp_path, database=live.database, log=live.log[:place])
        kept.append(prefix_found(file, of=live.links))
    assert kept == sorted(kept)
    assert set(kept) == set(range(1, BLOCKS + 2)), "each block can be the last"


@pytest.mark.slow
def test_a_log_with_a_byte_altered_leaves_a_prefix(live: Live, tmp_path: Path) -> None:
    draw = random.Random(8)  # noqa: S311 - the same places each time
    kept = []
    for _ in range(CUTS):
        place = draw.randrange(HEADER, len(live.log))
        altered = bytearray(live.log)
        altered[place] ^= draw.randrange(1, 256)
        file = restored(tmp_path, database=live.database, log=bytes(altered))
        kept.append(prefix_found(file, of=live.links))
    assert min(kept) < BLOCKS


def test_a_log_cut_can_be_written_on(live: Live, tmp_path: Path) -> None:
    file = restored(tmp_path, database=live.database, log=live.log[: len(live.log) * 2 // 3])
    there = prefix_found(file, of=live.links)
    write(file, *(f"entry {number}" for number in range(there + 1, BLOCKS + 2)), first=there + 1)
    assert prefix_found(file, of=live.links) == BLOCKS + 1
