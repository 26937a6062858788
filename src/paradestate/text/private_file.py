"""Files that only this user may read: keys, what a device is known by, secrets of rolls."""

import os
from pathlib import Path
from stat import S_IMODE

from paradestate.text.error import FileError
from paradestate.text.folder_lock import put_down

OWNER_ONLY = 0o600
OWNER_FOLDER = 0o700
OTHERS = 0o077


class ExposedError(FileError):
    """Others than this user are allowed to read or write the file."""


def state_folder() -> Path:
    """Where this user's programs keep what isn't part of any force."""
    named = os.environ.get("XDG_STATE_HOME", "")
    # a relative one is to be ignored: XDG Base Directory Specification
    place = Path(named) if Path(named).is_absolute() else Path.home() / ".local" / "state"
    return place / "paradestate"


NO_PHONE = "no phone can be let in"


def write_private(path: Path, data: bytes, *, without: str = NO_PHONE) -> None:
    """Writes a file whole or not at all, readable by nobody else at any moment.

    Where a link leads to it, what it leads to is written: else the old one would be left there.
    Raises FileError where the disk refuses; `without` says what can't be done then.
    """
    try:
        path = path.resolve() if path.is_symlink() else path
        beside = path.with_name(f".{path.name}.new")
        path.parent.mkdir(parents=True, exist_ok=True, mode=OWNER_FOLDER)
        beside.unlink(missing_ok=True)  # of a writer that was killed
        descriptor = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, OWNER_ONLY)
        with os.fdopen(descriptor, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        beside.replace(path)
        put_down(path.parent)
    except OSError as error:
        raise FileError(
            f"{path}: {error.strerror}. Nothing was written, so {without}. "
            "See that the folder can be written to, or name another in XDG_STATE_HOME."
        ) from error


PAIR_AGAIN = (
    "No phone is let in. Take the file away, then pair each phone again; or look at it, and if it "
    "is as it should be:"
)
MADE_ANEW = "No phone is let in. See that the file can be read, or take it away: it is made anew."


def read_private(
    path: Path, *, if_exposed: str = PAIR_AGAIN, if_unread: str = MADE_ANEW
) -> bytes | None:
    """What the file holds; None where it isn't there.

    Raises ExposedError where others may read or write it, and FileError where the disk refuses;
    the words say what that does, and what puts it right.
    """
    try:
        if os.name == "posix" and S_IMODE(path.stat().st_mode) & OTHERS:
            raise ExposedError(
                f"{path}: others than you are allowed to read or write this file. "
                f"{if_exposed} chmod 600 {path}"
            )
        return path.read_bytes()
    except FileNotFoundError:
        return None
    except OSError as error:
        raise FileError(f"{path}: {error.strerror}. {if_unread}") from error
