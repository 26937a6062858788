"""The surface of a figure that paint covers: what the owner measured, else a guess by its size.

Guesses (common practice, no source): a foot figure has three times the square of its height, which
is 3 cm2 at 10 mm; a mounted one four times. Any other model has the sides and the top of a box
around it.
"""

from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.figure import FigureKind, Sort
from paradestate.core.fit import PI, area
from paradestate.core.outline import Disc, Outline
from paradestate.core.supplies import SquareMillimetres, Supplies

BY_HEIGHT = {Sort.FOOT: 3, Sort.MOUNTED: 4}
"""Squares of the height that cover a figure."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """Of one figure."""

    area: SquareMillimetres
    is_guess: bool


def surface(kind: FigureKind, supplies: Supplies) -> Surface | None:
    """What paint covers; None where nothing says how large the figure is."""
    said = supplies.area.get(kind.name, supplies.area.get(kind.sort.value))
    if said is not None:
        return Surface(area=said, is_guess=False)
    if kind.height is None:
        return None
    if kind.sort in BY_HEIGHT:
        guess = BY_HEIGHT[kind.sort] * kind.height**2
    elif kind.footprint is None:
        return None
    else:
        guess = area(kind.footprint) + _around(kind.footprint) * kind.height
    return Surface(area=SquareMillimetres(guess), is_guess=True)


def _around(outline: Outline) -> Fraction:
    """Millimetres along the rim."""
    if isinstance(outline, Disc):
        return PI * outline.diameter
    return 2 * (outline.width + outline.depth)
