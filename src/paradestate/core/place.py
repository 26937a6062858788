"""Where in the owner's files a value stands.

Imports nothing of the project.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

KeyPath: TypeAlias = tuple[str, ...]
"""Keys from the top of the joined files down to a value; list items count from 1."""


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Place:
    """One spot in one file: line and column count from 1, columns in characters.

    In a spreadsheet `line` is the row, `column` the column's number and `cell` names both
    with the sheet (`packs!B3`); elsewhere `cell` is empty.
    """

    file: str
    line: int
    column: int
    path: KeyPath = ()
    cell: str = ""

    def __str__(self) -> str:
        """The form that editors jump to: `file:line:column`."""
        return f"{self.file}:{self.line}:{self.column}"


Places: TypeAlias = Mapping[KeyPath, Place]
"""The place of every key and value of a force, by key path."""


def nearest_place(places: Places, path: KeyPath) -> Place:
    """The place of `path`, or of the nearest value around it that has one."""
    for length in range(len(path), -1, -1):
        place = places.get(path[:length])
        if place is not None:
            return place
    return Place(file="force", line=1, column=1, path=path)
