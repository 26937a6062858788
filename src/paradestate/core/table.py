"""The table, and what the opponent puts on it."""

from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.outline import Millimetres, Rectangle, millimetres

USUAL_GAP = millimetres(20)
"""Gap between stands in line where the owner gives none (common practice, no source)."""

USUAL_DIFFERENCE = Fraction(1, 10)
"""How far two sides' fronts may differ before it is said (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """The table and its scale."""

    size: Rectangle
    ground_scale: Fraction | None = None
    """Metres of ground for one millimetre of table."""
    gap: Millimetres = USUAL_GAP
    by_hand: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """So many stands of one width, side by side."""

    number: int
    width: Millimetres


@dataclass(frozen=True, slots=True, kw_only=True)
class Opponent:
    """How the other side's platoon stands in line."""

    front: Line | None = None
    gap: Millimetres = USUAL_GAP
    colours: tuple[str, ...] = ()
    difference_allowed: Fraction = USUAL_DIFFERENCE
    by_hand: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tray:
    """A kind of tray or box, and how many of it there are."""

    name: str
    inside: Rectangle
    height: Millimetres | None = None
    gap: Millimetres = millimetres(0)
    number: int = 1
    by_hand: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayPlace:
    """Where the owner has laid a stand in a tray: its corner at the far side and the left."""

    across: Millimetres
    """From the left side."""
    deep: Millimetres
    """From the far side."""
    is_turned: bool = False
    """By a quarter, so that its width runs from front to rear."""
