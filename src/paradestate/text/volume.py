"""Areas of paint and volumes of it from text."""

import re
from collections.abc import Mapping
from fractions import Fraction

from paradestate.core.outline import decimal_text
from paradestate.core.supplies import Millilitres, SquareMillimetres
from paradestate.text.number import comma_slip, read_measure
from paradestate.text.slip import Slip

AREAS = {"mm2": Fraction(1), "cm2": Fraction(100)}
VOLUMES = {"ml": Fraction(1), "l": Fraction(1000)}
GREATEST = 1_000_000_000
"""Square millimetres or millilitres; nothing at a bench is larger."""

_AREA = re.compile(r"(.*\d) ?(mm2|cm2)")
_VOLUME = re.compile(r"(.*\d) ?(ml|l)")


def read_area(text: str) -> SquareMillimetres | Slip:
    """An area above nought, in square millimetres: `3 cm2`, `300 mm2`."""
    found = _measured(
        text,
        pattern=_AREA,
        units=AREAS,
        slip=Slip(
            code="not-an-area",
            message=f"'{text}' isn't an area.",
            hint="Write a number above nought and its unit: 3 cm2 or 300 mm2.",
        ),
    )
    return found if isinstance(found, Slip) else SquareMillimetres(found)


def read_volume(text: str) -> Millilitres | Slip:
    """A volume above nought, in millilitres: `17 ml`, `0.5 l`."""
    found = _measured(
        text,
        pattern=_VOLUME,
        units=VOLUMES,
        slip=Slip(
            code="not-a-volume",
            message=f"'{text}' isn't a volume.",
            hint="Write a number above nought and its unit: 17 ml or 0.5 l.",
        ),
    )
    return found if isinstance(found, Slip) else Millilitres(found)


def _measured(
    text: str, *, pattern: re.Pattern[str], units: Mapping[str, Fraction], slip: Slip
) -> Fraction | Slip:
    found = pattern.fullmatch(text)
    if found is None:
        return comma_slip(text) or slip
    number = read_measure(found.group(1))
    if isinstance(number, Slip):
        return number
    measured = number * units[found.group(2)]
    return measured if 0 < measured <= GREATEST else slip


def area_text(area: SquareMillimetres) -> str:
    """An area as the owner writes it, in square centimetres."""
    return f"{decimal_text(area / AREAS['cm2'])} cm2"


def volume_text(volume: Millilitres) -> str:
    """A volume as the owner writes it, in millilitres."""
    return f"{decimal_text(volume)} ml"
