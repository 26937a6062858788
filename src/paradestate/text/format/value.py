"""Codecs of single values: numbers, lengths, dates, dice, shares and yes or no."""

import re
from collections.abc import Callable
from enum import StrEnum
from functools import partial
from typing import TypeVar

from paradestate.core.money import Minor, minor_text
from paradestate.core.number import percent_text
from paradestate.core.outline import Outline, Rectangle, decimal_text, outline_text
from paradestate.text.codec import FreeText, Schema, Text, one_of
from paradestate.text.date import duration_text, read_date, read_days, read_duration, read_week
from paradestate.text.dice import read_dice
from paradestate.text.game_night import read_game_nights
from paradestate.text.length import (
    footprint_text,
    ground_scale_text,
    length_text,
    line_text,
    read_base,
    read_footprint,
    read_ground_scale,
    read_length,
    read_line,
    read_outline,
    read_rectangle,
    read_thickness,
    read_tray_place,
    tray_place_text,
)
from paradestate.text.money import read_amount, read_currency
from paradestate.text.number import (
    read_decimal,
    read_not_below_nought,
    read_part,
    read_percent,
    read_positive,
    read_range,
    read_whole,
)
from paradestate.text.slip import Slip
from paradestate.text.volume import area_text, read_area, read_volume, volume_text

E = TypeVar("E", bound=StrEnum)

WORD: Schema = {"type": ["string", "number", "boolean"]}
_WHOLE: Schema = {"type": "integer", "minimum": 1}
_COUNT: Schema = {"type": "integer", "minimum": 0}
_NUMBER: Schema = {"type": "number"}
_DATE: Schema = {
    "anyOf": [
        {"type": "string", "pattern": r"^\d{4}(-\d{2}(-\d{2})?)?$"},
        {"type": "integer", "minimum": 1, "maximum": 9999},
    ]
}


def _pattern(pattern: str, example: str) -> Schema:
    return {"type": "string", "pattern": pattern, "examples": [example]}


def _name(text: str) -> str | Slip:
    return text


NAME = Text(parse=_name, show=str, described=WORD)
FREE = FreeText()
WHOLE = Text(parse=read_whole, show=str, described=_WHOLE)
COUNT = Text(parse=partial(read_whole, least=0), show=str, described=_COUNT)
POINTS = Text(parse=partial(read_whole, least=-1_000_000), show=str, described={"type": "integer"})
RANGE = Text(
    parse=read_range,
    show=str,
    described={"anyOf": [_WHOLE, _pattern(r"^\d+ ?- ?\d+$", "2-4")]},
)
NUMBER = Text(parse=read_decimal, show=decimal_text, described=_NUMBER)
MINUTES = Text(
    parse=read_not_below_nought, show=decimal_text, described={"type": "number", "minimum": 0}
)
POSITIVE = Text(
    parse=read_positive, show=decimal_text, described={"type": "number", "exclusiveMinimum": 0}
)
PERCENT = Text(parse=read_percent, show=percent_text, described=_pattern("%$", "34%"))
PART = Text(parse=read_part, show=percent_text, described=_pattern("%$", "50%"))
AREA = Text(parse=read_area, show=area_text, described=_pattern("(mm2|cm2)$", "3 cm2"))
VOLUME = Text(parse=read_volume, show=volume_text, described=_pattern("(ml|l)$", "17 ml"))
THICKNESS = Text(
    parse=read_thickness, show=length_text, described=_pattern("(mm|cm|in)$", "0.1 mm")
)
LENGTH = Text(parse=read_length, show=length_text, described=_pattern("(mm|cm|in)$", "40 mm"))
OUTLINE: Text[Outline] = Text(
    parse=read_outline, show=outline_text, described=_pattern("(mm|cm|in)( disc)?$", "40 x 20 mm")
)
RECTANGLE: Text[Rectangle] = Text(
    parse=read_rectangle, show=outline_text, described=_pattern("(mm|cm|in)$", "300 x 200 mm")
)
TRAY_PLACE = Text(
    parse=read_tray_place,
    show=tray_place_text,
    described=_pattern("(mm|cm|in)( turned)?$", "42 x 22 mm"),
)
FOOTPRINT: Text[Outline] = Text(
    parse=read_footprint, show=footprint_text, described=_pattern("(mm|cm|in)( disc)?$", "6 mm")
)
BASE: Text[Outline | None] = Text(
    parse=read_base,
    show=outline_text,
    described=_pattern("((mm|cm|in)( disc)?|none)$", "30 mm disc"),
)
LINE = Text(parse=read_line, show=line_text, described=_pattern("(mm|cm|in)$", "2 x 50 mm"))
GROUND_SCALE = Text(
    parse=read_ground_scale, show=ground_scale_text, described=_pattern(" m$", "1 mm = 1 m")
)
DATE = Text(parse=read_date, show=str, described=_DATE)
DAYS = Text(parse=read_days, show=str, described=_DATE)
GAME_NIGHTS = Text(
    parse=read_game_nights,
    show=str,
    described=_pattern(
        r"^(every (week|\d+ weeks) from \d{4}-\d{2}-\d{2}( until \d{4}-\d{2}-\d{2})?"
        r"|\d{4}-\d{2}-\d{2})$",
        "every 2 weeks from 2026-03-05",
    ),
)
DURATION = Text(parse=read_duration, show=duration_text, described=_pattern("(min|h)$", "4 h"))
WEEK = Text(parse=read_week, show=duration_text, described=_pattern("(min|h)$", "4 h"))
DICE = Text(
    parse=read_dice, show=str, described={"type": ["string", "integer"], "examples": ["18 + 2d6"]}
)
CURRENCY = Text(parse=read_currency, show=str, described=_pattern("^[A-Z]{3}$", "GBP"))

