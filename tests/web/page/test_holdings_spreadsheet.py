"""The holdings as a spreadsheet on the page: out, looked at, accepted, refused."""

from pathlib import Path

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.journeys.holdings import holdings
from tests.journeys.logging_to import TODAY, logged
from tests.text.spreadsheet.books import Rows, xlsx
from tests.web.visitor import Visitor, words_of

SHEET = "holdings/spreadsheet"
CHANGED: Rows = [["figure", "in packet", "painted"], ["rifleman", 5, 2]]


@pytest.fixture
def visitor(guard: Path) -> Visitor:
    return Visitor(guard)


@pytest.mark.parametrize("ending", [".xlsx", ".ods", ".csv"])
def test_what_is_taken_out_can_be_sent_back_and_agrees(visitor: Visitor, ending: str) -> None:
    taken = visitor.get(f"{SHEET}?as={ending}")
    assert taken.status_code == 200
    assert taken.headers["content-disposition"] == f'attachment; filename="stock{ending}"'
    after = visitor.fill(visitor.get(SHEET), SHEET, file=(f"stock{ending}", taken.content))
    assert after.status_code == 200
    assert f"stock{ending} agrees with what is held: 10 numbers." in words_of(after)


def test_a_changed_sheet_is_shown_first_and_written_when_accepted(
    visitor: Visitor, guard: Path
) -> None:
    data = xlsx({"stock": CHANGED})
    looked = visitor.fill(visitor.get(SHEET), SHEET, file=("march.xlsx", data))
    assert "rifleman in packet 8 5 -3" in words_of(looked)
    assert "Nothing is written yet." in words_of(looked)
    assert not (guard / "journal.sqlite").exists()
    for _ in range(2):
        after = visitor.fill(looked, "holdings/accept")
        assert "counted 5 riflemen in packet: from march.xlsx" in words_of(after)
    known = holdings(guard, today=TODAY)
    assert known.state is not None
    assert known.state.held.figures == {"rifleman": {"in packet": 5, "painted": 2}}
    assert "Lines 1" in words_of(visitor.get("journal"))


def test_what_was_written_meanwhile_is_not_overwritten(visitor: Visitor, guard: Path) -> None:
    data = xlsx({"stock": CHANGED})
    looked = visitor.fill(visitor.get(SHEET), SHEET, file=("march.xlsx", data))
    logged(guard, EntryKind.RECEIVED, figures={"rifleman": 3})
    after = visitor.fill(looked, "holdings/accept")
    assert after.status_code == 422
    assert "rifleman, in packet: 8 held when this count was shown, 11 now." in words_of(after)


def test_a_mutated_acceptance_is_refused(visitor: Visitor) -> None:
    looked = visitor.fill(visitor.get(SHEET), SHEET, file=("march.xlsx", xlsx({"stock": CHANGED})))
    wrong = {"becomes/rifleman/in%20packet": "many"}
    after = visitor.fill(looked, "holdings/accept", filled=wrong)
    assert after.status_code == 422
    assert "rifleman, in packet: 'many' isn't a whole number." in words_of(after)


@pytest.mark.parametrize(
    ("name", "data", "words"),
    [
        ("photo.xlsx", b"\x89PNG\r\n\x1a\n", "This is a picture (PNG), not force data."),
        ("photo.png", b"\x89PNG\r\n\x1a\n", "This is a picture (PNG), not force data."),
        ("x.csv", b"figure,painted\nriflman,3\n", "x!A2: no figure kind is called 'riflman'."),
        ("x.csv", b"figure,primed\nrifleman,3\n", "x!B1: the column 'primed' isn't known here."),
        ("x.csv", b"figure,painted\nrifleman,-3\n", "x!B2: -3 isn't a whole number from 0 up."),
        ("x.csv", b"0" * (5 * 1024 * 1024 + 1), "The file has 5.0 MB; 5 MB is the most taken."),
    ],
)
def test_what_can_not_be_read_is_said_and_nothing_is_written(
    *, visitor: Visitor, guard: Path, name: str, data: bytes, words: str
) -> None:
    after = visitor.fill(visitor.get(SHEET), SHEET, file=(name, data))
    assert after.status_code == 422
    assert words in words_of(after)
    assert "Write it as a count" not in words_of(after)
    assert not (guard / "journal.sqlite").exists()


def test_a_sheet_without_numbers_changes_nothing(visitor: Visitor) -> None:
    after = visitor.fill(visitor.get(SHEET), SHEET, file=("x.csv", b"figure,painted\nrifleman,\n"))
    assert "x.csv says no number. There is nothing to write." in words_of(after)


def test_no_file_is_no_sheet(visitor: Visitor) -> None:
    after = visitor.fill(visitor.get(SHEET), SHEET)
    assert after.status_code == 422
    assert "No file was chosen." in words_of(after)


def test_an_ending_that_is_none_is_refused(visitor: Visitor, guard: Path) -> None:
    assert visitor.get(f"{SHEET}?as=.exe").status_code == 400
    (guard / "force.yaml").write_text("figures: {", encoding="utf-8")
    assert "Nothing can be counted" in words_of(visitor.get(f"{SHEET}?as=.csv"))
