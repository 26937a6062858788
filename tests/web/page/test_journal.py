"""The journal on the page: what happened, what is struck out, and a past day."""

import datetime
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from paradestate.core.journal_entry import EntryKind
from tests.journeys.logging_to import TODAY, logged, tried
from tests.web.visitor import Visitor, words_of

DAY = datetime.timedelta(days=1)


@pytest.fixture
def visitor(guard: Path) -> Visitor:
    return Visitor(guard)


def test_a_journal_without_a_line_says_so(visitor: Visitor) -> None:
    words = words_of(visitor.get("journal"))
    assert "Nothing is written yet." in words
    assert "Begin on the sheet of what happened" in words


def test_entries_are_told_newest_first_and_the_lines_are_verified(
    visitor: Visitor, guard: Path
) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"boat": 1})
    logged(guard, EntryKind.NOTED, note="primer <ran> out")
    words = words_of(visitor.get("journal"))
    assert words.index("noted: primer <ran> out") < words.index("received 1 boat in packet")
    assert "2 lines verified, none altered." in words
    assert "written 5 March 2026, 20:15" in words


def test_an_altered_line_is_named(visitor: Visitor, guard: Path) -> None:
    logged(guard, EntryKind.NOTED, note="one")
    logged(guard, EntryKind.NOTED, note="two")
    with closing(sqlite3.connect(guard / "journal.sqlite")) as database, database:
        database.execute("UPDATE entry SET text = replace(text, 'one', 'won') WHERE number = 1")
    words = words_of(visitor.get("journal"))
    assert "2 lines: 1 line named below isn't as written." in words
    assert words.count("Line 1 (") == 1


def test_lines_altered_while_the_program_runs_show_when_all_are_verified_anew(
    visitor: Visitor, guard: Path
) -> None:
    logged(guard, EntryKind.NOTED, note="one")
    visitor.get("journal")
    with closing(sqlite3.connect(guard / "journal.sqlite")) as database, database:
        database.execute("UPDATE entry SET text = replace(text, 'one', 'won') WHERE number = 1")
    assert "isn't as written" in words_of(visitor.get("journal?verify=anew"))


def test_what_is_struck_out_stays_readable_with_its_reason(visitor: Visitor, guard: Path) -> None:
    boat = logged(guard, EntryKind.RECEIVED, figures={"boat": 1}).entry
    assert boat is not None
    assert f"journal?strike={boat.id}" in visitor.get("journal").text
    seen = visitor.get(f"journal?strike={boat.id}")
    after = visitor.fill(seen, "journal/strike-out", filled={"because": "counted the wrong box"})
    assert after.url.path.endswith("/journal")
    assert "Struck out 5 March 2026: counted the wrong box" in words_of(after)
    assert "<s>received 1 boat in packet</s>" in after.text
    assert "It counts no more, and stays to be read below." in words_of(after)
    again = visitor.fill(seen, "journal/strike-out", filled={"because": "counted the wrong box"})
    assert again.status_code == 200
    assert "2 lines verified" in words_of(again)


def test_a_strike_is_taken_back_where_it_is_said(visitor: Visitor, guard: Path) -> None:
    boat = logged(guard, EntryKind.RECEIVED, figures={"boat": 1}).entry
    assert boat is not None
    seen = visitor.get(f"journal?strike={boat.id}")
    after = visitor.fill(seen, "journal/strike-out", filled={"because": "counted the wrong box"})
    visitor.fill(after, "journal/strike-out")
    assert "<s>received 1 boat in packet</s>" not in visitor.get("journal").text


def test_nothing_is_struck_out_without_a_reason_or_if_others_rest_on_it(
    visitor: Visitor, guard: Path
) -> None:
    boat = logged(guard, EntryKind.RECEIVED, figures={"boat": 1}).entry
    logged(guard, EntryKind.SOLD, figures={"boat": 1})
    assert boat is not None
    seen = visitor.get(f"journal?strike={boat.id}")
    for because, words in (
        ("", "Nothing says why it is struck out."),
        ("slip", "would take 1 more boat"),
    ):
        after = visitor.fill(seen, "journal/strike-out", filled={"because": because})
        assert after.status_code == 422
        assert words in words_of(after)
    assert "2 lines verified" in words_of(visitor.get("journal"))


