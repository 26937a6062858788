"""Supporting troops typed row by row from one's own book: said back, then written together.

rows -> as a spreadsheet holds them -> the folder read with it -> a sentence or stops by row
     -> edits of its YAML file -> read again: it means the same -> written whole

Nothing is written while there is a stop. The version before is kept.
"""

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypeAlias

from paradestate.core.finding import Finding, stops
from paradestate.core.force import Force
from paradestate.core.sentence.support import entry_sentence
from paradestate.core.support.entry import Entry, Position, Refusal
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.entry_change import file_for
from paradestate.journeys.entry_sort import Field, FieldKind
from paradestate.journeys.files import Saving, Wording, mark_of, read_file, save_file
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.text.editing import Put, edited
from paradestate.text.error import EditError
from paradestate.text.format.game import ENTRIES, POSTURES
from paradestate.text.format.support import ENTRY
from paradestate.text.format.troops import FORMATIONS
from paradestate.text.spelling import tidy
from paradestate.text.spreadsheet.form import FORM
from paradestate.text.spreadsheet.writing import Page, csv_text

TypedRow: TypeAlias = Mapping[str, str]
"""Word of a field to what was typed; a row without any text is no entry."""

NAME = "entry"
MOST, FOR_EVERY, OF = LIMIT_WORDS = ("most", "for every", "of")
"""Fields that make up the cell of a limit."""
LIMIT, ONLY_IN = "limit", "only in"

FIELDS: tuple[Field, ...] = (
    Field(word=NAME, label="Name in your book"),
    Field(word="cost", label="Points", hint="5, or by number: 1: 3, 2: 5, 3: 7"),
    Field(word="held at", label="Lent by", hint="battalion"),
    Field(word="each", label="Each puts down", hint="machine-gun team: 1"),
    Field(word=MOST, label="At most", hint="one where nothing is said; any for no limit"),
    Field(word=FOR_EVERY, label="for every", hint="2"),
    Field(word=OF, label="of", kind=FieldKind.CHOICE, names=FORMATIONS),
    Field(word="roll", label="Comes on a roll of", hint="1d12; empty where it always comes"),
    Field(word="allows 0", label="none on", hint="1-2"),
    Field(word="allows 1", label="one on", hint="3-8"),
    Field(word="allows 2", label="two on"),
    Field(word="allows all", label="all on", hint="9-12"),
    Field(
        word="when refused",
        label="when refused",
        kind=FieldKind.CHOICE,
        choices=tuple(each.value for each in Refusal),
    ),
    Field(word="needs", label="Needs", hint="light tanks"),
)
"""What most entries of most books say, in the order in which it is typed."""

MORE_FIELDS: tuple[Field, ...] = (
    Field(word="bars", label="Not with", hint="bicycle troop"),
    Field(word="choice", label="One is chosen of", hint="flame, charges"),
    Field(word="group", label="Of the group", hint="armour"),
    Field(
        word="place",
        label="Stands",
        kind=FieldKind.CHOICE,
        choices=tuple(each.value for each in Position),
    ),
    Field(word=ONLY_IN, label="Only in", kind=FieldKind.CHOICE, names=POSTURES),
    Field(word="from", label="From", hint="1942-06"),
    Field(word="until", label="Until", hint="1943"),
    Field(word="by hand", label="What no field can say", hint="printed, and not checked"),
)
"""The rest."""

_CELLS = tuple(
    dict.fromkeys(
        LIMIT if field.word in LIMIT_WORDS else field.word for field in (*FIELDS, *MORE_FIELDS)
    )
)
"""Columns of the spreadsheet that the rows would stand in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowSaid:
    """What one row comes to."""

    sentence: str
    """The entry said back; empty where it isn't one yet."""
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsRead:
    """The rows read as if they stood in a spreadsheet of the folder."""

    checked: Checked
    said: Mapping[int, RowSaid]
    """The number of each row that isn't empty, counted from 1, to what it comes to."""
    entries: tuple[Entry, ...]
    """Those that were read, in the order of the rows."""
    others: tuple[Finding, ...]
    """Stops that are of no row."""

    @property
    def is_stopped(self) -> bool:
        """Whether anything is in the way of writing them."""
        return bool(stops(self.checked.findings))


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsWritten:
    """What became of the rows."""

    read: RowsRead
    file: str = ""
    saving: Saving | None = None
    """None where nothing was to be written, or it can't be."""
    refusal: str = ""
    """Why no program can write them; empty where one can."""


