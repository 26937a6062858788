"""Folders made whole or not at all: beside, then renamed into place."""

import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from paradestate.text.error import FileError, FolderTakenError
from paradestate.text.whole_file import confirm

USUAL_MODE = 0o755


def refuse_taken(folder: Path) -> None:
    """Raises FolderTakenError where `folder` is a file, or holds something."""
    if folder.is_file() or (folder.is_dir() and any(folder.iterdir())):
        raise FolderTakenError(folder)


@contextmanager
def new_folder(folder: Path) -> Iterator[Path]:
    """A folder beside that takes the place of `folder` when the block has filled it.

    Raises FolderTakenError, and FileError where the disk refuses; then there is no folder.
    """
    refuse_taken(folder)
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        beside = Path(tempfile.mkdtemp(prefix=".new-", dir=folder.parent))
        try:
            yield beside
            beside.chmod(USUAL_MODE)
            beside.replace(folder)
        except BaseException:
            shutil.rmtree(beside, ignore_errors=True)
            raise
    except OSError as error:
        raise FileError(f"{error.filename or folder}: {error.strerror}") from error
    confirm(folder)
