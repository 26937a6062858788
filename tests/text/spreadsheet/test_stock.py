"""The sheet of what is held, written and read back."""

import datetime
from collections.abc import Callable, Sequence

import pytest

from paradestate.core.holdings import Staged
from paradestate.text.spreadsheet.stock import StockReading, read_stock, stock_page
from paradestate.text.spreadsheet.writing import csv_text, ods_bytes, xlsx_bytes
from tests.text.spreadsheet.books import xlsx

KINDS = ("rifleman", "officer")
STAGES = ("in packet", "painted")
HELD: Staged = {"rifleman": {"in packet": 8, "painted": 2}}


def read(data: bytes, file: str = "stock.xlsx") -> StockReading:
    return read_stock(data, file=file, kinds=KINDS, stages=STAGES)


def rows(*rows: Sequence[object]) -> StockReading:
    return read(xlsx({"stock": rows}))


def said(reading: StockReading) -> list[tuple[str, str, str]]:
    return [(found.code, found.place.cell, found.message) for found in reading.findings]


@pytest.mark.parametrize("ending", ["xlsx", "ods", "csv"])
def test_what_is_written_comes_back_with_its_noughts(ending: str) -> None:
    page = stock_page(HELD, kinds=KINDS, stages=STAGES)
    assert page.rows == (
        ("figure", "in packet", "painted"),
        ("rifleman", "8", "2"),
        ("officer", "0", "0"),
    )
    write: dict[str, Callable[[], bytes]] = {
        "xlsx": lambda: xlsx_bytes((page,)),
        "ods": lambda: ods_bytes((page,)),
        "csv": lambda: csv_text(page).encode("utf-8-sig"),
    }
    reading = read(write[ending](), f"stock (1).{ending}")
    assert reading == StockReading(
        staged={**HELD, "officer": {"in packet": 0, "painted": 0}}, findings=()
    )
    assert not reading.is_stopped


def test_an_empty_cell_says_nothing_and_an_empty_row_is_no_row() -> None:
    reading = rows(["figure", "painted"], ["rifleman", None], [None, None], ["officer", 3])
    assert (reading.staged, reading.findings) == ({"officer": {"painted": 3}}, ())


def test_what_is_not_understood_is_named_by_its_cell() -> None:
    reading = rows(
        ["figure", "in packet", "primed", "painted"],
        ["rifleman", "x", 1, -2],
        ["riflman", 1, None, None],
        ["rifleman", 1, None, None],
        [None, 4, None, None],
        [None, None, 4, None],
        ["officer", 2.5, None, "=1+"],
    )
    assert said(reading)[0][:2] == ("unknown-word", "stock!C1")
    assert said(reading)[1:] == [
        ("not-a-number", "stock!B2", "stock!B2: 'x' isn't a whole number."),
        ("not-a-whole-number", "stock!D2", "stock!D2: -2 isn't a whole number from 0 up."),
        ("unknown-word", "stock!A3", "stock!A3: no figure kind is called 'riflman'."),
        ("name-twice", "stock!A4", "'rifleman' is defined twice (stock!A2 and stock!A4)."),
        ("row-without-name", "stock!A5", "This row has nothing in the column 'figure'."),
        ("not-a-whole-number", "stock!B7", "stock!B7: 2.5 isn't a whole number from 0 up."),
        (
            "cell-without-value",
            "stock!D7",
            "stock!D7 holds a formula whose result isn't in the file.",
        ),
    ]
    assert (reading.staged, reading.is_stopped) == ({}, True)


def test_a_name_that_became_a_date_is_no_name() -> None:
    reading = rows(["figure", "painted"], [datetime.date(2026, 3, 1), 4])
    assert [code for code, _, _ in said(reading)] == ["date-in-cell"]


def test_without_a_column_of_names_nothing_is_read() -> None:
    reading = rows(["kind", "painted"], ["rifleman", 4])
    assert [(code, cell) for code, cell, _ in said(reading)] == [
        ("unknown-word", "stock!A1"),
        ("column-missing", "stock!A1"),
    ]


def test_the_sheet_has_to_be_called_stock() -> None:
    reading = read(xlsx({"Tabelle1": [["figure", "painted"], ["rifleman", 4]]}))
    (found,) = reading.findings
    assert found.message == "No sheet of this file is called 'stock' (it has 'Tabelle1')."
    assert reading.staged == {}


@pytest.mark.parametrize("file", ["stock.csv", "stock.xlsx"])
def test_an_empty_sheet_is_no_count(file: str) -> None:
    reading = read(b"" if file.endswith("csv") else xlsx({"stock": []}), file)
    assert [(code, message) for code, _, message in said(reading)] == [
        ("no-stock-sheet", "The sheet 'stock' holds nothing.")
    ]


@pytest.mark.parametrize(
    ("data", "file", "message"),
    [
        (b"\x89PNG\r\n\x1a\n", "stock.xlsx", "This is a picture (PNG), not force data."),
        (b"\x89PNG\r\n\x1a\n", "stock.csv", "This is a picture (PNG), not force data."),
        (b"figure,painted\n", "stock.xlsx", "This isn't a spreadsheet, or its name doesn't end"),
        (b"figure,painted\n", "stock.txt", "This isn't a spreadsheet, or its name doesn't end"),
        (b"PK\x03\x04", "stock.csv", "This isn't a spreadsheet, or its name doesn't end"),
        (b"PK\x03\x04", "stock.xlsx", "This isn't a whole spreadsheet file (not zipped)."),
        (b"figure,\xff\n", "stock.csv", "The byte FF here isn't UTF-8."),
    ],
)
def test_what_is_no_spreadsheet_is_called_what_it_is(data: bytes, file: str, message: str) -> None:
    reading = read(data, file)
    (found,) = reading.findings
    assert found.message.startswith(message)
    assert found.effect == "Nothing of this file is read."
    assert reading.is_stopped
