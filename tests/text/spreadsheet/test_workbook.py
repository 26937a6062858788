"""The bytes of workbooks as sheets of cells."""

import datetime
import io
import re
import sys
import zipfile

import openpyxl
import pytest

from paradestate.text.spreadsheet import workbook
from paradestate.text.spreadsheet.workbook import read_workbook
from paradestate.text.spreadsheet.writing import Page, ods_bytes, xlsx_bytes
from tests.text.spreadsheet.books import read, said, xlsx


def codes(data: bytes, file: str = "b.xlsx") -> list[str]:
    return [found.code for found in read_workbook(data, file=file)[1]]


def test_numbers_dates_and_shares_of_a_real_workbook() -> None:
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    sheet.title = "sources"
    sheet.append(["source", "currency", "carriage", "noted", "rate", "rate date", "least order"])
    sheet.append(["N", "GBP", "0: 1", datetime.datetime(2026, 2, 1), None, None, 10.0])  # noqa: DTZ001
    out = io.BytesIO()
    book.save(out)
    reading = read({
        "b.xlsx": out.getvalue(),
        "packs.csv": "source,pack,price,holds\nN,P,1,rifleman: 1\n",
    })  # fmt: skip
    assert not reading.findings
    source = reading.force.sources["N"]
    assert str(source.noted) == "2026-02-01"
    assert source.least_order == 1000


def test_formulas_are_never_run_and_errors_are_stops() -> None:
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    sheet.title = "stock"
    sheet.append(["figure", "painted"])
    sheet.append(["rifleman", "=1+1"])
    sheet.append(["officer", "#REF!"])
    sheet["B3"].data_type = "e"
    out = io.BytesIO()
    book.save(out)
    assert said(read({"b.xlsx": out.getvalue()})) == [
        ("cell-without-value", "stock!B2"),
        ("cell-without-value", "stock!B3"),
    ]


def test_times_are_text_and_blank_cells_nothing() -> None:
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    sheet.append([datetime.time(12, 30), " ", True, 0.5])
    sheet["D1"].number_format = "0%"
    out = io.BytesIO()
    book.save(out)
    ((first,), _) = read_workbook(out.getvalue(), file="b.xlsx")
    cells = first.rows[0].cells
    assert cells[1].value == "12:30:00"
    assert 2 not in cells
    assert cells[3].value is True
    assert cells[4].is_share


def test_merged_cells_are_said() -> None:
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    sheet.append(["a", "b"])
    sheet.merge_cells("A2:B3")
    out = io.BytesIO()
    book.save(out)
    assert codes(out.getvalue()) == ["merged-cells"]


def test_what_is_no_workbook() -> None:
    assert codes(b"a: 1") == ["not-a-spreadsheet"]
    empty = io.BytesIO()
    with zipfile.ZipFile(empty, "w") as packed:
        packed.writestr("x", "y")
    assert codes(empty.getvalue()) == ["not-a-spreadsheet"]
    assert codes(empty.getvalue(), "b.ods") == ["not-a-spreadsheet"]


@pytest.mark.parametrize(
    ("ending", "part"),
    [
        ("xlsx", "xl/workbook.xml"),
        ("xlsx", "xl/styles.xml"),
        ("xlsx", "xl/worksheets/sheet1.xml"),
        ("ods", "content.xml"),
        ("ods", "styles.xml"),
    ],
)
@pytest.mark.parametrize("torn", [b"", b"<half", b"<a:b/>"])
def test_a_damaged_part_of_a_file_is_no_whole_spreadsheet(
    ending: str, part: str, torn: bytes, capsys: pytest.CaptureFixture[str]
) -> None:
    page = Page(name="stock", rows=(("figure", "painted"), ("rifleman", "3")))
    data = {"xlsx": xlsx_bytes, "ods": ods_bytes}[ending]((page,))
    sheets, findings = read_workbook(with_part(data, part, torn=torn), file=f"b.{ending}")
    assert sheets == ()
    assert [found.code for found in findings] == ["not-a-spreadsheet"]
    assert capsys.readouterr().out == ""


@pytest.mark.parametrize(
    ("ending", "part"), [("xlsx", "xl/worksheets/sheet1.xml"), ("ods", "content.xml")]
)
def test_a_file_that_lacks_a_part_is_no_whole_spreadsheet(ending: str, part: str) -> None:
    page = Page(name="stock", rows=(("figure", "painted"), ("rifleman", "3")))
    data = {"xlsx": xlsx_bytes, "ods": ods_bytes}[ending]((page,))
    assert codes(with_part(data, part, torn=None), f"b.{ending}") == ["not-a-spreadsheet"]


