"""Frozen values as what a template reads: numbers, texts, lists and dictionaries.

Field by field, and nothing but fields: what a record doesn't hold can't reach a page.
"""

import datetime
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from enum import Enum
from fractions import Fraction
from typing import TypeAlias

from paradestate.core.mark.code import Mark
from paradestate.core.sentence.wording import day_words
from paradestate.sheet.mark_plate import plate_of

Plain: TypeAlias = "bool | int | float | str | list[Plain] | dict[str, Plain] | None"

DECIMALS = 6
"""Of a length in millimetres: a millionth of it, which no printer knows."""


def plain(value: object) -> Plain:
    """A value of `core` for a template: a record is a dictionary of fields, a mark its plate."""
    match value:
        case Enum():
            return plain(value.value)
        case None | bool() | int() | str():
            return value
        case Fraction() | float():
            return round(float(value), DECIMALS)
        case datetime.date():
            return {
                "year": value.year,
                "month": value.month,
                "day": value.day,
                "words": day_words(value),
            }
        case Mark():
            return plain(plate_of(value))
        case tuple() | list():
            return [plain(each) for each in value]
        case Mapping():
            return {str(key): plain(each) for key, each in value.items()}
        case _ if is_dataclass(value) and not isinstance(value, type):
            return {each.name: plain(getattr(value, each.name)) for each in fields(value)}
        case _:
            raise TypeError(f"No paper shows a {type(value).__name__}.")
