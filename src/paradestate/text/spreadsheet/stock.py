"""The sheet of what is held: a row for each figure kind, a column for each stage."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import PurePath

from paradestate.core.finding import Finding, Level, stops
from paradestate.core.holdings import Staged
from paradestate.core.place import Place
from paradestate.text.decoding import decoded
from paradestate.text.number import read_whole
from paradestate.text.slip import NOT_USED, Invalid, Slip
from paradestate.text.spelling import nearest_hint
from paradestate.text.spreadsheet.cell import Cell, Row, Sheet, Use, cell_text
from paradestate.text.spreadsheet.csv_sheet import read_csv
from paradestate.text.spreadsheet.section import (
    named_twice,
    unknown_column,
    without_column,
    without_name,
)
from paradestate.text.spreadsheet.workbook import read_workbook
from paradestate.text.spreadsheet.writing import Page

NAME = "stock"
FIGURE = "figure"
ENDINGS = (".xlsx", ".ods", ".csv")

ZIPPED = b"PK\x03\x04"


@dataclass(frozen=True, slots=True, kw_only=True)
class StockReading:
    """What a sheet says is there; empty cells say nothing."""

    staged: Staged
    findings: tuple[Finding, ...]

    @property
    def is_stopped(self) -> bool:
        """Whether something in it can't be read."""
        return bool(stops(self.findings))


def stock_page(held: Staged, *, kinds: Sequence[str], stages: Sequence[str]) -> Page:
    """Every kind at every stage; a nought is written, so that an empty cell stays a question."""
    rows = ((kind, *(str(held.get(kind, {}).get(stage, 0)) for stage in stages)) for kind in kinds)
    return Page(name=NAME, rows=((FIGURE, *stages), *rows))


def read_stock(
    data: bytes, *, file: str, kinds: Sequence[str], stages: Sequence[str]
) -> StockReading:
    """The numbers of a spreadsheet's sheet `stock`, or of a `.csv` file of any name."""
    sheets, findings = _sheets(data, file=file)
    known = tuple(sheet for sheet in sheets if sheet.name == NAME or file.endswith(".csv"))
    if sheets and not known:
        findings = (*findings, _no_stock(file, sheets))
    if not known or not known[0].rows:
        empty = () if findings else (_empty(file),)
        return StockReading(staged={}, findings=(*findings, *empty))
    reader = _Reader(kinds=kinds, stages=stages)
    reader.read(known[0])
    return StockReading(staged=reader.staged, findings=(*findings, *reader.findings))


def _sheets(data: bytes, *, file: str) -> tuple[tuple[Sheet, ...], tuple[Finding, ...]]:
    ending = PurePath(file).suffix
    if not data.startswith(ZIPPED):
        text, findings = decoded(data, file=file)
        if ending == ".csv" and text is not None:
            return read_csv(data, file=file)
        odd = findings or (_no_spreadsheet(file),)
        return (), tuple(replace(found, hint=_CHOOSE) for found in odd)
    if ending not in {".xlsx", ".ods"}:
        return (), (_no_spreadsheet(file),)
    return read_workbook(data, file=file)


_CHOOSE = f"Choose the spreadsheet that was saved from here, ending in {', '.join(ENDINGS)}."


def _no_spreadsheet(file: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code="not-a-spreadsheet",
        message="This isn't a spreadsheet, or its name doesn't end in "
        f"{', '.join(ENDINGS[:-1])} or {ENDINGS[-1]}.",
        effect="Nothing of this file is read.",
        hint=_CHOOSE,
        place=Place(file=file, line=1, column=1),
    )


def _no_stock(file: str, sheets: Sequence[Sheet]) -> Finding:
    named = ", ".join(f"'{sheet.name}'" for sheet in sheets)
    return Finding(
        level=Level.STOP,
        code="no-stock-sheet",
        message=f"No sheet of this file is called '{NAME}' (it has {named}).",
        effect="Nothing of this file is read.",
        hint=f"Call the sheet with the numbers '{NAME}'.",
        place=Place(file=file, line=1, column=1),
    )


def _empty(file: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code="no-stock-sheet",
        message=f"The sheet '{NAME}' holds nothing.",
        effect="There is nothing to count.",
        hint="Choose the file in which the numbers are, and save it before.",
        place=Place(file=file, line=1, column=1),
    )


class _Reader:
    """Takes in the rows of one sheet."""

    def __init__(self, *, kinds: Sequence[str], stages: Sequence[str]) -> None:
        self._kinds = tuple(kinds)
        self._stages = tuple(stages)
        self._rows: dict[str, Place] = {}
        self.staged: dict[str, dict[str, int]] = {}
        self.findings: list[Finding] = []

    def read(self, sheet: Sheet) -> None:
        heading, *rows = sheet.rows
        headings = dict(self._headings(heading))
        if FIGURE not in headings.values():
            self.findings.append(without_column(heading.place, FIGURE))
            return
        for row in rows:
            self._row(row, headings=headings)

    def _headings(self, row: Row) -> Iterator[tuple[int, str]]:
        for column, cell in row.cells.items():
            text = str(cell.value).strip()
            if text == FIGURE or text in self._stages:
                yield column, text
            else:
                self.findings.append(unknown_column(cell, text, known=self._stages))

    def _row(self, row: Row, *, headings: Mapping[int, str]) -> None:
        cells = {headings[column]: cell for column, cell in row.cells.items() if column in headings}
        if not cells:
            return
        if FIGURE not in cells:
            self.findings.append(without_name(row.place, FIGURE))
            return
        named = cells.pop(FIGURE)
        kind = self._text(named, use=Use.TEXT)
        if kind is None:
            return
        if kind in self._rows:
            self.findings.append(named_twice(row.place, kind, first=self._rows[kind]))
            return
        self._rows[kind] = row.place
        if kind not in self._kinds:
            self.findings.append(_unknown_kind(named, kind, kinds=self._kinds))
            return
        numbers = {stage: self._number(cell) for stage, cell in cells.items()}
        known = {stage: number for stage, number in numbers.items() if number is not None}
        if known:
            self.staged[kind] = known

    def _text(self, cell: Cell, *, use: Use) -> str | None:
        text, found = cell_text(cell, use=use)
        if found is not None:
            self.findings.append(found)
        return None if isinstance(text, Invalid) else text

    def _number(self, cell: Cell) -> int | None:
        text = self._text(cell, use=Use.NUMBER)
        number = None if text is None else read_whole(text, least=0)
        if isinstance(number, Slip):
            self.findings.append(_at(cell, number))
            return None
        return number


def _unknown_kind(cell: Cell, kind: str, *, kinds: Sequence[str]) -> Finding:
    return Finding(
        level=Level.STOP,
        code="unknown-word",
        message=f"{cell.place.cell}: no figure kind is called '{kind}'.",
        effect=NOT_USED,
        hint=nearest_hint(kind, tuple(kinds)),
        place=cell.place,
    )


def _at(cell: Cell, slip: Slip) -> Finding:
    return Finding(
        level=Level.STOP,
        code=slip.code,
        message=f"{cell.place.cell}: {slip.message}",
        effect=slip.effect,
        hint=slip.hint,
        place=cell.place,
    )
