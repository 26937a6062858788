"""The sheet of what places are worth: a row for each weapon section with each host."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.finding import Finding, Level
from paradestate.core.outline import decimal_text
from paradestate.core.place import Place
from paradestate.text.number import read_decimal
from paradestate.text.slip import NOT_USED, Slip
from paradestate.text.spelling import nearest_hint, tidy
from paradestate.text.spreadsheet.cell import Cell, Row, Sheet, Use, cell_text
from paradestate.text.spreadsheet.csv_sheet import read_csv
from paradestate.text.spreadsheet.section import unknown_column, without_column, without_name
from paradestate.text.spreadsheet.writing import Page

SECTION, HOST, WORTH = "section", "host", "worth"
COLUMNS = (SECTION, HOST, WORTH)

_KIND = re.compile(r"(?P<entry>.+?)(?:\([^()]*\))?(?: \d+)?")
"""The entry that the name of a section begins with."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownPlaces:
    """What the rows of the sheet may name."""

    places: Mapping[str, Sequence[str]]
    """Section to the places that are open to it."""
    hosts: Sequence[str]
    """All hosts, whatever is attached to them."""
    entries: Sequence[str]
    """All entries that may be attached, in this plan or not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceWorths:
    """What the sheet says; empty cells say nothing."""

    worths: Mapping[tuple[str, str], Fraction]
    findings: tuple[Finding, ...]


def worth_page(rows: Sequence[tuple[str, str, Fraction]]) -> Page:
    """Every section with every place that is open to it, and what that is worth now."""
    written = ((section, host, decimal_text(worth)) for section, host, worth in rows)
    return Page(name=WORTH, rows=(COLUMNS, *written))


def read_place_worths(data: bytes, *, file: str, known: KnownPlaces) -> PlaceWorths:
    """The worths of a `.csv` file."""
    sheets, findings = read_csv(data, file=file)
    reader = _Reader(known)
    for sheet in sheets:
        reader.read(sheet)
    return PlaceWorths(worths=reader.worths, findings=(*findings, *reader.findings))


class _Reader:
    """Takes in the rows of the sheet."""

    def __init__(self, known: KnownPlaces) -> None:
        self._known = known
        self._rows: dict[tuple[str, str], Place] = {}
        self.worths: dict[tuple[str, str], Fraction] = {}
        self.findings: list[Finding] = []

    def read(self, sheet: Sheet) -> None:
        """Adds all rows under the headings."""
        if not sheet.rows:
            self.findings.append(without_column(sheet.place, SECTION))
            return
        heading, *rows = sheet.rows
        headings = dict(self._headings(heading))
        missing = [column for column in COLUMNS if column not in headings.values()]
        if missing:
            self.findings.append(without_column(heading.place, missing[0]))
            return
        for row in rows:
            self._row(row, headings=headings)

    def _headings(self, row: Row) -> Iterator[tuple[int, str]]:
        for column, cell in row.cells.items():
            text = str(cell.value).strip()
            if text in COLUMNS:
                yield column, text
            else:
                self.findings.append(unknown_column(cell, text, known=COLUMNS))

    def _row(self, row: Row, *, headings: Mapping[int, str]) -> None:
        cells = {headings[column]: cell for column, cell in row.cells.items() if column in headings}
        for column in (SECTION, HOST) if cells else ():
            if column not in cells:
                self.findings.append(without_name(row.place, column))
                return
        if WORTH not in cells:
            return
        pair = self._pair(cells)
        worth = self._worth(cells[WORTH])
        if pair is None or worth is None:
            return
        if pair in self._rows:
            self.findings.append(_pair_twice(cells[HOST], pair, first=self._rows[pair]))
            return
        self._rows[pair] = cells[HOST].place
        self.worths[pair] = worth

    def _pair(self, cells: Mapping[str, Cell]) -> tuple[str, str] | None:
        """The section and the place that a row is about, if it is open to it."""
        section, host = _text(cells[SECTION]), _text(cells[HOST])
        if section not in self._known.places:
            self.findings.append(self._no_section(cells[SECTION], section))
            return None
        open_to_it = self._known.places[section]
        if host not in open_to_it:
            other = host in self._known.hosts
            self.findings.append(
                _no_host(cells[HOST], host, of=section, places=open_to_it, other=other)
            )
            return None
        return section, host

    def _worth(self, cell: Cell) -> Fraction | None:
        text, found = cell_text(cell, use=Use.NUMBER)
        if found is not None:
            self.findings.append(found)
        worth = read_decimal(str(text))  # a cell of such a file is always text
        if isinstance(worth, Slip):
            self.findings.append(
                _stop(cell, code=worth.code, message=worth.message, hint=worth.hint)
            )
            return None
        return worth

    def _no_section(self, cell: Cell, name: str) -> Finding:
        """A section of an entry that isn't taken now says nothing; any other is a slip."""
        kind = _KIND.fullmatch(name)
        if kind is not None and kind["entry"] in self._known.entries:
            return Finding(
                level=Level.REMARK,
                code="section-not-taken",
                message=f"{cell.place.cell}: '{name}' isn't in this plan.",
                effect="What its places are worth isn't used.",
                hint="Leave it for another plan, or take the row out.",
                place=cell.place,
            )
        return _stop(
            cell,
            code="unknown-section",
            message=f"no section of this plan is called '{name}'.",
            hint=nearest_hint(name, self._known.places),
        )


def _text(cell: Cell) -> str:
    return tidy(str(cell.value))


def _no_host(cell: Cell, name: str, *, of: str, places: Sequence[str], other: bool) -> Finding:
    """A host that isn't there, or isn't one for this section."""
    message = f"{of} can't be attached to '{name}'." if other else f"no host is called '{name}'."
    return _stop(cell, code="unknown-host", message=message, hint=nearest_hint(name, places))


def _pair_twice(cell: Cell, pair: tuple[str, str], *, first: Place) -> Finding:
    section, host = pair
    return Finding(
        level=Level.STOP,
        code="pair-twice",
        message=f"{section} with {host} has two worths ({first.cell} and {cell.place.cell}).",
        effect=NOT_USED,
        hint="Keep only one of the rows.",
        place=cell.place,
        related=(first,),
    )


def _stop(cell: Cell, *, code: str, message: str, hint: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=f"{cell.place.cell}: {message}",
        effect=NOT_USED,
        hint=hint,
        place=cell.place,
    )
