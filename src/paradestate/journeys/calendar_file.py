"""Writing the calendar of a force: milestones and game nights -> text -> file.

A calendar that was made here before is replaced, and what it was is kept; no other file is touched.
"""

import datetime
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.work.calendar_text import is_ours
from paradestate.journeys.forecast import Dates, calendar
from paradestate.journeys.spreadsheet import CannotWriteError
from paradestate.text.error import FileChangedError
from paradestate.text.whole_file import read_whole, write_changed, write_new

ENDING = ".ics"
EVENT = "BEGIN:VEVENT"


@dataclass(frozen=True, slots=True, kw_only=True)
class CalendarWritten:
    """The file, and how many days are marked in it."""

    file: Path
    days: int
    former: Path | None
    """Where the one is kept that it replaces."""


def refuse_other(file: Path) -> None:
    """Raises CannotWriteError where a calendar can't go into a file, before any work is done."""
    if file.suffix.lower() != ENDING:
        raise CannotWriteError(f"{file} should end in {ENDING}.")
    if file.exists() and not is_ours(read_whole(file).decode(errors="replace")):
        raise CannotWriteError(
            f"{file} is there already and isn't a calendar of `bench`; nothing is overwritten. "
            "Choose another name."
        )


def write_calendar(
    file: Path, found: Dates, *, force: str, made: datetime.datetime
) -> CalendarWritten | None:
    """Writes the calendar of a force of that title; None where there is no day to mark.

    Raises CannotWriteError, and FileError where the disk refuses.
    """
    text = calendar(found, force=force, made=made)
    days = text.count(f"{EVENT}\r\n")
    if not days:  # a calendar without any event isn't one (RFC 5545, 3.6)
        return None
    refuse_other(file)
    data = text.encode()
    former = None
    try:
        if file.exists():
            former = write_changed(file, data, seen=read_whole(file), at=made)
        else:
            write_new(file, data)
    except FileChangedError:
        raise CannotWriteError(
            f"{file} was written by another program meanwhile; nothing is overwritten."
        ) from None
    return CalendarWritten(file=file, days=days, former=former)
