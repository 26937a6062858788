"""What is held as a spreadsheet, and a spreadsheet as a count of what is held.

holdings -> sheet -> bytes; bytes -> sheet -> numbers -> what each was and becomes
"""

import datetime
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path

from paradestate.core.finding import Finding, Level, stops
from paradestate.core.holdings import Staged, all_stages
from paradestate.core.log_request import LogRequest
from paradestate.core.place import Place
from paradestate.core.stock_take import (
    StockChange,
    changed_since,
    left_open,
    not_counted,
    stock_changes,
)
from paradestate.journeys.history import history
from paradestate.journeys.holdings import HeldCollection, holdings
from paradestate.journeys.log import Logged, log
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.spreadsheet import CannotWriteError
from paradestate.text.spreadsheet.stock import ENDINGS, read_stock, stock_page
from paradestate.text.spreadsheet.writing import csv_text, ods_bytes, xlsx_bytes

MOST_BYTES = 5 * 1024 * 1024
"""A spreadsheet that is sent may have so many."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """What a spreadsheet would change; nothing is written yet."""

    findings: tuple[Finding, ...]
    changes: tuple[StockChange, ...] = ()
    agreeing: int = 0
    """Numbers of the sheet that are as held."""

    @property
    def is_stopped(self) -> bool:
        """Whether something in it has to be put right first."""
        return bool(stops(self.findings))


def stock_sheet(
    folder: Path, *, today: datetime.date, ending: str, memory: Memory = NOTHING
) -> bytes | None:
    """All loose figures held, as the bytes of a spreadsheet; None where they aren't known.

    Raises CannotWriteError for an ending that can't be written, StoreError and FileError.
    """
    known = holdings(folder, today=today, memory=memory)
    if known.state is None or known.is_stopped:
        return None
    kinds, stages = _rows_and_columns(known, folder)
    page = stock_page(known.state.held.figures, kinds=kinds, stages=stages)
    match ending:
        case ".xlsx":
            return xlsx_bytes((page,))
        case ".ods" if find_spec("odf") is not None:
            return ods_bytes((page,))
        case ".ods":
            raise CannotWriteError("Writing .ods needs: pip install 'paradestate[ods]'.")
        case ".csv":
            return csv_text(page).encode("utf-8-sig")
        case _:
            raise CannotWriteError(f"'{ending}' should be one of {', '.join(ENDINGS)}.")


def _rows_and_columns(
    known: HeldCollection, folder: Path
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The kinds and stages of the force, then those that are held beside."""
    force = known.forces[known.collection.force_of(folder) or ""].force
    held: Staged = {} if known.state is None else known.state.held.figures
    kinds = tuple(dict.fromkeys((*force.figures, *held)))
    return kinds, all_stages(held, usual=force.bench.stages)


def proposed(
    folder: Path, *, today: datetime.date, data: bytes, file: str, memory: Memory = NOTHING
) -> Proposal:
    """What the numbers of a spreadsheet would change. Raises StoreError and FileError."""
    if len(data) > MOST_BYTES:
        return Proposal(findings=(_too_large(data, file=file),))
    known = holdings(folder, today=today, memory=memory)
    if known.state is None or known.is_stopped:
        return Proposal(findings=known.findings)
    kinds, stages = _rows_and_columns(known, folder)
    reading = read_stock(data, file=file, kinds=kinds, stages=stages)
    held = known.state.held.figures
    changes = stock_changes(held, reading.staged)
    said = sum(len(each) for each in reading.staged.values())
    is_open = tuple(left_open(each) for each in not_counted(held, reading.staged))
    return Proposal(
        findings=(*reading.findings, *is_open),
        changes=changes,
        agreeing=said - len(changes),
    )


def accepted(
    folder: Path,
    *,
    today: datetime.date,
    request: LogRequest,
    was: Staged,
    memory: Memory = NOTHING,
) -> Logged:
    """Writes a count that was looked at, unless what it says `was` held isn't any more.

    Raises StoreError and FileError.
    """
    sent_before = history(folder, today=today, last=1, about=request.id, memory=memory).number
    known = holdings(folder, today=today, memory=memory)
    if known.state is not None and not sent_before:
        stopped = tuple(changed_since(known.state.held.figures, was))
        if stopped:
            return Logged(findings=stopped, texts=known.texts)
    return log(folder, today=today, request=request, memory=memory)


def _too_large(data: bytes, *, file: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code="too-large",
        message=f"The file has {len(data) / 1024 / 1024:.1f} MB; 5 MB is the most taken.",
        effect="Nothing of this file is read.",
        hint="Send the sheet of what is held alone, without pictures.",
        place=Place(file=file, line=1, column=1),
    )
