"""A `.csv` file as one sheet."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.text.spreadsheet import csv_sheet
from paradestate.text.spreadsheet.csv_sheet import guarded, read_csv, unguarded


def rows(text: str) -> list[list[object]]:
    (sheet,), findings = read_csv(text.encode(), file="x/packs.csv")
    assert sheet.name == "packs"
    assert not findings
    return [[cell.value for cell in row.cells.values()] for row in sheet.rows]


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_the_separator_is_the_commonest_of_the_heading(separator: str) -> None:
    text = separator.join(("source", "pack", "price")) + "\n" + separator.join(("a", "b", "1"))
    assert rows(text) == [["source", "pack", "price"], ["a", "b", "1"]]


def test_quotes_and_empty_cells_and_rows() -> None:
    assert rows('a,b\n"x, y",\n,\n ,z\n') == [["a", "b"], ["x, y"], ["z"]]


def test_a_line_break_in_quotes_counts_as_one_row() -> None:
    (sheet,), _ = read_csv(b'a,b\n"x\ny",1\nz,2\n', file="packs.csv")
    assert [row.place.cell for row in sheet.rows] == ["packs!A1", "packs!A2", "packs!A3"]


def test_another_encoding_is_a_finding() -> None:
    sheets, (found,) = read_csv("a\ncaf\u00e9".encode("latin-1"), file="packs.csv")
    assert not sheets
    assert found.code == "not-utf-8"


def test_rows_are_bounded(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(csv_sheet, "MOST_ROWS", 3)
    assert len(rows("a\n" * 3 + ",\n" * 9)) == 3
    sheets, (found,) = read_csv(b"a\n" * 10, file="packs.csv")
    assert not sheets
    assert (found.code, found.place.line) == ("too-large", 4)


def test_a_quotation_mark_that_swallows_a_long_file_is_a_finding() -> None:
    sheets, (found,) = read_csv(b'a,b\nx,"1\n' + b"y,2\n" * 50_000, file="packs.csv")
    assert not sheets
    assert (found.code, found.place.line) == ("too-large", 2)
    assert "quotation mark" in found.hint


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@x", "'quoted"])
def test_what_a_spreadsheet_would_run_is_guarded(text: str) -> None:
    assert guarded(text) == f"'{text}"


@given(st.text())
def test_the_guard_is_taken_off_again(text: str) -> None:
    assert unguarded(guarded(text)) == text
