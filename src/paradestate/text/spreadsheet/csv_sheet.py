"""A `.csv` file as one sheet, called after the file."""

import csv
import io
from collections.abc import Iterator
from pathlib import PurePath

from paradestate.core.finding import Finding, Level
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
    try:
        rows = tuple(_rows(text, file=file, sheet=name))
    except _TooLargeError as error:
        return (), (_too_large(error, file=file),)
    return (Sheet(name=name, rows=rows, place=Place(file=file, line=1, column=1)),), ()


class _TooLargeError(Exception):
    """Carries out of a sheet what is too large in it, and the line."""

    def __init__(self, message: str, *, line: int, hint: str) -> None:
        super().__init__(message)
        self.line = line
        self.hint = hint


def _too_large(error: _TooLargeError, *, file: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code="too-large",
        message=str(error),
        effect="Nothing of this file is read.",
        hint=error.hint,
        place=Place(file=file, line=error.line, column=1),
    )


def _fields(text: str, *, separator: str) -> Iterator[tuple[int, list[str]]]:
    """The number of each row and its fields. Raises _TooLargeError."""
    reader = csv.reader(io.StringIO(text), delimiter=separator)
    line = 1
    try:
        for number, fields in enumerate(reader, start=1):
            if number > MOST_ROWS and any(map(str.strip, fields)):
                raise _TooLargeError(
                    f"The sheet has more than {MOST_ROWS:,} rows.",
                    line=line,
                    hint="Split the file, or take out rows that nothing needs.",
                )
            yield number, fields
            line = reader.line_num + 1
    except csv.Error:
        raise _TooLargeError(
            f"A cell of this row has more than {csv.field_size_limit():,} characters.",
            line=line,
            hint="Look for a quotation mark that isn't closed.",
        ) from None


def _rows(text: str, *, file: str, sheet: str) -> Iterator[Row]:
    heading = text.split("\n", 1)[0]
    separator = max(SEPARATORS, key=heading.count)
    for number, fields in _fields(text, separator=separator):
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
