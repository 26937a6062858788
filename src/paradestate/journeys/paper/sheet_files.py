"""Papers written into a folder, whole or not at all.

A paper that was made here before is replaced, and what it was is kept; no other file is touched.
"""

import datetime
from dataclasses import dataclass
from pathlib import Path

from paradestate.journeys.paper.sheets import Sheet
from paradestate.journeys.spreadsheet import CannotWriteError
from paradestate.sheet.paper.typesetting import is_ours
from paradestate.text.error import FileChangedError, FileError
from paradestate.text.whole_file import read_whole, write_changed, write_new


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """A paper in its file."""

    sheet: Sheet
    path: Path
    former: Path | None
    """Where the one is kept that it replaces."""


def write_sheets(
    made: tuple[Sheet, ...], *, out: Path, at: datetime.datetime
) -> tuple[Written, ...]:
    """Writes the papers into a folder, which is made where it isn't there.

    A paper that was made here before is replaced and kept; no other file is touched. Raises
    CannotWriteError before anything is written, and FileError where the disk refuses.
    """
    paths = [(sheet, out / sheet.file_name) for sheet in made]
    for _, path in paths:
        leads_nowhere = path.is_symlink() and not path.exists()
        if leads_nowhere or (path.exists() and not is_ours(read_whole(path))):
            raise CannotWriteError(
                f"{path} is there already and isn't a paper of `sheets`; nothing is overwritten. "
                "Choose another folder."
            )
    try:
        out.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise FileError(f"{out}: {error.strerror}. Nothing was written.") from error
    return tuple(_written(sheet, path, at=at) for sheet, path in paths)


def _written(sheet: Sheet, path: Path, *, at: datetime.datetime) -> Written:
    data = sheet.printed.pdf
    former = None
    try:
        if not path.exists():
            write_new(path, data)
        elif (seen := read_whole(path)) != data:
            former = write_changed(path, data, seen=seen, at=at)
    except FileChangedError:
        raise CannotWriteError(
            f"{path} was written by another program meanwhile; nothing is overwritten."
        ) from None
    return Written(sheet=sheet, path=path, former=former)
