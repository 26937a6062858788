"""Where to cut: short lines at the corners of each piece, outside it, and never on a neighbour."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.imposition.frame import Frame
from paradestate.core.imposition.shelf import Laid
from paradestate.core.outline import Millimetres, millimetres

LONGEST = millimetres(3)
"""Of a cut mark, where nothing is near."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutMark:
    """A line from one point to another, along an edge of a piece."""

    from_left: Millimetres
    from_top: Millimetres
    to_left: Millimetres
    to_top: Millimetres


def cut_marks(laid: Iterable[Laid], *, gutter: Millimetres) -> tuple[CutMark, ...]:
    """Eight lines around each rectangle, each as long as half the gutter; each only once.

    They begin at the corner and run on in the direction of the edge, so that a ruler laid along
    two of them lies along the edge. Discs have none: their rim is drawn, outside it.
    """
    length = min(LONGEST, Millimetres(gutter / 2))
    marks = (mark for each in laid if not each.is_round for mark in _around(each.frame, length))
    return tuple(dict.fromkeys(marks)) if length else ()


def _around(frame: Frame, length: Fraction) -> Iterator[CutMark]:
    for top in (frame.top, frame.bottom):
        yield _line((frame.left - length, top), (frame.left, top))
        yield _line((frame.right, top), (frame.right + length, top))
    for left in (frame.left, frame.right):
        yield _line((left, frame.top - length), (left, frame.top))
        yield _line((left, frame.bottom), (left, frame.bottom + length))


def _line(start: tuple[Fraction, Fraction], end: tuple[Fraction, Fraction]) -> CutMark:
    return CutMark(
        from_left=Millimetres(start[0]),
        from_top=Millimetres(start[1]),
        to_left=Millimetres(end[0]),
        to_top=Millimetres(end[1]),
    )
