"""The rows of the form in which a list is typed in: what was typed, and what each row says now."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.finding import Finding
from paradestate.journeys.entry_rows import FIELDS, MORE_FIELDS, RowSaid, RowsRead, TypedRow
from paradestate.journeys.entry_sort import Field
from paradestate.web.choosing.question import MOST_TYPED
from paradestate.web.form import Form

USUAL_ROWS, MORE_ROWS, MOST_ROWS = 6, 6, 60
"""Rows that stand ready at first, that are added at once, and that one form has at most."""
NOTHING_SAID = RowSaid(sentence="", findings=())

_LABELS = {field.word: field.label for field in (*FIELDS, *MORE_FIELDS)}
_PLACE = re.compile(r"\S*/supporting troops\.csv:(\d+):\d+")
_CELL = re.compile(r"supporting troops![A-Z]+(\d+)")
_LINE = re.compile(r"Add the line '([^':]+): \.\.\.'\.")
_COLUMN = re.compile(r"in the column '([^']+)'")


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """One field of one row."""

    field: Field
    name: str
    """Of the field in the form."""
    text: str
    names: tuple[str, ...]
    """What may be chosen; empty where anything may be typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowView:
    """One row."""

    number: int
    boxes: tuple[Box, ...]
    more: tuple[Box, ...]
    is_open: bool
    """Whether the rest of its fields is shown, because something stands there."""
    said: RowSaid
    is_empty: bool


def rows_typed(form: Form) -> tuple[TypedRow, ...]:
    """The rows as they were sent; at least as many as stand ready."""
    words = [field.word for field in (*FIELDS, *MORE_FIELDS)]
    sent = [
        number
        for number in range(1, MOST_ROWS + 1)
        if any(f"{word}:{number}" in form.texts for word in words)
    ]
    return tuple(
        {word: form.text(f"{word}:{number}")[:MOST_TYPED] for word in words}
        for number in range(1, max(USUAL_ROWS, *sent, 0) + 1)
    )


def with_more(rows: Sequence[TypedRow]) -> tuple[TypedRow, ...]:
    """The rows, and some more that are empty."""
    return (*rows, *([{}] * min(MORE_ROWS, MOST_ROWS - len(rows))))


def row_views(rows: Sequence[TypedRow], read: RowsRead, *, folder: Path) -> Iterator[RowView]:
    """The rows as they are shown."""
    names = read.checked.names
    for number, row in enumerate(rows, start=1):
        said = read.said.get(number, NOTHING_SAID)
        more = tuple(_boxes(MORE_FIELDS, row, number=number, names=names))
        yield RowView(
            number=number,
            boxes=tuple(_boxes(FIELDS, row, number=number, names=names)),
            more=more,
            is_open=any(box.text for box in more),
            said=replace(said, findings=of_rows(said.findings, folder=folder)),
            is_empty=number not in read.said,
        )


def _boxes(
    fields: Sequence[Field], row: TypedRow, *, number: int, names: Mapping[str, tuple[str, ...]]
) -> Iterator[Box]:
    for field in fields:
        text = row.get(field.word, "")
        known = (*field.choices, *names.get(field.names, ()))
        odd = (text,) if known and text and text not in known else ()
        yield Box(field=field, name=f"{field.word}:{number}", text=text, names=(*known, *odd))


def of_rows(found: Sequence[Finding], *, folder: Path) -> tuple[Finding, ...]:
    """Findings in the words of the form: its rows and labels for lines, cells and columns."""
    return tuple(
        replace(
            each,
            message=_worded(each.message, folder=folder),
            hint=_worded(each.hint, folder=folder),
        )
        for each in found
    )


def _worded(text: str, *, folder: Path) -> str:
    for form in (_PLACE, _CELL):
        text = form.sub(lambda found: f"row {int(found[1]) - 1}", text)
    text = _LINE.sub(lambda found: f"Fill in “{_label(found[1])}”.", text)
    text = _COLUMN.sub(lambda found: f"under “{_label(found[1])}”", text)
    return text.replace(f"{folder}/", "")


def _label(word: str) -> str:
    return _LABELS.get(word, word)
