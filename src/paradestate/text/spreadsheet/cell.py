"""One cell of a spreadsheet, whatever the file's form, and its text."""

import datetime
import re
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from typing import TypeAlias

from paradestate.core.finding import Finding, Level
from paradestate.core.place import Place
from paradestate.text.slip import INVALID, NOT_USED, Invalid
from paradestate.text.spelling import tidy

Value: TypeAlias = str | int | float | bool | datetime.date


class Trouble(Enum):
    """Why a cell has no value of its own."""

    NONE = "a usual cell"
    ERROR = "an error such as #REF!"
    NO_RESULT = "a formula whose result isn't in the file"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """What stands in a cell, and where."""

    value: Value
    place: Place
    is_share: bool = False
    """Whether the number is shown as a per cent."""
    trouble: Trouble = Trouble.NONE


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """The filled cells of a row by the number of their column, from 1."""

    cells: dict[int, Cell]
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A named sheet with its filled rows."""

    name: str
    rows: tuple[Row, ...]
    place: Place


def column_letters(column: int) -> str:
    """The letters of a column: 1 is A, 27 is AA."""
    letters = ""
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def cell_place(file: str, sheet: str, *, row: int, column: int) -> Place:
    """The place of a cell."""
    name = f"{sheet}!{column_letters(column)}{row}"
    return Place(file=file, line=row, column=column, cell=name)


class Use(Enum):
    """What a column is for, as far as cells have to be understood differently."""

    TEXT = "text"
    NUMBER = "number"
    DATE = "date"
    RANGE = "range"


_COMMA_NUMBER = re.compile(r"-?\d+,\d+", re.ASCII)


def cell_text(cell: Cell, *, use: Use) -> tuple[str | Invalid, Finding | None]:
    """The text that the owner would have written in a YAML file, and what is to be said of it."""
    if cell.trouble is not Trouble.NONE:
        return INVALID, _stop_at(
            cell, code="cell-without-value", said=f"holds {cell.trouble.value}"
        )
    match cell.value:
        case bool():
            return ("yes" if cell.value else "no"), None
        case datetime.date():
            return _date_text(cell, cell.value, use=use)
        case int():
            return f"{cell.value * 100}%" if cell.is_share else str(cell.value), None
        case float():
            return _decimal(cell.value, is_share=cell.is_share), None
        case str():
            return _plain(cell, tidy(cell.value.strip()), use=use)


def _decimal(number: float, *, is_share: bool) -> str:
    """The shortest decimal that the file's number stands for, without binary dust."""
    exact = Decimal(repr(number)) * (100 if is_share else 1)
    text = format(exact.normalize(), "f")
    return f"{text}%" if is_share else text


def _plain(cell: Cell, text: str, *, use: Use) -> tuple[str, Finding | None]:
    if use is Use.NUMBER and _COMMA_NUMBER.fullmatch(text):
        right = text.replace(",", ".")
        return right, _warn_at(
            cell,
            code="comma-decimal",
            message=f"'{text}' has a comma for a decimal point.",
            effect=f"Read as {right}.",
            hint=f"Write {right}.",
        )
    return text, None


def _date_text(
    cell: Cell, date: datetime.date, *, use: Use
) -> tuple[str | Invalid, Finding | None]:
    day = date.date() if isinstance(date, datetime.datetime) else date
    if use is Use.DATE:
        return day.isoformat(), None
    shown = f"{day.day} {day:%B}"
    if use is Use.RANGE:
        low, high = sorted((day.day, day.month))
        text = f"{low}-{high}"
        return text, _warn_at(
            cell,
            code="date-for-range",
            message=f"'{text}' has become '{shown}'.",
            effect=f"Read as {text}.",
            hint="Format the column as text and type it again.",
        )
    return INVALID, _stop_at(cell, code="date-in-cell", said=f"has become the date {shown}")


def _stop_at(cell: Cell, *, code: str, said: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=f"{cell.place.cell} {said}.",
        effect=NOT_USED,
        hint="Format the cell as text and type the value itself.",
        place=cell.place,
    )


def _warn_at(cell: Cell, *, code: str, message: str, effect: str, hint: str) -> Finding:
    return Finding(
        level=Level.WARN,
        code=code,
        message=f"{cell.place.cell}: {message}",
        effect=effect,
        hint=hint,
        place=cell.place,
    )
