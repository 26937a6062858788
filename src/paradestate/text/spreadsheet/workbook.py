"""The bytes of `.xlsx` and `.ods` files as sheets of cells. Libraries are loaded when needed."""

import datetime
import io
import zipfile
from collections.abc import Callable, Iterator
from importlib.util import find_spec
from typing import Any
from xml.parsers.expat import ParserCreate

from paradestate.core.finding import Finding, Level
from paradestate.core.place import Place
from paradestate.text.spreadsheet.cell import Cell, Row, Sheet, Trouble, Value, cell_place

MOST_UNPACKED = 64 * 1024 * 1024
"""Bytes that a spreadsheet may unpack to."""

MOST_ROWS = 20_000
MOST_COLUMNS = 200
MOST_CELLS = 500_000
"""Cells, empty ones included, in the rectangle that a sheet fills."""

Sheets = tuple[tuple[Sheet, ...], tuple[Finding, ...]]


def read_workbook(data: bytes, *, file: str) -> Sheets:
    """The sheets of a zipped spreadsheet, by the ending of its name."""
    trouble = _zip_trouble(data, file=file)
    if trouble is not None:
        return (), (trouble,)
    if file.endswith(".ods"):
        if find_spec("odf") is None:
            return (), (_stop(file, code="ods-not-installed", message=_ODS, hint=_ODS_HINT),)
        return _whole(lambda: _read_ods(data, file=file), file=file)
    return _whole(lambda: _read_xlsx(data, file=file), file=file)


def _whole(read: Callable[[], Sheets], *, file: str) -> Sheets:
    """What was read; or that it can't be, whatever the libraries meet in a damaged file.

    They raise nearly anything there.
    """
    try:
        sheets, findings = read()
    except Exception as error:  # noqa: BLE001 - any, as said above
        return (), (_unreadable(file, str(error) or type(error).__name__),)
    if not sheets and not findings:
        return (), (_unreadable(file, "without a sheet"),)
    return sheets, findings


_ODS = "Reading .ods files needs a part that isn't installed."
_ODS_HINT = "Install it with: pip install 'paradestate[ods]', or save the file as .xlsx."


def _zip_trouble(data: bytes, *, file: str) -> Finding | None:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            size = sum(entry.file_size for entry in packed.infolist())
    except zipfile.BadZipFile:
        return _unreadable(file, "not zipped")
    if size <= MOST_UNPACKED:
        return None
    return _stop(
        file,
        code="too-large",
        message=f"The file unpacks to {size / 1024 / 1024:.0f} MB; 64 MB is the most read.",
        hint="Take out what isn't force data.",
    )


def _unreadable(file: str, why: object) -> Finding:
    return _stop(
        file,
        code="not-a-spreadsheet",
        message=f"This isn't a whole spreadsheet file ({why}).",
        hint="Open it in the spreadsheet program and save it again.",
    )


def _stop(file: str, *, code: str, message: str, hint: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect="Nothing of this file is read.",
        hint=hint,
        place=Place(file=file, line=1, column=1),
    )


def _read_xlsx(data: bytes, *, file: str) -> Sheets:
    import openpyxl  # noqa: PLC0415 - start-up time: only folders with spreadsheets need it

    # A stream is counted and left where it is too long, before a whole book is held in memory.
    stream = openpyxl.load_workbook(io.BytesIO(data), read_only=True)
    if any(_holds_too_much(sheet) for sheet in stream.worksheets):
        return (), (_too_many_cells(file),)
    formulas = openpyxl.load_workbook(io.BytesIO(data))
    results = openpyxl.load_workbook(io.BytesIO(data), data_only=True)
    if any(sheet.max_row * sheet.max_column > MOST_CELLS for sheet in formulas.worksheets):
        return (), (_too_many_cells(file),)
    findings = [
        _merged(file, sheet.title, where=str(merged))
        for sheet in formulas.worksheets
        for merged in sheet.merged_cells.ranges
    ]
    sheets = tuple(
        Sheet(
            name=sheet.title,
            rows=tuple(_xlsx_rows(sheet, formulas[sheet.title], file=file)),
            place=Place(file=file, line=1, column=1),
        )
        for sheet in results.worksheets
    )
    return sheets, tuple(findings)


def _merged(file: str, sheet: str, *, where: str) -> Finding:
    return Finding(
        level=Level.WARN,
        code="merged-cells",
        message=f"{sheet}!{where} are merged.",
        effect="Only the first of them has a value; the others are taken for empty.",
        hint="Split the cells and write each value.",
        place=Place(file=file, line=1, column=1, cell=f"{sheet}!{where}"),
    )


def _holds_too_much(sheet: Any) -> bool:  # noqa: ANN401 - of a library without types
    """Whether a sheet has more cells than are read; looks no further than that."""
    cells = 0
    for row in sheet.iter_rows(values_only=True):
        cells += max(len(row), 1)
        if cells > MOST_CELLS:
            return True
    return False


