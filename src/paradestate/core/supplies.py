"""What the bench uses up: paint, bases, sheet; said by the owner, or guessed as is usual.

Areas in square millimetres, volumes in millilitres (1 ml is 1,000 cubic millimetres).
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import NewType

from paradestate.core.outline import Millimetres, Rectangle, millimetres

SquareMillimetres = NewType("SquareMillimetres", Fraction)
Millilitres = NewType("Millilitres", Fraction)

CUBIC_MILLIMETRES = 1000
"""In a millilitre."""

USUAL_FILM = millimetres("0.1")
"""Of one coat, wet (a guess; common practice, no source)."""
USUAL_WASTED = Fraction(1, 2)
"""Share of the paint that stays on palette and brush (common practice, no source)."""
USUAL_SPARE = Fraction(1, 10)
"""Bought beyond what is needed (common practice, no source)."""
USUAL_BOTTLE = Millilitres(Fraction(17))
"""What is in one bottle (common practice, no source)."""
USUAL_COATS = 2
"""Where no colours are said of a figure (common practice, no source)."""
USUAL_SHEET = Rectangle(width=millimetres(297), depth=millimetres(210))
"""Magnetic or steel sheet, as large as a page of A4 (ISO 216)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Supplies:
    """What the owner measured or wants; None is the usual."""

    area: Mapping[str, SquareMillimetres] = field(default_factory=dict)
    """Kind or sort to the surface of one figure that paint covers."""
    paint_per_100: Mapping[str, Millilitres] = field(default_factory=dict)
    """Kind or sort to the paint that a hundred figures took, all colours and waste included."""
    film: Millimetres | None = None
    wasted: Fraction | None = None
    spare: Fraction | None = None
    bottle: Millilitres | None = None
    undercoat: int = 1
    """Coats."""
    varnish: int = 1
    """Coats."""
    sheet: Rectangle | None = None
    """Magnetic or steel sheet, from which pieces as large as the bases are cut."""
    by_hand: str = ""

    @property
    def film_taken(self) -> Millimetres:
        """The film that is reckoned with."""
        return USUAL_FILM if self.film is None else self.film

    @property
    def wasted_taken(self) -> Fraction:
        """The share wasted that is reckoned with."""
        return USUAL_WASTED if self.wasted is None else self.wasted

    @property
    def spare_taken(self) -> Fraction:
        """The spare share that is reckoned with."""
        return USUAL_SPARE if self.spare is None else self.spare

    @property
    def bottle_taken(self) -> Millilitres:
        """The bottle that is reckoned with."""
        return USUAL_BOTTLE if self.bottle is None else self.bottle

    @property
    def sheet_taken(self) -> Rectangle:
        """The sheet that is reckoned with."""
        return USUAL_SHEET if self.sheet is None else self.sheet
