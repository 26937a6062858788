"""A collection: the force folders that share their holdings, and where their journal is.

A folder with a journal and force folders below it is a collection; a lone force folder is a
collection of one.
"""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from paradestate.store.address import Address, JournalFile, ServerJournal
from paradestate.text.error import FileError

JOURNAL = "journal.sqlite"
ELSEWHERE = "journal.toml"
"""Says that the journal is kept in a database, and in which."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Collection:
    """Where everything is."""

    root: Path
    forces: Mapping[str, Path]
    """Name to folder; the name is empty in a collection of one."""
    address: Address
    """Of the journal, whether or not there is one yet."""

    @property
    def has_journal(self) -> bool:
        """Whether there is a journal to be read."""
        return not isinstance(self.address, JournalFile) or self.address.path.exists()

    def force_of(self, folder: Path) -> str | None:
        """The name of a folder's force; None where the folder is that of the whole collection."""
        own = folder.resolve()
        return next((name for name, path in self.forces.items() if path.resolve() == own), None)


def collection_of(folder: Path) -> Collection:
    """The collection that a folder belongs to, or is.

    Raises FileError where the folder, or the file that says where the journal is, can't be read,
    and where both the folder and the one around it have a journal.
    """
    try:
        around = folder.resolve().parent
        if has_journal(around) and not holds_force(around):
            if has_journal(folder):
                raise FileError(
                    f"{folder} and {around} both have a journal, and only one can be right: move "
                    "one of them away."
                )
            # In the words of whoever named the folder, where that can be.
            root = folder.parent if folder.parent.resolve() == around else around
        else:
            root = folder
        return Collection(root=root, forces=dict(_forces(root)), address=_address(root))
    except OSError as error:
        raise FileError(f"{error.filename}: {error.strerror}") from error


def has_journal(folder: Path) -> bool:
    """Whether a folder is the root of a collection with a journal."""
    return any((folder / name).exists() for name in (JOURNAL, ELSEWHERE))


def holds_force(folder: Path) -> bool:
    """Whether a folder holds files of a force."""
    return any(path.suffix == ".yaml" for path in folder.iterdir() if path.is_file())


def _forces(root: Path) -> Iterator[tuple[str, Path]]:
    below = [path for path in sorted(root.iterdir()) if path.is_dir() and path.name[0] != "."]
    named = [(path.name, path) for path in below if holds_force(path)]
    yield from [("", root)] if holds_force(root) or not named else named


def _address(root: Path) -> Address:
    elsewhere = root / ELSEWHERE
    if not elsewhere.exists():
        return JournalFile(path=root / JOURNAL)
    try:
        said = tomllib.loads(elsewhere.read_text(encoding="utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise FileError(f"{elsewhere}: {error}") from error
    match said:
        case {"url": str(url), "collection": str(name), **rest} if not rest and name:
            return ServerJournal(url=url, collection=name)
        case _:
            raise FileError(
                f'{elsewhere}: it should hold two lines and no more: url = "..." and '
                'collection = "..."'
            )
