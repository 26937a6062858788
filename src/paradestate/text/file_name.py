"""Names that a file or folder may be given from outside, so that none leads anywhere else."""

import re
from pathlib import Path

from paradestate.text.error import FileError, NameRefusedError

ENDINGS = (".yaml", ".csv", ".xlsx", ".ods")
"""Of the files that a force folder is read from."""

MOST_LETTERS = 80

MOST_BYTES = 200
"""Of a name as UTF-8; a former version of it bears a longer one, and 255 is the most there is."""

SEPARATORS = frozenset('/\\:*?"<>|')
"""What parts paths, here or on another system, or can't be in a name there."""

TAKEN_BY_A_SYSTEM = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)(\..*)?", re.IGNORECASE)
"""Names that Windows keeps for devices."""


def name_refusal(name: str) -> str | None:
    """Why a file or folder can't be called so, in a sentence; None where it can."""
    if not name:
        return "A name is needed."
    if len(name) > MOST_LETTERS or len(name.encode("utf-8", "replace")) > MOST_BYTES:
        return f"The name is too long; {MOST_LETTERS} letters are the most."
    if name.startswith("."):
        return "A name can't begin with a point: such files are hidden, and never read."
    found = next((letter for letter in name if letter in SEPARATORS), None)
    if found is not None:
        return f"A name can't hold {found}: it would lead to another folder, or not be allowed."
    if not name.isprintable():
        return "A name can't hold letters that nobody sees."
    if name != name.strip() or name.endswith("."):
        return "A name can't begin or end with a space, or end with a point."
    if TAKEN_BY_A_SYSTEM.fullmatch(name):
        return f"'{name}' is kept for a device by some systems. Choose another name."
    return None


def file_name_refusal(name: str) -> str | None:
    """Why a file of a force folder can't be called so; None where it can."""
    refusal = name_refusal(name)
    if refusal is None and Path(name).suffix not in ENDINGS:
        return f"'{name}' isn't read: the name should end in {', '.join(ENDINGS)}."
    return refusal


def leads_outside(path: Path) -> bool:
    """Whether a path is a link that leads out of the folder that it stands in, or in a circle."""
    try:
        return path.resolve().parent != path.parent.resolve()
    except (OSError, RuntimeError):  # a circle: which of the two differs by the Python
        return True


def file_in(folder: Path, name: str) -> Path:
    """The path of a file of a folder, whether or not it is there.

    Raises NameRefusedError where the name can't be that of one, and FileError where it leads
    outside.
    """
    refusal = name_refusal(name)
    if refusal is not None:
        raise NameRefusedError(f"'{name}': {refusal} Nothing was read or written.")
    path = folder / name
    if leads_outside(path):
        raise FileError(
            f"'{name}' is a link that leads out of the force's folder. Nothing was read or "
            "written. Put the file itself into the folder, or change it where it is."
        )
    return path


def folder_name(title: str) -> str:
    """A name for the folder of a force with this title: its letters and digits, with hyphens."""
    words = re.findall(r"[^\W_]+", title.casefold())
    name = "-".join(words)[:MOST_LETTERS]
    while len(name.encode()) > MOST_BYTES:
        name = name[:-1]
    name = name.strip("-")
    return "force" if name_refusal(name) else name


def free_folder_name(title: str, *, taken: frozenset[str]) -> str:
    """As `folder_name`, with a number behind where that name is taken."""
    name, number = folder_name(title), 1
    plain = name
    while name in taken:
        number += 1
        name = f"{plain}-{number}"
    return name
