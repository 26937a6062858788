"""Colours of marks written into the folder itself, or the version before put back.

folder -> checked -> edits of its section -> read as if written -> written whole

The version before is kept, and can be put back for as long as nothing else was written since.
"""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.force import Force, Marks
from paradestate.journeys.aiming import ChangedSinceError, last_kept
from paradestate.journeys.check import Checked, checked
from paradestate.text.editing import Edit, Put, edited
from paradestate.text.error import EditError
from paradestate.text.whole_file import read_whole, write_changed

SECTION = "marks"
UNCHANGED = "Nothing was written: change it in an editor."


@dataclass(frozen=True, slots=True, kw_only=True)
class Coloured:
    """What was written."""

    file: Path
    former: Path
    """Where the version before is kept."""
    before: Marks
    after: Marks
    comments_gone: tuple[str, ...]
    """Comments that stood inside what was replaced."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ColouringAnswer:
    """What was written; None where nothing was: it says that already, or stops prevent it."""

    checked: Checked
    coloured: Coloured | None


def colour_anew(
    folder: Path, *, today: datetime.date, at: datetime.datetime, after: Marks
) -> ColouringAnswer:
    """Writes the marks. Raises FileError and EditError, with nothing written."""
    read = checked(folder, today=today)
    before, file = read.force.marks, _file_of(read.force)
    if read.is_stopped or after == before or file is None:
        return ColouringAnswer(checked=read, coloured=None)
    seen = read_whole(file)
    new = edited(seen, tuple(_edits(before, after)), file=str(file))
    trial = checked(folder, today=today, instead={str(file): new.data})
    if trial.force != replace(read.force, marks=after):
        raise EditError(f"{file}: it would say something else than was chosen. {UNCHANGED}")
    former = write_changed(file, new.data, seen=seen, at=at)
    coloured = Coloured(
        file=file, former=former, before=before, after=after, comments_gone=new.comments_gone
    )
    return ColouringAnswer(checked=trial, coloured=coloured)


def put_colours_back(
    folder: Path, *, today: datetime.date, at: datetime.datetime, former: str
) -> ColouringAnswer:
    """Puts the version of the file back that was kept last, if it has that name.

    Raises ChangedSinceError where another was kept last, or where the two differ in more than the
    marks, and FileError where the disk refuses.
    """
    read = checked(folder, today=today)
    file, kept = last_kept(folder, former)
    seen, data = read_whole(file), read_whole(kept.path)
    trial = checked(folder, today=today, instead={str(file): data})
    if trial.is_stopped:
        return ColouringAnswer(checked=trial, coloured=None)
    if replace(trial.force, marks=Marks()) != replace(read.force, marks=Marks()):
        raise ChangedSinceError(former)
    replaced = write_changed(file, data, seen=seen, at=at)
    coloured = Coloured(
        file=file,
        former=replaced,
        before=read.force.marks,
        after=trial.force.marks,
        comments_gone=(),
    )
    return ColouringAnswer(checked=trial, coloured=coloured)


def _file_of(force: Force) -> Path | None:
    """The file that says the marks; where none does the one that says what is raised."""
    place = force.places.get((SECTION,)) or force.places.get(("raise",))
    return None if place is None else Path(place.file)


def _edits(before: Marks, after: Marks) -> Iterator[Edit]:
    """The least edits that make the section say that; nothing is ever taken out."""
    for formation, names in after.by_formation.items():
        if names != before.by_formation.get(formation):
            yield Put(path=(SECTION, formation, "colours"), value=list(names))
    for name, value in after.colours.items():
        if value != before.colours.get(name):
            yield Put(path=(SECTION, "colours", name), value=value)