def _too_many_cells(file: str) -> Finding:
    return _stop(
        file,
        code="too-large",
        message=f"A sheet has more than {MOST_CELLS:,} cells.",
        hint="Delete what isn't force data, empty rows and columns too.",
    )


def _xlsx_rows(results: Any, formulas: Any, *, file: str) -> Iterator[Row]:  # noqa: ANN401
    last_row = min(results.max_row, MOST_ROWS)
    rows = results.iter_rows(max_row=last_row, max_col=min(results.max_column, MOST_COLUMNS))
    for row in rows:
        cells = {}
        for cell in row:
            formula = formulas.cell(row=cell.row, column=cell.column).data_type == "f"
            known = _xlsx_cell(cell, formula=formula, file=file, sheet=results.title)
            if known is not None:
                cells[cell.column] = known
        if cells:
            number = row[0].row
            place = cell_place(file, results.title, row=number, column=1)
            yield Row(cells=cells, place=place)


def _xlsx_cell(cell: Any, *, formula: bool, file: str, sheet: str) -> Cell | None:  # noqa: ANN401
    place = cell_place(file, sheet, row=cell.row, column=cell.column)
    if formula and cell.value is None:
        return Cell(value="", place=place, trouble=Trouble.NO_RESULT)
    if cell.data_type == "e":
        return Cell(value=str(cell.value), place=place, trouble=Trouble.ERROR)
    value = cell.value
    if value is None or (isinstance(value, str) and not value.strip()):
        return None
    if isinstance(value, datetime.time | datetime.timedelta):
        value = str(value)
    return Cell(value=value, place=place, is_share="%" in str(cell.number_format))


def _read_ods(data: bytes, *, file: str) -> Sheets:
    from odf.namespaces import TABLENS  # noqa: PLC0415 - an extra
    from odf.opendocument import load  # noqa: PLC0415
    from odf.table import Table, TableCell, TableRow  # noqa: PLC0415

    _refuse_torn_parts(data)
    document = load(io.BytesIO(data))
    sheets = []
    for table in document.getElementsByType(Table):
        name = str(table.getAttribute("name"))
        rows = []
        number = 0
        for row in table.getElementsByType(TableRow):
            repeated = int(row.getAttrNS(TABLENS, "number-rows-repeated") or 1)
            cells = dict(
                _ods_cells(row.getElementsByType(TableCell), name, row=number + 1, file=file)
            )
            if cells and number < MOST_ROWS:
                place = cell_place(file, name, row=number + 1, column=1)
                rows.append(Row(cells=cells, place=place))
            number += repeated
        top = Place(file=file, line=1, column=1)
        sheets.append(Sheet(name=name, rows=tuple(rows), place=top))
    return tuple(sheets), ()


def _refuse_torn_parts(data: bytes) -> None:
    """Raises where a part isn't whole XML: the library would print it and read what is left."""
    with zipfile.ZipFile(io.BytesIO(data)) as packed:
        for part in dict.fromkeys(("content.xml", *packed.namelist())):
            if part.endswith(".xml"):
                ParserCreate(namespace_separator=" ").Parse(packed.read(part), True)  # noqa: FBT003


def _ods_cells(
    cells: Any,  # noqa: ANN401
    sheet: str,
    *,
    row: int,
    file: str,
) -> Iterator[tuple[int, Cell]]:
    from odf.namespaces import TABLENS  # noqa: PLC0415 - an extra

    column = 0
    for cell in cells:
        column += 1
        if column > MOST_COLUMNS:
            return
        value, is_share = _ods_value(cell)
        if value not in {"", None}:
            place = cell_place(file, sheet, row=row, column=column)
            yield column, Cell(value=value, place=place, is_share=is_share)
        column += int(cell.getAttrNS(TABLENS, "number-columns-repeated") or 1) - 1


def _ods_value(cell: Any) -> tuple[Value, bool]:  # noqa: ANN401 - a node of an untyped library
    from odf.namespaces import OFFICENS  # noqa: PLC0415 - an extra
    from odf.teletype import extractText  # noqa: PLC0415

    sort = cell.getAttrNS(OFFICENS, "value-type")
    if sort in {"float", "percentage", "currency"}:
        number = float(cell.getAttrNS(OFFICENS, "value"))
        return (int(number) if number.is_integer() and sort != "percentage" else number), (
            sort == "percentage"
        )
    if sort == "date":
        return datetime.date.fromisoformat(cell.getAttrNS(OFFICENS, "date-value")[:10]), False
    if sort == "boolean":
        return cell.getAttrNS(OFFICENS, "boolean-value") == "true", False
    return str(extractText(cell)).strip(), False
