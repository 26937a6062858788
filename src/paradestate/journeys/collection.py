"""A collection: the force folders that share their holdings, and where their journal is.

A folder with a journal and force folders below it is a collection; a lone force folder is a
collection of one.
"""

import os
import tomllib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.place import Place
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
        return has_journal(self.root)

    @property
    def place(self) -> Place:
        """Where findings about the journal as a whole stand."""
        return Place(file=str(self.address), line=1, column=1)

    def force_of(self, folder: Path) -> str | None:
        """The name of a folder's force; None where the folder is that of the whole collection.

        Raises FileError where it is neither.
        """
        own = folder.resolve()
        for name, path in self.forces.items():
            if path.resolve() == own:
                return name
        if own == self.root.resolve():
            return None
        names = ", ".join(self.forces)
        raise FileError(f"{folder} holds no force of {self.root}; those are: {names}.")


def collection_of(folder: Path) -> Collection:
    """The collection that a folder belongs to, or is.

    Raises FileError where the folder, or the file that says where the journal is, can't be read,
    and where both the folder and the one around it have a journal.
    """
    try:
        # As it was named: a force may be a link to a folder elsewhere.
        around = folder.absolute().parent
        if has_journal(around) and not holds_force(around):
            if has_journal(folder):
                raise _two_journals(around, (folder,))
            root = folder.parent if folder.parent.absolute() == around else around
        else:
            root = folder
        forces = dict(_forces(root))
        own = [path for name, path in forces.items() if name and has_journal(path)]
        if own:
            raise _two_journals(root, own)
        return Collection(root=root, forces=forces, address=_address(root))
    except OSError as error:
        raise FileError(f"{error.filename}: {error.strerror}") from error


def _two_journals(root: Path, forces: Iterable[Path]) -> FileError:
    return FileError(
        f"{', '.join(map(str, forces))}: this force has a journal of its own, and can't share the "
        f"one of {root}. Nothing was read or written. Archive the force (paradestate archive), "
        f"then move its {JOURNAL} away and log in {root} what it holds; or keep the force in "
        "another folder."
    )


def has_journal(folder: Path) -> bool:
    """Whether a folder has a journal, even if it can't be read just now."""
    names = (JOURNAL, f"{JOURNAL}-wal", ELSEWHERE)
    return any(os.path.lexists(folder / name) for name in names)


def holds_force(folder: Path) -> bool:
    """Whether a folder holds files of a force."""
    return any(
        path.suffix == ".yaml" and path.name[0] != "." and path.is_file()
        for path in folder.iterdir()
    )


def _forces(root: Path) -> Iterator[tuple[str, Path]]:
    named = forces_below(root)
    yield from [("", root)] if holds_force(root) or not named else named.items()


def forces_below(root: Path) -> Mapping[str, Path]:
    """The folders directly below that hold a force, by name; hidden ones are passed over."""
    below = [path for path in sorted(root.iterdir()) if path.is_dir() and path.name[0] != "."]
    return {path.name: path for path in below if holds_force(path)}


def _address(root: Path) -> Address:
    elsewhere, here = root / ELSEWHERE, JournalFile(path=root / JOURNAL)
    if not os.path.lexists(elsewhere):
        return here
    if not elsewhere.is_file():
        raise FileError(f"{elsewhere}: this isn't a file, or leads nowhere. Put it right.")
    if os.path.lexists(here.path):
        raise FileError(
            f"{here.path} and {elsewhere} say two things of where the journal is: move one of them "
            "away. To bring a journal to a server, archive the collection first."
        )
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
