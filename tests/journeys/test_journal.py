"""A journal that was altered, is long, or was written by a later version."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from paradestate.core.digest_chain import START
from paradestate.core.finding import Level
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.journal_text import read_entry
from paradestate.journeys import journal as journal_journey
from paradestate.journeys.collection import collection_of
from paradestate.journeys.holdings import checked_with_journal, holdings
from paradestate.journeys.journal import BETWEEN_CHECKPOINTS
from paradestate.store.opening import opened
from tests.entries import number_of, uuid
from tests.journeys.logging_to import TODAY, logged, tried


@pytest.fixture
def boats(guard: Path) -> Path:
    """Three boats received one by one."""
    for number in range(1, 4):
        logged(guard, EntryKind.RECEIVED, figures={"boat": 1}, id=uuid(number))
    return guard


def altered(folder: Path, statement: str) -> None:
    """Changes the journal by another program."""
    with closing(sqlite3.connect(folder / "journal.sqlite")) as connection, connection:
        assert connection.execute(statement).rowcount == 1


@pytest.mark.parametrize(
    ("statement", "line", "boats_left"),
    [
        ("UPDATE entry SET text = replace(text, '1}', '9}') WHERE number = 2", 2, 11),
        ("DELETE FROM entry WHERE number = 2", 2, 2),
        ("DELETE FROM entry WHERE number = 3", 3, 2),
    ],
)
def test_an_altered_line_is_found_on_opening_and_named(
    boats: Path, statement: str, line: int, boats_left: int
) -> None:
    altered(boats, statement)
    known = holdings(boats, today=TODAY)
    (found,) = known.findings
    assert (found.level, found.code, found.place.line) == (Level.WARN, "journal-altered", line)
    assert found.place.file == str(boats / "journal.sqlite")
    assert known.state is not None
    assert known.state.held.figures["boat"] == {"in packet": boats_left}


def test_every_altered_line_is_named(boats: Path) -> None:
    altered(boats, "UPDATE entry SET text = replace(text, '1}', '9}') WHERE number = 1")
    altered(boats, "UPDATE entry SET text = X'ff00' WHERE number = 3")
    found = checked_with_journal(boats, today=TODAY).findings
    assert sorted((each.code, each.place.line) for each in found) == [
        ("journal-altered", 1),
        ("journal-altered", 3),
        ("journal-not-understood", 3),
    ]


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE collection SET number = 'abc'",
        "UPDATE collection SET number = 7",
        "UPDATE collection SET number = -1",
        "UPDATE collection SET digest = X'ff00'",
        "DELETE FROM collection",
    ],
)
def test_an_end_that_was_altered_is_a_warning(boats: Path, statement: str) -> None:
    altered(boats, statement)
    known = holdings(boats, today=TODAY)
    assert {found.code for found in known.findings} == {"journal-altered"}
    assert known.state is not None
    assert known.state.held.figures["boat"] == {"in packet": 3}


def test_an_altered_line_is_told_to_who_writes_as_well(boats: Path) -> None:
    altered(boats, "UPDATE entry SET text = replace(text, '1}', '9}') WHERE number = 2")
    answer = logged(boats, EntryKind.RECEIVED, figures={"boat": 1})
    assert [found.code for found in answer.findings] == ["journal-altered"]
    assert answer.state.held.figures["boat"] == {"in packet": 12}


def test_what_a_later_version_wrote_is_a_stop(boats: Path) -> None:
    with opened(collection_of(boats).address, writing=True) as journal:
        journal.append(id=uuid(9), text='{"kind":"mislaid"}')
    (found,) = checked_with_journal(boats, today=TODAY).findings
    assert (found.level, found.code) == (Level.STOP, "journal-not-understood")
    assert holdings(boats, today=TODAY).state is None
    answer = tried(boats, EntryKind.RECEIVED, figures={"boat": 1})
    assert [each.code for each in answer.findings] == ["journal-not-understood"]


class TestCheckpoints:
    @pytest.fixture(autouse=True)
    def _short(self, monkeypatch: pytest.MonkeyPatch) -> None:
        assert BETWEEN_CHECKPOINTS > 100
        monkeypatch.setattr(journal_journey, "BETWEEN_CHECKPOINTS", 2)

    def lines_read(self, folder: Path, monkeypatch: pytest.MonkeyPatch) -> int:
        """How many lines are made into entries when the journal is read."""
        read: list[str] = []

        def counted(text: str, *, id: str) -> JournalEntry:  # noqa: A002 - as it is called
            read.append(id)
            return read_entry(text, id=id)

        with monkeypatch.context() as patch:
            patch.setattr(f"{journal_journey.__name__}.read_entry", counted)
            known = holdings(folder, today=TODAY)
        assert known.state is not None
        assert known.findings == ()
        return len(read)

    def test_only_what_came_after_the_last_is_added_up(
        self, boats: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        with opened(collection_of(boats).address, writing=False) as journal:
            kept = journal.checkpoint()
        assert kept is not None
        assert kept.head.number == 2
        assert self.lines_read(boats, monkeypatch) == 1

    def test_what_is_written_late_has_all_added_up_anew(
        self, boats: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        late = TODAY.replace(day=1)
        answer = logged(boats, EntryKind.RECEIVED, figures={"boat": 1}, on=late)
        assert answer.state.held.figures["boat"] == {"in packet": 4}
        # The last entry made a new sum of all, so that the next reader needn't.
        assert self.lines_read(boats, monkeypatch) == 0

    def test_other_stock_in_the_files_has_all_added_up_anew(
        self, boats: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        file = boats / "force.yaml"
        text = file.read_text(encoding="utf-8").replace("painted: 2", "painted: 3")
        file.write_text(text, encoding="utf-8")
        assert self.lines_read(boats, monkeypatch) == 3

    def test_a_promise_for_a_day_to_come_leaves_them_of_use(
        self, boats: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        later = TODAY.replace(year=2027)
        logged(boats, EntryKind.PROMISED, figures={"boat": 1}, on=later)
        assert self.lines_read(boats, monkeypatch) == 0
        logged(boats, EntryKind.RECEIVED, figures={"boat": 1})
        assert self.lines_read(boats, monkeypatch) == 1
        known = holdings(boats, today=TODAY, on=TODAY)
        assert known.state is not None
        assert [promise.day for promise in known.state.promises] == [later]

    def test_nothing_is_kept_of_altered_lines_nor_used_over_them(self, boats: Path) -> None:
        before = "UPDATE entry SET text = replace(text, '9}', '1}') WHERE number = 1"
        altered(boats, "UPDATE entry SET text = replace(text, '1}', '9}') WHERE number = 1")
        found = holdings(boats, today=TODAY)
        assert found.state is not None
        assert found.state.held.figures["boat"] == {"in packet": 11}
        for _ in range(3):
            logged(boats, EntryKind.RECEIVED, figures={"boat": 1})
        altered(boats, before)
        mended = holdings(boats, today=TODAY)
        assert (mended.findings, mended.state is None) == ((), False)
        assert mended.state is not None
        assert mended.state.held.figures["boat"] == {"in packet": 6}

    def test_a_long_journal_is_verified_from_the_last_on_unless_all_is_asked_for(
        self, boats: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        altered(boats, "UPDATE entry SET text = replace(text, '1}', '9}') WHERE number = 1")
        assert holdings(boats, today=TODAY).findings
        monkeypatch.setattr(journal_journey, "ALWAYS_WHOLE", 2)
        assert holdings(boats, today=TODAY).findings == ()
        past = holdings(boats, today=TODAY, on=TODAY)
        assert [found.code for found in past.findings] == ["journal-altered"]
        late = logged(boats, EntryKind.RECEIVED, figures={"boat": 1}, on=TODAY.replace(day=1))
        assert [found.code for found in late.findings] == ["journal-altered"]
        assert [found.code for found in holdings(boats, today=TODAY).findings] == [
            "journal-altered"
        ]
        (found,) = checked_with_journal(boats, today=TODAY).findings
        assert (found.code, found.place.line) == ("journal-altered", 1)


def test_a_journal_without_lines_comes_to_the_start(guard: Path) -> None:
    with opened(collection_of(guard).address, writing=True) as journal:
        assert journal.head() == START
    known = holdings(guard, today=TODAY)
    assert known.state is not None
    assert number_of("rifleman", known.state.held) == 10
