"""Spreadsheets that tests are made of."""

import io
from collections.abc import Mapping, Sequence

import openpyxl

from paradestate.text.folder import Reading, read_files

HEAD = """\
format: 1
title: T
figures: {rifleman: {}, officer: {}}
stands: {rifle: {base: none, figures: {rifleman: 4, officer: 1}}, gun: {base: none}}
formations: {top: {parts: {rifle: 2, gun: 1}}}
raise: {formation: top}
"""

Rows = Sequence[Sequence[object]]


def xlsx(sheets: Mapping[str, Rows]) -> bytes:
    """A workbook with these sheets and rows."""
    book = openpyxl.Workbook()
    book.remove(book.worksheets[0])
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(list(row))
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def read(files: Mapping[str, bytes | str], *, head: str = HEAD) -> Reading:
    """A small force with spreadsheets beside it."""
    data = {name: text.encode() if isinstance(text, str) else text for name, text in files.items()}
    return read_files({"a.yaml": head.encode(), **data})


def said(reading: Reading) -> list[tuple[str, str]]:
    """Code and cell of every finding."""
    return [(found.code, found.place.cell) for found in reading.findings]
