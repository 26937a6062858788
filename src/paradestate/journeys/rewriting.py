"""Part of a force said anew in its file, or the version of the file before that put back.

edits -> read as if written -> nothing differs but what was meant -> written whole

The version before is kept, and can be put back for as long as nothing else was written since.
"""

import datetime
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.force import Force
from paradestate.journeys.check import Checked, checked
from paradestate.text.editing import Edit, edited
from paradestate.text.error import EditError
from paradestate.text.former import Former, former_versions
from paradestate.text.whole_file import read_whole, write_changed

UNCHANGED = "Nothing was written: change it in an editor."


class ChangedSinceError(Exception):
    """The version that is to be put back isn't the one from before the last change."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rewritten:
    """What was written."""

    file: Path
    former: Path
    """Where the version before is kept."""
    comments_gone: tuple[str, ...] = ()
    """Comments that stood inside what was replaced."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rewriting:
    """The folder as it reads with the change, and what was written; None where stops prevent it."""

    trial: Checked
    written: Rewritten | None = None


def said_anew(
    folder: Path,
    *,
    today: datetime.date,
    at: datetime.datetime,
    file: Path,
    edits: Iterable[Edit],
    is_meant: Callable[[Force], bool],
) -> Rewriting:
    """Makes the edits, of which the force must read as it is meant.

    Raises FileError, and EditError where it would say something else, with nothing written.
    """
    seen = read_whole(file)
    new = edited(seen, tuple(edits), file=str(file))
    trial = checked(folder, today=today, instead={str(file): new.data})
    if trial.is_stopped:
        return Rewriting(trial=trial)
    if not is_meant(trial.force):
        raise EditError(f"{file}: it would say something else than was chosen. {UNCHANGED}")
    former = write_changed(file, new.data, seen=seen, at=at)
    written = Rewritten(file=file, former=former, comments_gone=new.comments_gone)
    return Rewriting(trial=trial, written=written)


def put_back(
    folder: Path,
    *,
    today: datetime.date,
    at: datetime.datetime,
    former: str,
    is_meant: Callable[[Force], bool],
) -> Rewriting:
    """Puts the version of a file back that was kept last, if it has that name.

    Raises ChangedSinceError where another was kept last, or where the force would then differ in
    more than is meant, and FileError where the disk refuses.
    """
    file, kept = last_kept(folder, former)
    seen, data = read_whole(file), read_whole(kept.path)
    trial = checked(folder, today=today, instead={str(file): data})
    if trial.is_stopped:
        return Rewriting(trial=trial)
    if not is_meant(trial.force):
        raise ChangedSinceError(former)
    replaced = write_changed(file, data, seen=seen, at=at)
    return Rewriting(trial=trial, written=Rewritten(file=file, former=replaced))


def last_kept(folder: Path, name: str) -> tuple[Path, Former]:
    """The file of a folder of which the version of that name was kept last, and that version.

    Raises ChangedSinceError where there is none.
    """
    for file in sorted(folder.glob("*.yaml")):
        kept = former_versions(file)
        if kept and kept[0].path.name == name:
            return file, kept[0]
    raise ChangedSinceError(name)


def kept_names(folder: Path, name: str) -> tuple[str, str] | None:
    """The names of that file and version, where the version can still be put back."""
    try:
        file, former = last_kept(folder, name)
    except ChangedSinceError:
        return None
    return file.name, former.path.name
