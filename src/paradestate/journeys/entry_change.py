"""One entry of the files changed through a form, every other character of its file left alone.

entry as its file says it -> what was filled in -> least edits -> the file's new text

Writing it is left to `files.save_file`, which tries it first and keeps what was there.
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TypeAlias

from paradestate.core.place import KeyPath, Places
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.entry_sort import EntrySort, Field, FieldKind
from paradestate.journeys.files import FileRead, mark_of, read_file
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.text.codec import Plain
from paradestate.text.editing import Edit, Put, Said, TakeOut, edited, said
from paradestate.text.error import EditError
from paradestate.text.line_difference import LinePair, line_pairs, with_context
from paradestate.text.spelling import tidy
from paradestate.text.yaml_tree import read_yaml

FieldValue: TypeAlias = "str | tuple[str, ...] | Mapping[str, str]"
"""What a field holds: a text, lines, or rows. An empty one says nothing."""

LIST_OF = "of"
"""In the long form of counts the word before the name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryName:
    """Which entry a form is about."""

    sort: EntrySort
    name: str
    of: str = ""
    """What it belongs to: the source of a pack."""

    @property
    def path(self) -> KeyPath:
        """Its key path."""
        return self.sort.path(self.name, of=self.of)


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """An entry as its file says it."""

    entry: EntryName
    values: Mapping[str, FieldValue]
    """Word to what its field holds; in the owner's own words."""
    file: str
    """The name of the file that it stands in, or that a new one goes into."""
    mark: str
    """The mark of that file."""
    is_there: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryChange:
    """What a form comes to, before anything is written."""

    file: str
    mark: str
    data: bytes
    lines: tuple[LinePair, ...]
    """Every line that it changes, with the lines next to it."""
    comments_gone: tuple[str, ...]


def entries_of(read: Checked, sort: EntrySort) -> tuple[EntryName, ...]:
    """The entries of a sort that are there, in file order."""
    depth = len(sort.section) + 1
    found = [path for path in read.force.places if len(path) == depth and _fits(path, sort)]
    of = sort.section.index("*") if sort.belongs_to_another else None
    return tuple(
        EntryName(sort=sort, name=path[-1], of="" if of is None else path[of]) for path in found
    )


def _fits(path: KeyPath, sort: EntrySort) -> bool:
    return all(step in {"*", there} for step, there in zip(sort.section, path, strict=False))


def entry_of(
    folder: Path, entry: EntryName, *, today: datetime.date, memory: Memory = NOTHING
) -> Entry:
    """An entry as its file says it, or an empty one. Raises FileError, and EditError.

    EditError where it stands in a spreadsheet, or in a file that doesn't read.
    """
    places = checked(folder, today=today, memory=memory).force.places
    read = read_file(folder, file_for(folder, entry.path, places=places))
    there = _said_at(read, entry.path)
    if there is None and entry.path in places:
        raise EditError(f"'{entry.name}' isn't written in a way that a form can change.")
    return Entry(
        entry=entry,
        values={field.word: _value(field, there) for field in entry.sort.fields},
        file=read.name,
        mark=read.mark,
        is_there=entry.path in places,
    )


def file_for(folder: Path, path: KeyPath, *, places: Places) -> str:
    """The file in which an entry stands, or its section, or what is raised."""
    for length in range(len(path), 0, -1):
        place = places.get(path[:length])
        if place is None:
            continue
        if place.file.endswith(".yaml"):
            return Path(place.file).name
        if length == len(path):
            name = Path(place.file).name
            raise EditError(f"'{path[-1]}' stands in the spreadsheet {name}: change it there.")
    raised = places.get(("raise",))
    if raised is not None:
        return Path(raised.file).name
    there = sorted(each.name for each in folder.glob("*.yaml") if each.name[0] != ".")
    if not there:
        raise EditError("No file of this force could hold the entry yet. Start one under Files.")
    return there[0]


def _said_at(read: FileRead, path: KeyPath) -> Said:
    """What a file says at a key path; None where nothing stands there."""
    tree = said(read_yaml(read.text or "", file=read.name).node)
    for step in path:
        tree = _said_of(tree, step)
    return tree


def _value(field: Field, entry: Said) -> FieldValue:
    """What a field holds of an entry."""
    there = entry if not field.word else _said_of(entry, field.word)
    match field.kind:
        case FieldKind.TEXT | FieldKind.CHOICE:
            return there if isinstance(there, str) else ""
        case FieldKind.LINES:
            lines = there if isinstance(there, list) else [there]
            return tuple(line for line in lines if isinstance(line, str))
        case FieldKind.ROWS:
            return dict(_rows(there))


def _said_of(entry: Said, word: str) -> Said:
    return entry.get(word) if isinstance(entry, Mapping) else None


def _rows(there: Said) -> Iterator[tuple[str, str]]:
    """Keys and values, in the short form or the long."""
    if isinstance(there, Mapping):
        yield from ((key, value) for key, value in there.items() if isinstance(value, str))
    elif isinstance(there, list):
        for item in there:
            if isinstance(item, Mapping) and isinstance(item.get(LIST_OF), str):
                yield f"{item[LIST_OF]}", f"{item.get('number', '')}"


def entry_change(folder: Path, before: Entry, *, filled: Mapping[str, FieldValue]) -> EntryChange:
    """What filling in a form comes to. Raises FileError, and EditError where it can't be done."""
    read = read_file(folder, before.file)
    edits = tuple(_edits(before, {word: _tidied(value) for word, value in filled.items()}))
    new = edited(read.data, edits, file=before.file)
    pairs = line_pairs(read.text or "", new.data.decode("utf-8-sig"))
    return EntryChange(
        file=before.file,
        mark=mark_of(read.data),
        data=new.data,
        lines=with_context(pairs),
        comments_gone=new.comments_gone,
    )


def _tidied(value: FieldValue) -> FieldValue:
    """A value without what is empty in it."""
    if isinstance(value, str):
        return tidy(value)
    if isinstance(value, tuple):
        return tuple(line for line in map(tidy, value) if line)
    rows = {tidy(key): tidy(text) for key, text in value.items()}
    return {key: text for key, text in rows.items() if key and text}


def _edits(before: Entry, filled: Mapping[str, FieldValue]) -> Iterator[Edit]:
    """The least edits that make an entry what was filled in; what wasn't changed stays as it is."""
    path, sort = before.entry.path, before.entry.sort
    if not before.is_there:
        yield from _begun(before, filled)
        return
    for field in sort.fields:
        new = filled.get(field.word, before.values[field.word])
        if new == _tidied(before.values[field.word]):
            continue
        at = (*path, field.word) if field.word else path
        yield Put(path=at, value=_plain(new)) if new else TakeOut(path=at)


def _begun(before: Entry, filled: Mapping[str, FieldValue]) -> Iterator[Edit]:
    """A new entry with everything that was filled in."""
    sort, path = before.entry.sort, before.entry.path
    whole = [filled[field.word] for field in sort.fields if not field.word and filled[field.word]]
    words = {
        field.word: _plain(filled[field.word])
        for field in sort.fields
        if field.word and filled.get(field.word)
    }
    more: dict[str, Plain] = {word: {} for word in sort.begun}
    if whole:
        yield Put(path=path, value=_plain(whole[0]))
    elif words or more:
        yield Put(path=path, value={**words, **more})


def _plain(value: FieldValue) -> Plain:
    """What is written for a value."""
    if isinstance(value, str):
        return value
    if isinstance(value, tuple):
        return value[0] if len(value) == 1 and "#" in value[0] else list(value)
    return dict(value)
