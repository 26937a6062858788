"""Secrets of rolls to come, where the opponent can't read them and no crash loses them.

Each lies in a file of its own that only this user may read, beside the keys and the paired phones:
in no journal, page or archive until it is told.
"""

from pathlib import Path

from paradestate.text.private_file import read_private, state_folder, write_private

EXPOSED = (
    "Nothing is rolled with it, since somebody may know it. Strike the binding out with a reason; "
    "or look at it, and if it is as it should be:"
)
UNREAD = "Nothing is rolled. See that the file can be read."


def keep_secret(commitment: str, secret: bytes) -> None:
    """Keeps the secret of a commitment, safe on disk. Raises FileError."""
    write_private(_file(commitment), secret, without="the machine isn't bound")


def kept_secret(commitment: str) -> bytes | None:
    """The secret of a commitment; None where this user has none here. Raises FileError."""
    return read_private(_file(commitment), if_exposed=EXPOSED, if_unread=UNREAD)


def forget_secret(commitment: str) -> None:
    """Takes a secret away that is told."""
    _file(commitment).unlink(missing_ok=True)


def _file(commitment: str) -> Path:
    return state_folder() / "rolls" / commitment
