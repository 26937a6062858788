"""Lengths, outlines and ground scales from text."""

import re
from fractions import Fraction

from paradestate.core.outline import (
    MILLIMETRES_PER_INCH,
    Disc,
    Millimetres,
    Outline,
    Rectangle,
    decimal_text,
    outline_text,
)
from paradestate.core.table import Line, TrayPlace
from paradestate.text.number import comma_slip, read_measure, read_whole
from paradestate.text.slip import Slip

UNITS = {"mm": Fraction(1), "cm": Fraction(10), "in": MILLIMETRES_PER_INCH}
LONGEST = 100_000
"""Millimetres; no table or stand is longer."""

_MEASURE = re.compile(r"(.+?) ?(mm|cm|in)")
_TIMES = re.compile(r" [x×] ")
_HINT = "Write a number and its unit: 40 mm, 4 cm or 1 1/2 in."


def read_length(text: str) -> Millimetres | Slip:
    """A length with its unit: `40 mm`, `1.5 cm`, `1 1/2 in`."""
    found = _MEASURE.fullmatch(text)
    if found is None:
        return comma_slip(text) or Slip(
            code="length-without-unit", message=f"'{text}' isn't a length with a unit.", hint=_HINT
        )
    return _length_of(found.group(1), unit=found.group(2))


def _length_of(number_text: str, *, unit: str) -> Millimetres | Slip:
    number = read_measure(number_text)
    if isinstance(number, Slip):
        return number
    length = number * UNITS[unit]
    if not 0 <= length <= LONGEST:
        return Slip(
            code="length-out-of-bounds",
            message=f"{number_text} {unit} isn't between 0 and {LONGEST // 1000} m.",
            hint=_HINT,
        )
    return Millimetres(length)


def read_outline(text: str) -> Outline | Slip:
    """A rectangle (front first), or a disc: `40 x 20 mm`, `30 mm disc`."""
    if text.endswith(" disc"):
        diameter = _above_nought(text.removesuffix(" disc").rstrip())
        return diameter if isinstance(diameter, Slip) else Disc(diameter=diameter)
    return read_rectangle(text)


def read_footprint(text: str) -> Outline | Slip:
    """A disc by its diameter alone, or width and depth: `6 mm`, `15 x 34 mm`."""
    if _TIMES.search(text) or text.endswith(" disc"):
        return read_outline(text)
    diameter = _above_nought(text)
    return diameter if isinstance(diameter, Slip) else Disc(diameter=diameter)


def read_rectangle(text: str) -> Rectangle | Slip:
    """Width by depth: `40 x 20 mm`; a unit after the first number holds for that one."""
    first, times, last = _two_sides(text)
    if not times:
        return comma_slip(text) or Slip(
            code="not-an-outline",
            message=f"'{text}' isn't an outline.",
            hint="Write front by depth, or a disc: 40 x 20 mm, 30 mm disc.",
        )
    depth = _above_nought(last)
    if isinstance(depth, Slip):
        return depth
    if _MEASURE.fullmatch(first) is None:
        first = f"{first} {last[-2:]}"
    width = _above_nought(first)
    return width if isinstance(width, Slip) else Rectangle(width=width, depth=depth)


def _two_sides(text: str) -> tuple[str, str, str]:
    """What stands before the first `x`, the `x` itself (empty where there is none), the rest."""
    found = _TIMES.search(text)
    if found is None:
        return text, "", ""
    return text[: found.start()], found.group(), text[found.end() :]


def read_tray_place(text: str) -> TrayPlace | Slip:
    """A place in a tray, across by deep: `42 x 22 mm`, with `turned` behind it or not."""
    first, times, last = _two_sides(text.removesuffix(TURNED))
    if not times:
        return comma_slip(text) or Slip(
            code="not-a-place",
            message=f"'{text}' isn't a place in a tray.",
            hint="Write how far from the left and the far side: 42 x 22 mm, or 0 x 0 mm turned.",
        )
    if _MEASURE.fullmatch(first) is None:
        first = f"{first} {last[-2:]}"
    across, deep = read_length(first), read_length(last)
    if isinstance(across, Slip):
        return across
    if isinstance(deep, Slip):
        return deep
    return TrayPlace(across=across, deep=deep, is_turned=text.endswith(TURNED))


TURNED = " turned"


def tray_place_text(place: TrayPlace) -> str:
    """A place in a tray as the owner writes it: `42 x 22 mm turned`."""
    turned = TURNED if place.is_turned else ""
    return f"{decimal_text(place.across)} x {decimal_text(place.deep)} mm{turned}"


def read_thickness(text: str) -> Millimetres | Slip:
    """A length above nought: `0.1 mm`."""
    return _above_nought(text)


def _above_nought(text: str) -> Millimetres | Slip:
    length = read_length(text)
    if isinstance(length, Slip) or length > 0:
        return length
    return Slip(code="not-above-nought", message=f"{text} is no length at all.", hint=_HINT)


def read_base(text: str) -> Outline | Slip | None:
    """An outline, or None for a model without a base (`none`)."""
    return None if text == "none" else read_outline(text)


def footprint_text(outline: Outline) -> str:
    """A footprint as the owner writes it."""
    return outline_text(outline).removesuffix(" disc")


def length_text(length: Millimetres) -> str:
    """A length as the owner writes it, in millimetres."""
    return f"{decimal_text(length)} mm"


def read_ground_scale(text: str) -> Fraction | Slip:
    """Metres of ground for a millimetre of table: `1 mm = 1 m`."""
    left, equals, right = text.partition(" = ")
    on_table = read_length(left)
    metres = read_measure(right.removesuffix("m").rstrip())
    if (
        not equals
        or not right.endswith(" m")
        or isinstance(on_table, Slip)
        or isinstance(metres, Slip)
        or on_table <= 0
        or metres <= 0
    ):
        return Slip(
            code="not-a-ground-scale",
            message=f"'{text}' isn't a ground scale.",
            hint="Write a length on the table and the ground it shows: 1 mm = 1 m.",
        )
    return metres / on_table


def ground_scale_text(scale: Fraction) -> str:
    """A ground scale as the owner writes it."""
    return f"1 mm = {decimal_text(scale)} m"


def read_line(text: str) -> Line | Slip:
    """So many stands of one front: `2 x 50 mm`."""
    first, times, last = _two_sides(text)
    number = read_whole(first)
    width = _above_nought(last)
    if not times or isinstance(number, Slip) or isinstance(width, Slip):
        return Slip(
            code="not-a-line",
            message=f"'{text}' isn't a number of stands by their front.",
            hint="Write how many, and the front of one: 2 x 50 mm.",
        )
    return Line(number=number, width=width)


def line_text(line: Line) -> str:
    """A line of stands as the owner writes it."""
    return f"{line.number} x {length_text(line.width)}"
