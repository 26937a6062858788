"""Files of a force folder that are never opened, and why: what a folder may hold by accident.

A pipe would keep its reader waiting for ever, a file of gigabytes would fill the memory, and a
name that isn't UTF-8 can't be written into any page or journal.
"""

import os
from pathlib import Path
from stat import S_ISREG

from paradestate.core.finding import Finding, Level
from paradestate.core.log_slip import is_text
from paradestate.core.place import Place
from paradestate.text.decoding import MOST_BYTES


def printable(name: str) -> str:
    """A name of the file system as it can be written, with a sign for what isn't UTF-8."""
    return os.fsencode(name).decode(errors="replace")


def unfit(path: Path) -> Finding | None:
    """Why a file isn't opened, as a finding; None where it can be, or is a folder.

    Raises OSError where the disk refuses.
    """
    if not is_text(path.name):
        return _finding(
            path,
            code="not-utf-8",
            message="The name of this file isn't UTF-8.",
            hint="Give the file a name in UTF-8.",
        )
    try:
        state = path.stat()
    except OSError as error:
        if not path.is_symlink():
            raise
        return _finding(
            path,
            code="file-not-read",
            message=f"This is a link that can't be followed: {error.strerror}.",
            hint="Put the file itself here, or take the link away.",
        )
    if path.is_dir():
        return None
    if not S_ISREG(state.st_mode):
        return _finding(
            path,
            code="file-not-read",
            message="This is no file but a pipe, a socket or a device.",
            hint="Take it out of the folder.",
        )
    if state.st_size > MOST_BYTES:
        return _finding(
            path,
            code="too-large",
            message=f"The file has {state.st_size / 1024 / 1024:.1f} MB; 8 MB is the most read.",
            hint="Split the file, or take out what isn't force data.",
        )
    return None


def _finding(path: Path, *, code: str, message: str, hint: str) -> Finding:
    return Finding(
        level=Level.REMARK if code == "file-not-read" else Level.STOP,
        code=code,
        message=message,
        effect="Nothing of this file is read.",
        hint=hint,
        place=Place(file=printable(str(path)), line=1, column=1),
    )
