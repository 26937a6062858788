"""The world failing while files are read or written, and changes that can't be made.

Exception
FileError            a file or folder can't be read or written; says which and why
  FileChangedError   the file isn't any more what it was when it was read; holds both texts
  NameRefusedError   no file or folder may be called so; says why
  FolderTakenError   a folder is there already and holds something
EditError            a change can't be made so that everything else in the file stays
"""

from pathlib import Path


class FileError(Exception):
    """A file or folder can't be read or written."""


class FileChangedError(FileError):
    """Another program has written the file since it was read; nothing was written."""

    def __init__(self, path: Path, *, mine: bytes, there: bytes | None) -> None:
        state = "has been taken away" if there is None else "has been written by another program"
        super().__init__(
            f"{path}: the file {state} since it was read. Nothing was written; "
            "read it again and make the change anew."
        )
        self.path = path
        self.mine = mine
        """What was to be written."""
        self.there = there
        """What is there now; None where the file is gone."""


class NameRefusedError(FileError):
    """No file or folder may be called so, or none of that name is read; nothing was done."""


class FolderTakenError(FileError):
    """A folder that is to be made is there already and holds something."""

    def __init__(self, folder: Path) -> None:
        super().__init__(f"{folder} is there already and holds something; nothing is overwritten.")


class EditError(Exception):
    """A change can't be made so that everything else in the file stays; nothing was changed."""
