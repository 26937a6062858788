"""A `.csv` file as one sheet, called after the file."""

import csv
import io
from collections.abc import Iterator
from pathlib import PurePath

from paradestate.core.finding import Finding
from paradestate.core.place import Place
from paradestate.text.decoding import decoded
from paradestate.text.spreadsheet.cell import Cell, Row, Sheet, cell_place
from paradestate.text.spreadsheet.workbook import MOST_COLUMNS, MOST_ROWS

SEPARATORS = (",", ";", "\t")

GUARD = "'"
"""Written before text that a spreadsheet would take for a formula; taken off when read."""

FORMULA_SIGNS = ("=", "+", "-", "@")


def read_csv(data: bytes, *, file: str) -> tuple[tuple[Sheet, ...], tuple[Finding, ...]]:
    """The sheet of a file, and what was found."""
    text, findings = decoded(data, file=file)
    if text is None:
        return (), findings
    name = PurePath(file).stem
    rows = tuple(_rows(text, file=file, sheet=name))
    return (Sheet(name=name, rows=rows, place=Place(file=file, line=1, column=1)),), ()


def _rows(text: str, *, file: str, sheet: str) -> Iterator[Row]:
    heading = text.split("\n", 1)[0]
    separator = max(SEPARATORS, key=heading.count)
    reader = csv.reader(io.StringIO(text), delimiter=separator)
    for number, fields in enumerate(reader, start=1):
        if number > MOST_ROWS:
            return
        cells = {
            column: Cell(
                value=unguarded(field.strip()),
                place=cell_place(file, sheet, row=number, column=column),
            )
            for column, field in enumerate(fields[:MOST_COLUMNS], start=1)
            if field.strip()
        }
        if cells:
            yield Row(cells=cells, place=cell_place(file, sheet, row=number, column=1))


def guarded(text: str) -> str:
    """The text with a guard where a spreadsheet would run it as a formula."""
    return GUARD + text if text.startswith((*FORMULA_SIGNS, GUARD)) else text


def unguarded(text: str) -> str:
    """The text without the guard that `guarded` put there."""
    signs = tuple(GUARD + sign for sign in (*FORMULA_SIGNS, GUARD))
    return text[1:] if text.startswith(signs) else text
