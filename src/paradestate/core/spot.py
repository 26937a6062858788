"""Where figures stand on their stand, and whether they keep edges and gaps.

Places are sought in whole units of length, so that thousands can be tried, and told in
millimetres. A box is known by its left front corner, seen as the troops look.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from paradestate.core.outline import Disc, Millimetres, Outline, Rectangle

UNITS_PER_MILLIMETRE = 100
"""At least: places are found to a hundredth of a millimetre."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A figure placed: its box from the stand's left front corner, its outline as it lies."""

    outline: Outline
    left: Fraction
    front: Fraction

    @property
    def width(self) -> Millimetres:
        """Of its box."""
        return width_of(self.outline)

    @property
    def depth(self) -> Millimetres:
        """Of its box."""
        return depth_of(self.outline)


def width_of(outline: Outline) -> Millimetres:
    """The front of an outline."""
    return outline.diameter if isinstance(outline, Disc) else outline.width


def depth_of(outline: Outline) -> Millimetres:
    """From the front of an outline to its rear."""
    return outline.diameter if isinstance(outline, Disc) else outline.depth


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """An outline in whole units."""

    width: int
    depth: int
    is_round: bool

    @property
    def ways_to_lie(self) -> tuple["Shape", ...]:
        """As it is, and what isn't the same then turned by a quarter as well."""
        if self.width == self.depth:
            return (self,)
        return (self, Shape(width=self.depth, depth=self.width, is_round=False))


@dataclass(frozen=True, slots=True, kw_only=True)
class Put:
    """A shape put somewhere, in whole units."""

    shape: Shape
    left: int
    front: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Ruler:
    """A unit of which each length in question is a whole number."""

    per_millimetre: int

    def length(self, millimetres: Millimetres) -> int:
        """In units."""
        return int(millimetres * self.per_millimetre)

    def shape(self, outline: Outline) -> Shape:
        """In units."""
        return Shape(
            width=self.length(width_of(outline)),
            depth=self.length(depth_of(outline)),
            is_round=isinstance(outline, Disc),
        )

    def spot(self, put: Put) -> Spot:
        """In millimetres."""
        width, depth = (
            Millimetres(Fraction(side, self.per_millimetre))
            for side in (put.shape.width, put.shape.depth)
        )
        return Spot(
            outline=Disc(diameter=width)
            if put.shape.is_round
            else Rectangle(width=width, depth=depth),
            left=Fraction(put.left, self.per_millimetre),
            front=Fraction(put.front, self.per_millimetre),
        )


def ruler_for(outlines: Iterable[Outline], *lengths: Millimetres) -> Ruler:
    """The coarsest ruler on which all these are whole, a hundredth of a millimetre or finer."""
    all_lengths = [*lengths]
    for outline in outlines:
        all_lengths += (width_of(outline), depth_of(outline))
    parts = (length.denominator for length in all_lengths)
    return Ruler(per_millimetre=lcm(UNITS_PER_MILLIMETRE, *parts))


def is_within(base: Shape, put: Put, *, edge: int) -> bool:
    """Whether a figure stands on the base and nowhere nearer to its rim than `edge`."""
    left, front = put.left, put.front
    right, rear = left + put.shape.width, front + put.shape.depth
    if not base.is_round:
        on_the_left = left >= edge and front >= edge
        return on_the_left and right + edge <= base.width and rear + edge <= base.depth
    across, deep = left + right - base.width, front + rear - base.width  # doubled: no halves
    room = base.width - 2 * edge
    if put.shape.is_round:
        room -= put.shape.width
    else:
        across, deep = abs(across) + put.shape.width, abs(deep) + put.shape.depth
    return room >= 0 and across * across + deep * deep <= room * room


def is_apart(one: Put, other: Put, *, gap: int) -> bool:
    """Whether two placed figures keep the gap; two discs by their centres, else by their boxes."""
    across = abs(2 * (one.left - other.left) + one.shape.width - other.shape.width)
    deep = abs(2 * (one.front - other.front) + one.shape.depth - other.shape.depth)
    least_across = one.shape.width + other.shape.width + 2 * gap
    if one.shape.is_round and other.shape.is_round:
        return across * across + deep * deep >= least_across * least_across
    return across >= least_across or deep >= one.shape.depth + other.shape.depth + 2 * gap