_HEX = re.compile(r"[0-9A-Fa-f]{6}")


def _read_hex(text: str) -> str | Slip:
    if _HEX.fullmatch(text):
        return text.upper()
    return Slip(
        code="not-a-colour",
        message=f"'{text}' isn't a colour value.",
        hint="Write six hexadecimal digits without #: 1F4E9E.",
    )


HEX_COLOUR = Text(
    parse=_read_hex, show=str, described={"type": ["string", "number"], "examples": ["1F4E9E"]}
)


def _read_yes_no(text: str) -> bool | Slip:
    answers = {"yes": True, "no": False}
    if text in answers:
        return answers[text]
    return Slip(
        code="not-yes-or-no", message=f"'{text}' is neither yes nor no.", hint="Write yes or no."
    )


def _yes_no_text(answer: bool) -> str:  # noqa: FBT001 - the value that is written
    return "yes" if answer else "no"


YES_NO = Text(
    parse=_read_yes_no,
    show=_yes_no_text,
    described={"anyOf": [{"type": "boolean"}, {"enum": ["yes", "no"]}]},
)


def _format_version(text: str) -> int | Slip:
    return read_whole(text)


FORMAT = Text(parse=_format_version, show=str, described={"type": "integer", "minimum": 1})


def or_count(word: str) -> Text[int | None]:
    """A number from 0 up, or the word that stands for no bound (None)."""

    def parse(text: str) -> int | Slip | None:
        return None if text == word else read_whole(text, least=0)

    def show(number: int | None) -> str:
        return word if number is None else str(number)

    return Text(parse=parse, show=show, described={"anyOf": [_COUNT, {"const": word}]})


def words_of(enumeration: type[E], *, also: Callable[[E], bool] | None = None) -> Text[E]:
    """The words of an enumeration, all of them or those that `also` admits."""
    return one_of({str(word): word for word in enumeration if also is None or also(word)})


def amount(places: int) -> Text[Minor]:
    """Money of a currency with so many decimal places."""
    return Text(
        parse=partial(read_amount, places=places),
        show=partial(minor_text, places=places),
        described={"type": "number", "minimum": 0},
    )
