"""The size of a label for a stand."""

from paradestate.core.outline import Disc, Millimetres, Outline, Rectangle, millimetres

INSIDE = millimetres(1)
"""How far a label stays inside the edge of its stand (common practice, no source)."""


def label_of(outline: Outline) -> Outline | None:
    """What is stuck under a stand of that outline; None where nothing would be left of it."""
    match outline:
        case Disc(diameter=diameter):
            left = Millimetres(diameter - 2 * INSIDE)
            return Disc(diameter=left) if left > 0 else None
        case Rectangle(width=width, depth=depth):
            across, deep = Millimetres(width - 2 * INSIDE), Millimetres(depth - 2 * INSIDE)
            return Rectangle(width=across, depth=deep) if min(across, deep) > 0 else None
