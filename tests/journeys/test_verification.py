"""Whether a journal is as it was written, and what is known of it without reading it again."""

import sqlite3
from contextlib import closing
from datetime import timedelta
from pathlib import Path

from paradestate.core.journal_entry import EntryKind
from paradestate.journeys.memory import Memory
from paradestate.journeys.verification import Verification, verified
from tests.journeys.logging_to import NOW, logged

LATER = NOW + timedelta(hours=1)


def altered(folder: Path, line: int) -> None:
    with closing(sqlite3.connect(folder / "journal.sqlite")) as database, database:
        database.execute("UPDATE entry SET text = '{}' WHERE number = ?", (line,))


def write(folder: Path) -> None:
    logged(folder, EntryKind.NOTED, note="something")


def test_every_line_is_verified(guard: Path) -> None:
    assert verified(guard, now=NOW).lines == 0
    write(guard)
    write(guard)
    found = verified(guard, now=NOW)
    assert (found.lines, found.altered, found.at) == (2, (), NOW)


def test_an_altered_line_is_named(guard: Path) -> None:
    write(guard)
    write(guard)
    altered(guard, 1)
    found = verified(guard, now=NOW)
    assert [(each.code, each.place.line) for each in found.altered] == [("journal-altered", 1)]


def test_with_a_memory_only_what_came_since_is_read(guard: Path) -> None:
    memory = Memory()

    def again(*, anew: bool = False) -> Verification:
        return verified(guard, now=LATER, anew=anew, memory=memory)

    write(guard)
    verified(guard, now=NOW, memory=memory)
    write(guard)
    assert (again().lines, again().at) == (2, NOW)
    altered(guard, 1)
    assert again().altered == ()
    assert [each.place.line for each in again(anew=True).altered] == [1]
    # What was once found altered is looked at every time, so that it shows when it is mended.
    assert [each.place.line for each in again().altered] == [1]


def test_an_altered_line_among_those_that_came_since_is_named(guard: Path) -> None:
    memory = Memory()
    write(guard)
    verified(guard, now=NOW, memory=memory)
    write(guard)
    altered(guard, 2)
    found = verified(guard, now=LATER, memory=memory)
    assert ([each.place.line for each in found.altered], found.at) == ([2], LATER)
