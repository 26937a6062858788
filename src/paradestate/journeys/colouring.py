"""Colours of marks written into the folder itself, or the version before put back.

folder -> checked -> edits of its section -> read as if written -> written whole

The version before is kept, and can be put back for as long as nothing else was written since.
"""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.force import Force, Marks
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.rewriting import Rewriting, put_back, said_anew
from paradestate.text.editing import Edit, Put

SECTION = "marks"


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
    meant = replace(read.force, marks=after)
    made = said_anew(
        folder,
        today=today,
        at=at,
        file=file,
        edits=_edits(before, after),
        is_meant=lambda force: force == meant,
    )
    return _answer(made, before=before)


def put_colours_back(
    folder: Path, *, today: datetime.date, at: datetime.datetime, former: str
) -> ColouringAnswer:
    """Puts the version of the file back that was kept last, if it has that name.

    Raises ChangedSinceError where another was kept last, or where the two differ in more than the
    marks, and FileError where the disk refuses.
    """
    read = checked(folder, today=today)
    beside = replace(read.force, marks=Marks())
    made = put_back(
        folder,
        today=today,
        at=at,
        former=former,
        is_meant=lambda force: replace(force, marks=Marks()) == beside,
    )
    return _answer(made, before=read.force.marks)


def _answer(made: Rewriting, *, before: Marks) -> ColouringAnswer:
    if made.written is None:
        return ColouringAnswer(checked=made.trial, coloured=None)
    coloured = Coloured(
        file=made.written.file,
        former=made.written.former,
        before=before,
        after=made.trial.force.marks,
        comments_gone=made.written.comments_gone,
    )
    return ColouringAnswer(checked=made.trial, coloured=coloured)


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
