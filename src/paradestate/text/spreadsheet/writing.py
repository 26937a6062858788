"""A force's stock, sources and supporting troops as a spreadsheet; reading it gives the same."""

import csv
import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

import yaml

from paradestate.core.force import Force
from paradestate.text.codec import Plain
from paradestate.text.format.force import FORCE
from paradestate.text.spreadsheet.csv_sheet import guarded
from paradestate.text.spreadsheet.layout import ALLOWS, LAYOUTS, ROLL, SHARED_ROLL
from paradestate.text.writing import PlainDumper

NARROWEST, WIDEST = 12, 60
"""Letters that a column is wide at least and at most."""

WHOLE_DIGITS = 15
"""Digits that a spreadsheet's numbers hold exactly."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """A sheet to be written: its name, and rows of texts with the headings first."""

    name: str
    rows: tuple[tuple[str, ...], ...]
    blank: bool = False
    """Whether it is there to be filled in: what is typed stays text, and `1-3` is no date."""


def pages_of(force: Force) -> tuple[Page, ...]:
    """The sheets of a force; those without an entry are left out."""
    written = _mapping(FORCE.write(force))
    entries = {
        name: list(_entries(name, _mapping(written.get(layout.section, {}))))
        for name, layout in LAYOUTS.items()
    }
    return tuple(
        Page(name=name, rows=tuple(_rows(name, rows))) for name, rows in entries.items() if rows
    )


def _mapping(value: Plain) -> Mapping[str, Plain]:
    """What a record or section was written as, which is always a mapping."""
    return value if isinstance(value, dict) else {}


def _entries(name: str, section: Mapping[str, Plain]) -> Iterator[dict[str, str]]:
    for entry, words in section.items():
        if name == "packs":
            for pack, inner in _mapping(_mapping(words).get("packs", {})).items():
                yield {"source": entry, "pack": pack, **_texts(inner)}
        else:
            kept = {word: value for word, value in _mapping(words).items() if word != "packs"}
            yield {LAYOUTS[name].keys[0]: entry, **_texts(kept)}


def _texts(words: Plain) -> dict[str, str]:
    texts: dict[str, str] = {}
    for word, value in _mapping(words).items():
        if word == "availability":
            texts |= _roll_texts(_mapping(value))
        else:
            texts[word] = value if isinstance(value, str) else _flow(value)
    return texts


def _roll_texts(availability: Mapping[str, Plain]) -> dict[str, str]:
    texts = {word: str(availability[word]) for word in (ROLL, SHARED_ROLL) if word in availability}
    for band, number in _mapping(availability["allows"]).items():
        heading = f"{ALLOWS}{number}"
        texts[heading] = f"{texts[heading]}, {band}" if heading in texts else band
    return texts


def _flow(value: Plain) -> str:
    """A mapping or list as in YAML, without its braces."""
    text = yaml.dump(
        value,
        Dumper=PlainDumper,
        default_flow_style=True,
        allow_unicode=True,
        sort_keys=False,
        width=10**6,
    )
    return text.strip()[1:-1]


def _rows(name: str, entries: list[dict[str, str]]) -> Iterator[tuple[str, ...]]:
    used = dict.fromkeys(heading for entry in entries for heading in entry)
    known = [*LAYOUTS[name].keys, *LAYOUTS[name].words]
    headings = [heading for heading in known if heading in used]
    headings += [heading for heading in used if heading not in known]
    yield tuple(headings)
    for entry in entries:
        yield tuple(entry.get(heading, "") for heading in headings)


def csv_text(page: Page) -> str:
    """A sheet as the text of a `.csv` file."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    for row in page.rows:
        writer.writerow([guarded(text) for text in row])
    return out.getvalue()


def xlsx_bytes(pages: tuple[Page, ...]) -> bytes:
    """Sheets as the bytes of an `.xlsx` file; nothing in it is a formula."""
    import openpyxl  # noqa: PLC0415 - start-up time
    from openpyxl.utils import get_column_letter  # noqa: PLC0415

    book = openpyxl.Workbook()
    book.remove(book.worksheets[0])
    for page in pages:
        sheet = book.create_sheet(page.name)
        for row, column, text in _filled(page):
            cell = sheet.cell(row=row, column=column, value=number_or_text(text))
            cell.data_type = "s" if isinstance(cell.value, str) else cell.data_type
            cell.number_format = "@" if isinstance(cell.value, str) else "General"
        for column, wide in enumerate(_widths(page), start=1):
            form = sheet.column_dimensions[get_column_letter(column)]
            form.width = wide
            form.number_format = "@" if page.blank else "General"
        sheet.freeze_panes = "A2"
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _widths(page: Page) -> Iterator[int]:
    """The width of each column in letters, by its longest text and within bounds."""
    columns = max((len(row) for row in page.rows), default=0)
    for column in range(columns):
        longest = max(len(row[column]) for row in page.rows if len(row) > column)
        yield min(max(longest + 2, NARROWEST), WIDEST)


def _filled(page: Page) -> Iterator[tuple[int, int, str]]:
    """Row, column and text of every cell that isn't empty."""
    for number, row in enumerate(page.rows, start=1):
        for column, text in enumerate(row, start=1):
            if text:
                yield number, column, text


def number_or_text(text: str) -> int | float | str:
    """A number where the spreadsheet gives back the very same text, else the text."""
    try:
        exact = Decimal(text)
    except ArithmeticError:
        return text
    if len(text) > WHOLE_DIGITS or format(exact.normalize(), "f") != text:
        return text
    return int(text) if exact == exact.to_integral_value() else float(text)


def ods_bytes(pages: tuple[Page, ...]) -> bytes:
    """Sheets as the bytes of an `.ods` file, all cells text. Needs odfpy."""
    from odf.opendocument import OpenDocumentSpreadsheet  # noqa: PLC0415 - an extra
    from odf.table import Table, TableCell, TableRow  # noqa: PLC0415
    from odf.text import P  # noqa: PLC0415

    document = OpenDocumentSpreadsheet()
    for page in pages:
        table = Table(name=page.name)
        for row in page.rows:
            line = TableRow()
            for text in row:
                cell = TableCell(valuetype="string")
                cell.addElement(P(text=text))
                line.addElement(cell)
            table.addElement(line)
        document.spreadsheet.addElement(table)
    out = io.BytesIO()
    document.save(out)
    return out.getvalue()
