"""How many trays are needed at the least, by area: no arrangement has fewer.

The circle's area is taken a little too small, with 333/106 for the ratio to the diameter, so that
the bound stays one. With rectangles alone each side of a tray counts only as far as sums of their
sides reach: they can all be pushed to the far side and the left until each lies on another or the
side (Herz 1972, Christofides and Whitlock 1977: normal patterns).
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd

from paradestate.core.tray.thing import Piece, Room

RATIO_OF_CIRCLE = Fraction(333, 106)
"""A little less than the ratio of a circle to its diameter."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """The least number of trays by both counts."""

    by_area: int
    by_reach: int
    """With each side cut to the greatest reachable sum; of the rectangles alone."""

    @property
    def least(self) -> int:
        """The better of the two."""
        return max(self.by_area, self.by_reach)


def bound(rooms: Sequence[Room], *, pieces_in: Sequence[Sequence[Piece]]) -> Bound:
    """The bound for trays in the order of their size, and the pieces as grown for each of them.

    More than there are trays where all together don't suffice.
    """
    areas, reaches = [], []
    for room, pieces in zip(rooms, pieces_in, strict=True):
        corners = [piece for piece in pieces if not piece.is_round]
        areas.append(_share(room, pieces))
        reaches.append(_share(reach(room, corners), corners))
    return Bound(by_area=_fewest(areas), by_reach=_fewest(reaches))


def _share(room: Room, pieces: Sequence[Piece]) -> Fraction | None:
    """How much of all pieces would fill a room; None where there are none."""
    every = sum((area_of(piece) for piece in pieces), Fraction(0))
    return room.width * room.depth / every if every else None


def _fewest(shares: Sequence[Fraction | None]) -> int:
    """How many of the largest shares make up a whole; one more than all where they don't."""
    known = [share for share in shares if share is not None]
    if len(known) < len(shares):
        return 0
    whole, number = Fraction(0), 0
    for share in sorted(known, reverse=True):
        if whole >= 1:
            break
        whole, number = whole + share, number + 1
    return number if whole >= 1 else number + 1


def area_of(piece: Piece) -> Fraction:
    """What a piece covers, in square units; of a disc a little less."""
    if piece.is_round:
        return RATIO_OF_CIRCLE * piece.width**2 / 4
    return Fraction(piece.width * piece.depth)


def reach(room: Room, pieces: Iterable[Piece], *, may_turn: bool = True) -> Room:
    """The room with each side cut to the greatest sum of sides of rectangles that it holds."""
    every = [way for piece in pieces for way in (piece.ways if may_turn else (piece,))]
    across = [tuple({way.width for way in every if way.number == one}) for one in _numbers(every)]
    deep = [tuple({way.depth for way in every if way.number == one}) for one in _numbers(every)]
    return Room(
        width=greatest_sum(across, most=room.width), depth=greatest_sum(deep, most=room.depth)
    )


def _numbers(pieces: Iterable[Piece]) -> Iterable[int]:
    return dict.fromkeys(piece.number for piece in pieces)


def greatest_sum(choices: Sequence[Sequence[int]], *, most: int) -> int:
    """The greatest sum up to `most` of one length, or none, from each of the choices."""
    unit = gcd(*(length for lengths in choices for length in lengths)) or 1
    limit = most // unit
    mask, reached = (1 << (limit + 1)) - 1, 1
    for lengths in choices:
        reached |= sum_of_shifts(reached, lengths, unit=unit) & mask
    return (reached.bit_length() - 1) * unit


def sum_of_shifts(reached: int, lengths: Iterable[int], *, unit: int) -> int:
    """The sums that come of adding one of the lengths to any there is, as bits."""
    after = 0
    for length in lengths:
        after |= reached << (length // unit)
    return after