def test_what_is_struck_out_already_or_is_not_there_is_not_offered(
    visitor: Visitor, guard: Path
) -> None:
    note = logged(guard, EntryKind.NOTED, note="x").entry
    assert note is not None
    logged(guard, EntryKind.STRUCK_OUT, struck_out=note.id, note="slip")
    for named in (note.id, "1f0c", "no such thing"):
        assert "Strike it out" not in words_of(visitor.get(f"journal?strike={named}"))


def test_fifty_entries_are_a_page(visitor: Visitor, guard: Path) -> None:
    for number in range(52):
        logged(guard, EntryKind.NOTED, note=f"note {number};")
    first, second = words_of(visitor.get("journal")), words_of(visitor.get("journal?skip=50"))
    assert "1 to 50 of 52" in first
    assert "2 older" in first
    assert ("note 2;" in first, "note 1;" in first) == (True, False)
    assert ("note 1;" in second, "Newer" in second) == (True, True)
    assert "52 lines verified" in second


def test_a_past_day_shows_its_entries_and_its_parade_state(visitor: Visitor, guard: Path) -> None:
    before = TODAY - 3 * DAY
    logged(guard, EntryKind.RECEIVED, figures={"boat": 1}, to_stage="based", on=before)
    logged(guard, EntryKind.SOLD, figures={"boat": 1}, on=TODAY - DAY)
    then = words_of(visitor.get(f"journal?on={before}"))
    assert "Parade state at the end of 2 March 2026" in then
    assert "1 of 3 stands were finished." in then
    assert "boat 1 1 0" in then
    assert ("received 1 boat" in then, "sold 1 boat" in then) == (True, False)
    now = words_of(visitor.get(f"journal?on={TODAY}"))
    assert "0 of 3 stands were finished." in now
    assert "Nothing is written for that day." in now


def test_entries_about_one_kind_are_found(visitor: Visitor, guard: Path) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"boat": 1})
    logged(guard, EntryKind.MOVED, figures={"rifleman": 2}, to_stage="assembled")
    words = words_of(visitor.get("journal?about=boat"))
    assert ("received 1 boat" in words, "moved 2 riflemen" in words) == (True, False)
    assert "Nothing is written about lorry." in words_of(visitor.get("journal?about=lorry"))


@pytest.mark.parametrize(
    ("query", "words"),
    [
        ("on=yesterday", "isn't a date"),
        ("on=2026-12", "is more than one day"),
        ("on=2031-01-01", "There is no parade state of it to show."),
        ("skip=-3", "isn't a whole number"),
        ("skip=99", "Begin on the sheet"),
    ],
)
def test_an_address_that_can_not_be_so_is_told(visitor: Visitor, query: str, words: str) -> None:
    seen = visitor.get(f"journal?{query}")
    assert seen.status_code == 200
    assert words in words_of(seen)


def test_a_force_that_is_stopped_still_shows_its_journal(visitor: Visitor, guard: Path) -> None:
    logged(guard, EntryKind.NOTED, note="primer ran out")
    (guard / "force.yaml").write_text("figures: {", encoding="utf-8")
    words = words_of(visitor.get(f"journal?on={TODAY}"))
    assert "noted: primer ran out" in words
    assert "Parade state at the end" not in words


def test_who_wrote_it_is_told_in_a_collection(club: Path) -> None:
    logged(club, EntryKind.NOTED, note="for all")
    assert tried(club / "watch", EntryKind.NOTED, note="for one").entry is not None
    words = words_of(Visitor(club, force="guard").get("journal"))
    assert "20:15 for watch" in words
