"""Writing the calendar of a force: milestones and game nights -> text -> file.

A calendar that was made here before is replaced, and what it was is kept, as of every file: someone
may have added to it. One that says the same already is left alone, so that a calendar written every
evening leaves a former version only where a date has moved. No other file is touched.
"""

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.work.calendar_text import is_ours, says_the_same
from paradestate.core.work.ladder import Reached
from paradestate.journeys.bench.forecast import Dates, calendar
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
    is_new: bool
    """Whether it was written; else it is there already and says the same."""


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
    file: Path,
    found: Dates,
    *,
    force: str,
    made: datetime.datetime,
    repairs: Sequence[Reached] = (),
) -> CalendarWritten | None:
    """Writes the calendar of a force of that title; None where there is no day to mark.

    Raises CannotWriteError, and FileError where the disk refuses.
    """
    text = calendar(found, force=force, made=made, repairs=repairs)
    days = text.count(f"{EVENT}\r\n")
    if not days:  # a calendar without any event isn't one (RFC 5545, 3.6)
        return None
    refuse_other(file)
    seen = read_whole(file) if file.exists() else None
    if seen is not None and says_the_same(seen.decode(errors="replace"), text):
        return CalendarWritten(file=file, days=days, former=None, is_new=False)
    former = None
    try:
        if seen is None:
            write_new(file, text.encode())
        else:
            former = write_changed(file, text.encode(), seen=seen, at=made)
    except FileChangedError:
        raise CannotWriteError(
            f"{file} was written by another program meanwhile; nothing is overwritten."
        ) from None
    return CalendarWritten(file=file, days=days, former=former, is_new=True)
