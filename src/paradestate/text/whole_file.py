"""Files read and written whole or not at all; the version that was there is kept.

locked -> still what was read -> written beside -> former version kept -> renamed into place

Time is given by the caller. What is killed on the way leaves the old file or the new one.
"""

import datetime
import os
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager, suppress
from pathlib import Path
from stat import S_IMODE
from typing import IO, TypeAlias

from paradestate.text.error import FileChangedError, FileError
from paradestate.text.folder_lock import locked, put_down
from paradestate.text.former import FORMER, free_name

Fill: TypeAlias = Callable[[IO[bytes]], object]
"""Writes what a file is to hold."""

ANYBODY_MAY_WRITE = 0o222

USUAL_MODE = 0o666
"""What everyone may do with a new file, less what this user's mask forbids."""


def read_whole(path: Path, *, most: int = -1) -> bytes:
    """What a file holds, or its first `most` bytes. Raises FileError where it can't be read."""
    try:
        with path.open("rb") as file:
            return file.read(most)
    except OSError as error:
        raise FileError(f"{path}: {error.strerror}. Nothing was read or written.") from error


def write_new(path: Path, data: bytes) -> None:
    """Writes a file where none is.

    Raises FileChangedError where one is there already, and FileError where the disk refuses.
    """
    with _in_words(path), locked(path.parent):
        _refuse_changed(path, data, seen=None)
        with _written_beside(_beside(path), data) as beside:
            _refuse_changed(path, data, seen=None)
            beside.replace(path)
        confirm(path)


def fill_new(path: Path, fill: Fill) -> None:
    """Writes a file where none is, too large to be held in memory. Raises FileError."""
    with _in_words(path), locked(path.parent):
        if path.exists():
            raise FileError(f"{path} is there already; nothing is overwritten.")
        with _filled_beside(_beside(path), fill) as beside:
            beside.replace(path)
        confirm(path)


def write_changed(path: Path, data: bytes, *, seen: bytes, at: datetime.datetime) -> Path:
    """Writes a file anew that held `seen` when it was read; returns where that is kept.

    Raises FileChangedError where the file holds something else by now, and FileError where the
    disk refuses; the file is what it was then.
    """
    path = path.resolve() if path.is_symlink() else path
    with _in_words(path), locked(path.parent):
        _refuse_changed(path, data, seen=seen)
        mode = S_IMODE(path.stat().st_mode)
        if not mode & ANYBODY_MAY_WRITE:
            raise FileError(
                f"{path}: the file is protected from writing. Nothing was written. Take the "
                "protection away, or change it in an editor."
            )
        with (
            _written_beside(_beside(path), data, mode=mode) as beside,
            _kept(path, seen, new=data, mode=mode, at=at) as former,
        ):
            _refuse_changed(path, data, seen=seen)
            beside.replace(path)
        confirm(path)
    return former


def write_over(path: Path, data: bytes, *, seen: bytes) -> None:
    """Writes a file anew that held `seen`, and keeps nothing of what it was.

    Raises FileChangedError where the file holds something else by now, and FileError where the
    disk refuses; the file is what it was then.
    """
    with _in_words(path), locked(path.parent):
        _refuse_changed(path, data, seen=seen)
        mode = S_IMODE(path.stat().st_mode)
        with _written_beside(_beside(path), data, mode=mode) as beside:
            _refuse_changed(path, data, seen=seen)
            beside.replace(path)
        confirm(path)


def confirm(path: Path) -> None:
    """Has the new name put down too. Raises FileError where the disk doesn't say that it is."""
    try:
        put_down(path.parent)
    except OSError as error:
        raise FileError(
            f"{path}: it is written, but the disk doesn't say that it is safe: {error.strerror}. "
            "Look at it again before you switch this computer off."
        ) from error


@contextmanager
def _in_words(path: Path) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        raise FileError(
            f"{error.filename or path}: {error.strerror}. Nothing was written: {path} is as it was."
        ) from error


def _refuse_changed(path: Path, data: bytes, *, seen: bytes | None) -> None:
    there = path.read_bytes() if path.exists() else None
    if there != seen:
        raise FileChangedError(path, mine=data, there=there)


def _beside(path: Path) -> Path:
    """The file that becomes `path`; of one name, so that the next writer clears it away."""
    return path.with_name(f".{path.name}.new")


def _written_beside(
    beside: Path, data: bytes, *, mode: int | None = None
) -> AbstractContextManager[Path]:
    return _filled_beside(beside, lambda file: file.write(data), mode=mode)


@contextmanager
def _filled_beside(beside: Path, fill: Fill, *, mode: int | None = None) -> Iterator[Path]:
    """A file beside, filled and safe on the disk; it is gone again where it isn't renamed."""
    try:
        beside.unlink(missing_ok=True)  # of a writer that was killed
        descriptor = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, USUAL_MODE)
        with os.fdopen(descriptor, "wb") as file:
            fill(file)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            beside.chmod(mode)
        yield beside
    finally:
        with suppress(OSError):
            beside.unlink(missing_ok=True)


@contextmanager
def _kept(
    path: Path, seen: bytes, *, new: bytes, mode: int, at: datetime.datetime
) -> Iterator[Path]:
    """The former version kept; it is gone again where the new one isn't put into place."""
    folder = path.parent / FORMER
    folder.mkdir(exist_ok=True)
    former = free_name(path, at=at)
    try:
        with _written_beside(_beside(folder / path.name), seen, mode=mode) as beside:
            beside.replace(former)
        put_down(folder)
        yield former
    except BaseException:
        with suppress(OSError):
            if path.read_bytes() != new:  # else the new one is in place, and this is what it was
                former.unlink(missing_ok=True)
                folder.rmdir()  # where nothing else is kept
        raise
