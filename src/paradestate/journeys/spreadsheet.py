"""Writing stock, sources and supporting troops to a spreadsheet, or an empty form for the last.

folder -> checked -> pages -> bytes -> file, whole or not at all
"""

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path

from paradestate.journeys.check import Checked, checked
from paradestate.text.error import FileChangedError
from paradestate.text.spreadsheet.form import form_pages
from paradestate.text.spreadsheet.writing import (
    Page,
    csv_text,
    ods_bytes,
    pages_of,
    xlsx_bytes,
)
from paradestate.text.whole_file import write_new

ENDINGS = (".xlsx", ".ods", ".csv")


class CannotWriteError(Exception):
    """The file asked for can't be made as asked; says why and what would do."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """What was found, and the names of the sheets that were written."""

    checked: Checked
    sheets: tuple[str, ...]


def write_spreadsheet(
    folder: Path, file: Path, *, today: datetime.date, only: Sequence[str] = ()
) -> Written:
    """Writes the sheets. Raises CannotWriteError, or FileError where the disk refuses."""
    if file.exists():
        raise _taken(file)
    read = checked(folder, today=today)
    if read.is_stopped:
        return Written(checked=read, sheets=())
    pages = tuple(page for page in pages_of(read.force) if not only or page.name in only)
    _write(file, _bytes_of(file, pages))
    return Written(checked=read, sheets=tuple(page.name for page in pages))


def write_form(folder: Path, file: Path, *, today: datetime.date) -> Written:
    """Writes an empty form for supporting troops. Raises as above."""
    if file.exists():
        raise _taken(file)
    read = checked(folder, today=today)
    if read.is_stopped:
        return Written(checked=read, sheets=())
    pages = form_pages(read.force)
    written = pages if file.suffix != ".csv" else pages[:1]
    _write(file, _bytes_of(file, written))
    return Written(checked=read, sheets=tuple(page.name for page in written))


def _bytes_of(file: Path, pages: tuple[Page, ...]) -> bytes:
    if not pages:
        raise CannotWriteError("The force has nothing to write into these sheets.")
    match file.suffix:
        case ".xlsx":
            return xlsx_bytes(pages)
        case ".ods" if find_spec("odf") is not None:
            return ods_bytes(pages)
        case ".ods":
            raise CannotWriteError("Writing .ods needs: pip install 'paradestate[ods]'.")
        case ".csv":
            return csv_text(_page_for(file, pages)).encode("utf-8-sig")
        case _:
            raise CannotWriteError(f"{file} should end in {', '.join(ENDINGS)}.")


def _page_for(file: Path, pages: tuple[Page, ...]) -> Page:
    """The one sheet that a `.csv` file is called after."""
    named = [page for page in pages if page.name == file.stem]
    if not named:
        names = ", ".join(f"'{page.name}.csv'" for page in pages)
        raise CannotWriteError(f"A .csv file holds one sheet and is called after it: {names}.")
    return named[0]


def _write(file: Path, data: bytes) -> None:
    try:
        write_new(file, data)
    except FileChangedError:
        raise _taken(file) from None


def _taken(file: Path) -> CannotWriteError:
    return CannotWriteError(f"{file} is there already; nothing is overwritten.")
