"""One writer at a time in a folder; the lock dies with its process and leaves nothing behind.

On Windows, where folders can't be locked, two writers are only told apart by what they have read.
"""

import errno
import os
import time
from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from importlib.util import find_spec
from pathlib import Path

from paradestate.text.error import FileError

FCNTL = import_module("fcntl") if find_spec("fcntl") else None

TRIES = 200
PAUSE_SECONDS = 0.05

NO_SYNC = frozenset({errno.EINVAL, errno.ENOTSUP})
"""What a disk answers that can't be asked to put the names of a folder down."""


@contextmanager
def locked(folder: Path, *, tries: int = TRIES) -> Iterator[None]:
    """Holds the lock of a folder. Raises FileError where another writer doesn't let go of it."""
    if FCNTL is None:
        yield
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        _wait_for(descriptor, folder, tries=tries)
        yield
    finally:
        os.close(descriptor)


def _wait_for(descriptor: int, folder: Path, *, tries: int) -> None:
    assert FCNTL is not None  # noqa: S101 - `locked` has seen to it
    for _ in range(tries):
        try:
            FCNTL.flock(descriptor, FCNTL.LOCK_EX | FCNTL.LOCK_NB)
        except BlockingIOError:
            time.sleep(PAUSE_SECONDS)
        else:
            return
    raise FileError(
        f"{folder}: another program is writing in this folder and hasn't finished. "
        "Nothing was written; try again."
    )


def put_down(folder: Path) -> None:
    """Has the names in a folder written to the disk, so that a power cut can't undo a renaming."""
    if FCNTL is None:
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    except OSError as error:
        if error.errno not in NO_SYNC:
            raise
    finally:
        os.close(descriptor)
