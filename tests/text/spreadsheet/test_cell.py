"""One cell and its text."""

import datetime

import pytest

from paradestate.core.finding import Level
from paradestate.text.slip import INVALID
from paradestate.text.spreadsheet.cell import (
    Cell,
    Trouble,
    Use,
    Value,
    cell_place,
    cell_text,
    column_letters,
)

PLACE = cell_place("f.xlsx", "packs", row=3, column=2)


def text(value: Value, use: Use = Use.TEXT, *, is_share: bool = False) -> object:
    return cell_text(Cell(value=value, place=PLACE, is_share=is_share), use=use)[0]


@pytest.mark.parametrize(("column", "letters"), [(1, "A"), (26, "Z"), (27, "AA"), (703, "AAA")])
def test_columns_have_letters(column: int, letters: str) -> None:
    assert column_letters(column) == letters


def test_a_cell_knows_its_sheet() -> None:
    assert (PLACE.cell, PLACE.line, PLACE.column) == ("packs!B3", 3, 2)


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (3, "3"),
        (3.5, "3.5"),
        (8.0, "8"),
        (0.1, "0.1"),
        (1e21, "1000000000000000000000"),
        (True, "yes"),
        (False, "no"),
        (" rifle ", "rifle"),
    ],
)
def test_values_as_their_owner_would_write_them(value: Value, expected: str) -> None:
    assert text(value) == expected


def test_numbers_shown_as_per_cent() -> None:
    assert text(0.1, is_share=True) == "10%"
    assert text(1, is_share=True) == "100%"
    assert text(0.335, is_share=True) == "33.5%"


def test_dates_where_dates_belong() -> None:
    assert text(datetime.date(2026, 2, 1), Use.DATE) == "2026-02-01"
    assert text(datetime.datetime(2026, 2, 1, 12, 30), Use.DATE) == "2026-02-01"  # noqa: DTZ001


@pytest.mark.parametrize(
    ("date", "ranged", "shown"),
    [
        (datetime.date(2026, 3, 1), "1-3", "1 March"),
        (datetime.date(2026, 9, 12), "9-12", "12 September"),
        (datetime.date(2026, 12, 9), "9-12", "9 December"),
    ],
)
def test_a_range_that_became_a_date(date: datetime.date, ranged: str, shown: str) -> None:
    read, found = cell_text(Cell(value=date, place=PLACE), use=Use.RANGE)
    assert read == ranged
    assert found is not None
    assert (found.code, found.level) == ("date-for-range", Level.WARN)
    assert found.message == f"packs!B3: '{ranged}' has become '{shown}'."


def test_a_date_anywhere_else_is_a_stop() -> None:
    read, found = cell_text(Cell(value=datetime.date(2026, 3, 1), place=PLACE), use=Use.NUMBER)
    assert read is INVALID
    assert found is not None
    assert (found.code, found.level) == ("date-in-cell", Level.STOP)


def test_commas_in_numbers_are_read_with_a_warning() -> None:
    read, found = cell_text(Cell(value="-3,50", place=PLACE), use=Use.NUMBER)
    assert read == "-3.50"
    assert found is not None
    assert found.code == "comma-decimal"
    assert text("3,50", Use.TEXT) == "3,50"


@pytest.mark.parametrize("trouble", [Trouble.ERROR, Trouble.NO_RESULT])
def test_cells_without_a_value_of_their_own(trouble: Trouble) -> None:
    read, found = cell_text(Cell(value="", place=PLACE, trouble=trouble), use=Use.TEXT)
    assert read is INVALID
    assert found is not None
    assert found.code == "cell-without-value"
    assert trouble.value in found.message