def with_part(data: bytes, part: str, *, torn: bytes | None) -> bytes:
    """A zipped file with one part replaced, or left out."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as whole, zipfile.ZipFile(out, "w") as packed:
        for name in whole.namelist():
            if name != part:
                packed.writestr(name, whole.read(name))
            elif torn is not None:
                packed.writestr(name, torn)
    return out.getvalue()


def test_a_file_that_unpacks_to_very_much_is_refused_before_it_is_read() -> None:
    bomb = io.BytesIO()
    with zipfile.ZipFile(bomb, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("xl/workbook.xml", b"\0" * (65 * 1024 * 1024))
    assert len(bomb.getvalue()) < 200_000
    assert codes(bomb.getvalue()) == ["too-large"]


def test_a_sheet_that_fills_a_very_large_rectangle_is_refused() -> None:
    book = openpyxl.Workbook()
    book.worksheets[0].cell(row=100_000, column=100, value="x")
    out = io.BytesIO()
    book.save(out)
    assert codes(out.getvalue()) == ["too-large"]


def test_ods_without_its_library_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(workbook, "find_spec", lambda name: None if name == "odf" else sys)
    (found,) = read_workbook(xlsx({"stock": []}), file="b.ods")[1]
    assert found.code == "ods-not-installed"
    assert "paradestate[ods]" in found.hint


def ods(cells: list[list[dict[str, str]]], *, repeated: int = 1) -> bytes:
    from odf.opendocument import OpenDocumentSpreadsheet  # noqa: PLC0415 - an extra
    from odf.table import Table, TableCell, TableRow  # noqa: PLC0415
    from odf.text import P  # noqa: PLC0415

    document = OpenDocumentSpreadsheet()
    table = Table(name="stock")
    for row in cells:
        line = TableRow(numberrowsrepeated=repeated)
        for cell in row:
            text = cell.pop("text", "")
            made = TableCell(**cell)
            if text:
                made.addElement(P(text=text))
            line.addElement(made)
        table.addElement(line)
    document.spreadsheet.addElement(table)
    out = io.BytesIO()
    document.save(out)
    return out.getvalue()


def test_every_sort_of_cell_of_an_ods_file() -> None:
    data = ods([
        [
            {"valuetype": "string", "text": "figure"},
            {"valuetype": "float", "value": "3"},
            {"valuetype": "float", "value": "3.5"},
            {"valuetype": "percentage", "value": "0.1"},
            {"valuetype": "date", "datevalue": "2026-03-01T00:00:00"},
            {"valuetype": "boolean", "booleanvalue": "true"},
            {"numbercolumnsrepeated": "2"},
            {"valuetype": "string", "text": "after"},
        ],
        [],
    ], repeated=2)  # fmt: skip
    ((sheet,), findings) = read_workbook(data, file="b.ods")
    assert not findings
    assert sheet.name == "stock"
    (row,) = sheet.rows
    assert [cell.value for cell in row.cells.values()] == [
        "figure",
        3,
        3.5,
        0.1,
        datetime.date(2026, 3, 1),
        True,
        "after",
    ]
    assert row.cells[4].is_share
    assert row.cells[9].place.cell == "stock!I1"


def test_columns_and_rows_of_an_ods_file_are_bounded(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(workbook, "MOST_COLUMNS", 2)
    monkeypatch.setattr(workbook, "MOST_ROWS", 2)
    row = [{"valuetype": "string", "text": "x"} for _ in range(4)]
    data = ods([[dict(cell) for cell in row] for _ in range(5)])
    ((sheet,), _) = read_workbook(data, file="b.ods")
    assert [len(known.cells) for known in sheet.rows] == [2, 2]


def test_a_sheet_that_says_nothing_of_its_size_is_measured() -> None:
    book = openpyxl.Workbook()
    book.worksheets[0].cell(row=100_000, column=100, value="x")
    whole, out = io.BytesIO(), io.BytesIO()
    book.save(whole)
    with zipfile.ZipFile(whole) as packed, zipfile.ZipFile(out, "w") as anew:
        for name in packed.namelist():
            text = packed.read(name)
            anew.writestr(name, re.sub(rb"<dimension[^>]*/>", b"", text))
    assert codes(out.getvalue()) == ["too-large"]


def test_very_many_rows_are_counted_before_they_are_held(monkeypatch: pytest.MonkeyPatch) -> None:
    book, out, held = openpyxl.Workbook(), io.BytesIO(), list[bool]()
    for _ in range(1_001):
        book.worksheets[0].append(["x"])
    book.save(out)
    load = openpyxl.load_workbook

    def watched(data: io.BytesIO, *, read_only: bool = False, data_only: bool = False) -> object:
        held.append(not read_only)
        return load(data, read_only=read_only, data_only=data_only)

    monkeypatch.setattr("openpyxl.load_workbook", watched)
    monkeypatch.setattr("paradestate.text.spreadsheet.workbook.MOST_CELLS", 1_000)
    assert codes(out.getvalue()) == ["too-large"]
    assert held == [False]
