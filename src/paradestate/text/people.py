"""Who borrows: codes with names and contacts, in a file that only this user may read.

It lies with the keys and secrets of this machine, in no folder of a force, and no version of it is
kept: what is taken out of it is gone. A code is drawn by chance, so that a folder that comes from
another machine names nobody here.
"""

import json
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TypeAlias

from paradestate.core.club.name_in_text import is_name
from paradestate.text.error import FileError
from paradestate.text.folder_lock import locked
from paradestate.text.private_file import OWNER_FOLDER, read_private, state_folder, write_private

FOLDER, FILE = "club", "people.json"
LETTERS = "23456789abcdefghjkmnpqrstuvwxyz"
"""Without those that are taken for each other when they are read aloud or written by hand."""
CODE_LENGTH = 5
"""31 to the power of 5: some 28 million."""
CODE = re.compile(rf"borrower [{LETTERS}]{{{CODE_LENGTH}}}")
EXPOSED = "Nobody is named until you have looked at it; if it is as it should be:"
UNREAD = "Nobody is named. See that the file can be read."
UNWRITTEN = "no name is kept or erased"

Draw: TypeAlias = Callable[[int], int]
"""A number from nought up to, and without, the one that is given, drawn by chance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """Somebody who borrows."""

    code: str
    """What stands for the name everywhere else."""
    name: str
    contact: str = ""

    def is_called(self, name: str) -> bool:
        """Whether that is the name or the code, in letters of either case, however accented."""
        return is_name(self.name, name) or is_name(self.code, name)


def new_code(draw: Draw, *, taken: Iterable[str]) -> str:
    """A code that nobody has here, such as `borrower 7f3k2`."""
    known = frozenset(taken)
    while True:
        code = "borrower " + "".join(LETTERS[draw(len(LETTERS))] for _ in range(CODE_LENGTH))
        if code not in known:
            return code


def people() -> tuple[Person, ...]:
    """All who are known on this machine. Raises FileError."""
    path = people_file()
    kept = read_private(path, if_exposed=EXPOSED, if_unread=UNREAD)
    if kept is None:
        return ()
    try:
        return tuple(map(_person, json.loads(kept)))
    except (ValueError, TypeError, KeyError, RecursionError) as error:
        raise FileError(
            f"{path}: the list of who borrows can't be understood. Nobody is named, and no name is "
            "kept or erased. Mend it in an editor, or take it away: then codes name nobody."
        ) from error


def keep_person(person: Person) -> None:
    """Keeps somebody, in place of what was kept of the same code. Raises FileError."""
    _change(lambda known: (*(each for each in known if each.code != person.code), person))


def forget_person(code: str) -> None:
    """Takes somebody out, with no copy left in this file or beside it. Raises FileError."""
    _change(lambda known: tuple(each for each in known if each.code != code))


def people_file() -> Path:
    """Where they are kept."""
    return state_folder() / FOLDER / FILE


def _change(change: Callable[[tuple[Person, ...]], tuple[Person, ...]]) -> None:
    path = people_file()
    path.parent.mkdir(parents=True, exist_ok=True, mode=OWNER_FOLDER)
    with locked(path.parent):
        rows = [_row(each) for each in change(people())]
        data = json.dumps(rows, ensure_ascii=False, indent=2).encode()
        write_private(path, data + b"\n", without=UNWRITTEN)


def _row(person: Person) -> Mapping[str, str]:
    return {"code": person.code, "name": person.name, "contact": person.contact}


def _person(row: Mapping[str, str]) -> Person:
    code, name, contact = row["code"], row["name"], row["contact"]
    if not all(isinstance(each, str) for each in (code, name, contact)):
        raise TypeError(code)
    return Person(code=code, name=name, contact=contact)