def read_rows(
    folder: Path,
    rows: Sequence[TypedRow],
    *,
    today: datetime.date,
    memory: Memory = NOTHING,
) -> RowsRead:
    """What rows of supporting troops would say in a folder. Raises FileError."""
    lines = [_cells({word: tidy(text) for word, text in row.items()}) for row in rows]
    if not any(map(any, lines)):
        read = checked(folder, today=today, memory=memory)
        return RowsRead(checked=read, said={}, entries=(), others=stops(read.findings))
    file = str(folder / ".typed" / f"{FORM}.csv")
    page = Page(name=FORM, rows=(_CELLS, *lines))
    read = checked(folder, today=today, instead={file: csv_text(page).encode()})
    own = [each for each in read.findings if each.place.file == file]
    names = _names(read.force, file=file)
    return RowsRead(
        checked=read,
        said={
            number: _said(read.force, names.get(number, ""), found=own, number=number)
            for number, line in enumerate(lines, start=1)
            if any(line)
        },
        entries=tuple(
            read.force.supporting_troops[name]
            for _, name in sorted(names.items())
            if name in read.force.supporting_troops
        ),
        others=tuple(each for each in stops(read.findings) if each.place.file != file),
    )


def _cells(row: TypedRow) -> tuple[str, ...]:
    """What a row holds, column by column."""
    limit = ", ".join(
        f"{word}: {_quoted(row[word]) if word == OF else row[word]}"
        for word in LIMIT_WORDS
        if row.get(word)
    )
    only_in = row.get(ONLY_IN, "")
    made = {LIMIT: limit, ONLY_IN: f"posture: {_quoted(only_in)}" if only_in else ""}
    return tuple(made.get(word, row.get(word, "")) for word in _CELLS)


def _quoted(name: str) -> str:
    """A name that is chosen, not typed, as YAML takes it whatever is in it."""
    doubled = name.replace("'", "''")
    return f"'{doubled}'"


def _names(force: Force, *, file: str) -> dict[int, str]:
    """The row of each entry that stands in the rows alone."""
    return {
        place.line - 1: path[1]
        for path, place in force.places.items()
        if len(path) == len((ENTRIES, NAME)) and path[0] == ENTRIES and place.file == file
    }


def _said(force: Force, name: str, *, found: Sequence[Finding], number: int) -> RowSaid:
    entry = force.supporting_troops.get(name)
    return RowSaid(
        sentence="" if entry is None else entry_sentence(entry),
        findings=tuple(each for each in found if each.place.line == number + 1),
    )


def write_rows(
    folder: Path, rows: Sequence[TypedRow], *, today: datetime.date, at: datetime.datetime
) -> RowsWritten:
    """Writes all rows as entries, or none of them. Raises FileError."""
    read = read_rows(folder, rows, today=today)
    if read.is_stopped or not read.entries:
        return RowsWritten(read=read)
    try:
        return _written(folder, read, today=today, at=at)
    except EditError as error:
        return RowsWritten(read=read, refusal=str(error))


def _written(
    folder: Path, read: RowsRead, *, today: datetime.date, at: datetime.datetime
) -> RowsWritten:
    places = checked(folder, today=today).force.places
    file = read_file(folder, file_for(folder, (ENTRIES,), places=places))
    edits = tuple(Put(path=(ENTRIES, each.name), value=ENTRY.write(each)) for each in read.entries)
    new = edited(file.data, edits, file=file.name)
    trial = checked(folder, today=today, instead={str(folder / file.name): new.data})
    if _meaning(trial.force) != _meaning(read.checked.force):
        raise EditError(f"{file.name} would say something else than the rows do.")
    wording = Wording(name=file.name, data=new.data, mark=mark_of(file.data))
    saving = save_file(folder, wording=wording, today=today, at=at)
    return RowsWritten(read=read, file=file.name, saving=saving)


def _meaning(force: Force) -> Force:
    """The force without the places of what it says, and whatever the order of its entries."""
    entries = dict(sorted(force.supporting_troops.items()))
    return replace(force, places={}, supporting_troops=entries)
