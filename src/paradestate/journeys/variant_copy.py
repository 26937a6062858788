"""A force copied as a variant: a folder of its own beside it in the collection.

collection -> the force's files -> its title marked -> a folder beside -> renamed into place
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from paradestate.journeys.collection import ELSEWHERE, JOURNAL, collection_of
from paradestate.text.editing import Put, edited
from paradestate.text.error import EditError, FileError
from paradestate.text.file_name import free_folder_name, leads_outside
from paradestate.text.folder import READ_ENDINGS, read_folder
from paradestate.text.whole_file import write_new
from paradestate.text.whole_folder import new_folder

MARK = " (variant)"

_NUMBERED = re.compile(r" \(variant(?: (?P<number>\d{1,6}))?\)$")


class LoneForceError(Exception):
    """A force that is a collection of one; a variant beside it would share nothing with it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class VariantCopy:
    """The copy that was made."""

    folder: Path
    title: str
    title_unmarked: str
    """Why the title stays what it was, in a sentence; empty where it was marked."""


def copy_as_variant(folder: Path, *, taken: frozenset[str] = frozenset()) -> VariantCopy:
    """Copies a force into a folder beside it, without journal and former versions.

    `taken` are names that the new folder can't have besides those that are there. Raises
    LoneForceError where the folder isn't one of several below a collection with a journal, and
    FileError where it can't be read or written; then nothing was made.
    """
    collection = collection_of(folder)
    name = collection.force_of(folder)
    if not name or not collection.has_journal:
        raise LoneForceError(str(folder))
    title = read_folder(folder).force.title or name
    marked = _marked(title)
    goal = collection.root / free_folder_name(marked, taken=_names(collection.root) | taken)
    files, unmarked = _marked_files(dict(_files(folder)), folder, title=marked)
    with new_folder(goal) as beside:
        for file, data in files.items():
            write_new(beside / file, data)
    return VariantCopy(folder=goal, title=title if unmarked else marked, title_unmarked=unmarked)


def _names(folder: Path) -> frozenset[str]:
    try:
        return frozenset(path.name for path in folder.iterdir())
    except OSError as error:
        raise FileError(f"{error.filename}: {error.strerror}. Nothing was copied.") from error


def _marked(title: str) -> str:
    """The title of a variant; of a variant's variant a number counts on."""
    match = _NUMBERED.search(title)
    if match is None:
        return f"{title}{MARK}"
    return f"{title[: match.start()]} (variant {int(match['number'] or 1) + 1})"


def _files(folder: Path) -> Iterator[tuple[str, bytes]]:
    try:
        for path in sorted(folder.iterdir()):
            is_journal = path.name.startswith((JOURNAL, ELSEWHERE))
            if path.name.startswith(".") or not path.is_file() or is_journal:
                continue
            if path.suffix in READ_ENDINGS or not leads_outside(path):
                yield path.name, path.read_bytes()
    except OSError as error:
        raise FileError(f"{error.filename}: {error.strerror}. Nothing was copied.") from error


def _marked_files(
    files: dict[str, bytes], folder: Path, *, title: str
) -> tuple[dict[str, bytes], str]:
    """The files with the title marked where a program can do that, else why it can't."""
    place = read_folder(folder).force.places.get(("title",))
    if place is None:
        return files, "The force has no title that could be marked."
    name = Path(place.file).name
    try:
        changed = edited(files[name], (Put(path=("title",), value=title),), file=name)
    except EditError as error:
        return files, f"{error}"
    return {**files, name: changed.data}, ""
