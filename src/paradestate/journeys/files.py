"""The files of a force folder: listed, read, tried, written and put back.

name -> inside the folder -> read as if written -> still what was seen -> written, former one kept

No path that a name leads to lies outside the folder. Nothing is ever lost: what is replaced is kept
as a former version, and who comes second is told and gets both texts.
"""

import datetime
import hashlib
import os
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import TypeAlias

from paradestate.core.finding import Finding, stops
from paradestate.journeys.check import Checked, checked
from paradestate.text.decoding import MOST_BYTES, decoded
from paradestate.text.error import FileChangedError, FileError, NameRefusedError
from paradestate.text.file_name import file_in, file_name_refusal, leads_outside
from paradestate.text.former import Former, former_versions
from paradestate.text.unfit_file import printable, unfit
from paradestate.text.whole_copy import whole_copy
from paradestate.text.whole_file import read_whole, write_changed, write_new

READ_ONLY = "newer-format"
"""What is found where files are of a format that this program knows too little of to write."""


class FileKind(StrEnum):
    """What a file of the folder is."""

    FORCE_DATA = "force data"
    SPREADSHEET = "spreadsheet"
    OTHER = "not read"
    OUTSIDE = "a link that leads outside"


KINDS = {
    ".yaml": FileKind.FORCE_DATA,
    ".csv": FileKind.SPREADSHEET,
    ".xlsx": FileKind.SPREADSHEET,
    ".ods": FileKind.SPREADSHEET,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceFile:
    """One file of a force folder."""

    name: str
    kind: FileKind
    size: int
    """In bytes."""
    former: tuple[Former, ...]
    """Its former versions, newest first."""
    mark: str
    """Tells this text of the file from any other; empty where it isn't read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FileRead:
    """What one file holds."""

    name: str
    data: bytes
    text: str | None
    """None where it isn't text; the findings say what it is instead."""
    findings: tuple[Finding, ...]
    former: tuple[Former, ...]
    whole: Former | None
    """The newest former version that reads without a finding in its form."""

    @property
    def mark(self) -> str:
        """Tells this text from any other."""
        return mark_of(self.data)


@dataclass(frozen=True, slots=True, kw_only=True)
class Saved:
    """What was written, and where what was there is kept; None where nothing was."""

    checked: Checked
    former: Path | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """Nothing was written: there are stops, and nobody said that it is to be written all the same.

    Where the folder is of a newer format, `is_read_only`: then nothing is written at all.
    """

    checked: Checked
    is_read_only: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Overtaken:
    """Nothing was written: somebody else has written the file since it was read."""

    mine: bytes
    there: bytes | None
    """What is there now; None where the file is gone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Unchanged:
    """Nothing was written: the file holds that already."""

    checked: Checked


Saving: TypeAlias = Saved | Held | Overtaken | Unchanged


@dataclass(frozen=True, slots=True, kw_only=True)
class Wording:
    """What a file is to hold, and what it held when that was decided."""

    name: str
    data: bytes
    mark: str
    """The mark of what was seen; empty where there was no file."""
    sure: bool = False
    """Whether it is to be written even with stops."""


def mark_of(data: bytes) -> str:
    """What tells a text from any other."""
    return hashlib.sha256(data).hexdigest()


def files_of(folder: Path) -> tuple[ForceFile, ...]:
    """The files of a force folder by name. Raises FileError where it can't be read."""
    try:
        there = sorted(folder.iterdir(), key=lambda path: os.fsencode(path.name))
        return tuple(_files(there))
    except OSError as error:
        raise FileError(f"{error.filename}: {error.strerror}") from error


def _files(paths: list[Path]) -> Iterator[ForceFile]:
    for path in paths:
        if path.name.startswith(".") or path.is_dir():
            continue
        kind = FileKind.OUTSIDE if leads_outside(path) else KINDS.get(path.suffix, FileKind.OTHER)
        if kind in {FileKind.FORCE_DATA, FileKind.SPREADSHEET} and unfit(path) is not None:
            kind = FileKind.OTHER
        is_read = kind in {FileKind.FORCE_DATA, FileKind.SPREADSHEET}
        yield ForceFile(
            name=printable(path.name),
            kind=kind,
            # of a link that leads outside, or nowhere, its own
            size=path.stat().st_size if is_read else path.lstat().st_size,
            former=former_versions(path) if is_read else (),
            mark=mark_of(path.read_bytes()) if is_read else "",
        )


def read_file(folder: Path, name: str) -> FileRead:
    """What a file holds. Raises FileError where it isn't there, or isn't one of the force."""
    path = _path(folder, name)
    data = read_whole(path)
    text, findings = decoded(data, file=str(path))
    return FileRead(
        name=name,
        data=data,
        text=text,
        findings=findings,
        former=former_versions(path),
        whole=whole_copy(path),
    )


def new_file(name: str) -> FileRead:
    """A file that isn't there yet."""
    return FileRead(name=name, data=b"", text="", findings=(), former=(), whole=None)


def tried(folder: Path, *, name: str, data: bytes, today: datetime.date) -> Checked:
    """The force as if the file held that. Raises FileError as `read_file` does."""
    return checked(folder, today=today, instead={str(_path(folder, name)): data})


def save_file(
    folder: Path, *, wording: Wording, today: datetime.date, at: datetime.datetime
) -> Saving:
    """Writes what a file is to hold, if it still holds what was seen.

    Raises FileError where the name isn't one of the force's, or the disk refuses.
    """
    path = _path(folder, wording.name)
    if len(wording.data) > MOST_BYTES:
        raise FileError(
            f"'{wording.name}' would have {len(wording.data)} bytes; 8 MB is the most that is "
            "read. Nothing was written: split it, or take out what isn't force data."
        )
    seen = read_whole(path) if path.exists() else None
    if (mark_of(seen) if seen is not None else "") != wording.mark:
        return Overtaken(mine=wording.data, there=seen)
    read = tried(folder, name=wording.name, data=wording.data, today=today)
    if seen == wording.data:
        return Unchanged(checked=read)
    if any(found.code == READ_ONLY for found in read.findings):
        return Held(checked=read, is_read_only=True)
    if stops(read.findings) and not wording.sure:
        return Held(checked=read)
    return _written(path, wording.data, seen=seen, at=at, read=read)


def _written(
    path: Path, data: bytes, *, seen: bytes | None, at: datetime.datetime, read: Checked
) -> Saving:
    try:
        if seen is None:
            write_new(path, data)
            return Saved(checked=read, former=None)
        return Saved(checked=read, former=write_changed(path, data, seen=seen, at=at))
    except FileChangedError as error:
        return Overtaken(mine=data, there=error.there)


def former_file(folder: Path, *, name: str, version: str) -> bytes:
    """What a former version of a file held. Raises FileError where there is none of that name."""
    path = _path(folder, name)
    for former in former_versions(path):
        if former.path.name == version and not leads_outside(former.path):
            return read_whole(former.path)
    raise FileError(f"No former version '{version}' of '{name}' is kept. Nothing was written.")


def _path(folder: Path, name: str) -> Path:
    """The path of a file that a force may have."""
    path = file_in(folder, name)
    refusal = file_name_refusal(name)
    if refusal is not None:
        raise NameRefusedError(f"{refusal} Nothing was read or written.")
    found = unfit(path) if os.path.lexists(path) else None
    if found is not None:
        raise FileError(f"'{name}': {found.message} Nothing was read or written. {found.hint}")
    return path
