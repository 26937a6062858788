"""How many pieces are cut from a sheet, and how many sheets are enough for all of them.

Straight cuts right across, without loss between pieces; a disc is cut from a square. Imports
outlines only.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from paradestate.core.fit import area
from paradestate.core.outline import Disc, Outline, Rectangle

MOST_COLUMNS = 1000
"""Columns of which every split of the sheet is tried; of more it is cut one way only."""


def cut_count(sheet: Rectangle, piece: Outline) -> int:
    """The most like pieces from one sheet: upright in one part of it, turned in the other."""
    front, depth = _sides(piece)
    return max(
        _split(sheet.width, sheet.depth, front=front, depth=depth),
        _split(sheet.depth, sheet.width, front=front, depth=depth),
    )


def _split(across: Fraction, along: Fraction, *, front: Fraction, depth: Fraction) -> int:
    """So many columns upright, the rest turned, whichever number of columns is best."""
    most = int(across // front)
    return max(
        columns * int(along // depth)
        + int((across - columns * front) // depth) * int(along // front)
        for columns in (range(most + 1) if most <= MOST_COLUMNS else (0, most))
    )


def _sides(piece: Outline) -> tuple[Fraction, Fraction]:
    if isinstance(piece, Disc):
        return piece.diameter, piece.diameter
    return piece.width, piece.depth


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetCount:
    """Sheets from which all pieces are cut."""

    enough: int
    """Cut in strips, or piece by piece alike; a way was found."""
    least: int
    """No way needs fewer: their area alone fills so many."""
    too_large: tuple[Outline, ...]
    """Pieces that no sheet holds; they aren't counted."""

    @property
    def is_exact(self) -> bool:
        """Whether no way needs fewer than enough."""
        return self.enough == self.least


def sheet_count(sheet: Rectangle, pieces: Mapping[Outline, int]) -> SheetCount:
    """How many sheets so many pieces take."""
    wanted = {piece: number for piece, number in pieces.items() if number}
    too_large = tuple(piece for piece in wanted if not cut_count(sheet, piece))
    fitting = {piece: number for piece, number in wanted.items() if piece not in too_large}
    covered = sum((area(piece) * number for piece, number in fitting.items()), Fraction(0))
    ways = [
        _in_strips(fitting, across=sheet.width, along=sheet.depth),
        _in_strips(fitting, across=sheet.depth, along=sheet.width),
        sum(ceil(Fraction(number, cut_count(sheet, each))) for each, number in fitting.items()),
    ]
    return SheetCount(
        enough=min(ways),
        least=ceil(covered / area(sheet)),
        too_large=too_large,
    )


def _in_strips(pieces: Mapping[Outline, int], *, across: Fraction, along: Fraction) -> int:
    """Sheets where each strip across holds one kind of piece, deepest strips first.

    What fits on the sheet at all fits in a strip, one way or turned.
    """
    strips = [
        _strips(piece, number, across=across, along=along) for piece, number in pieces.items()
    ]
    return _filled(sorted(strips, reverse=True), along=along)


def _strips(
    piece: Outline, number: int, *, across: Fraction, along: Fraction
) -> tuple[Fraction, int]:
    """Depth and number of the strips for one kind of piece, the way that is least deep in all."""
    sides = _sides(piece)
    ways = [
        (depth, ceil(Fraction(number, int(across // front))))
        for front, depth in (sides, sides[::-1])
        if front <= across and depth <= along
    ]
    return min(ways, key=lambda way: way[0] * way[1])


def _filled(strips: Sequence[tuple[Fraction, int]], *, along: Fraction) -> int:
    """Sheets that strips fill, each in the first that has room."""
    sheets = 0
    room: dict[Fraction, int] = {}
    for depth, number in strips:
        left = number
        for rest in sorted(room):
            left = _laid(room, rest, depth=depth, number=left)
        each = int(along // depth)
        new = ceil(Fraction(left, each))
        sheets += new
        room[along] = room.get(along, 0) + new
        _laid(room, along, depth=depth, number=left)
    return sheets


def _laid(room: dict[Fraction, int], rest: Fraction, *, depth: Fraction, number: int) -> int:
    """Lays strips into the sheets that have so much room; how many are left to lay."""
    each = int(rest // depth)
    if not each or not number:
        return number
    full = min(room[rest], number // each)
    _move(room, rest, sheets=full, by=each * depth)
    more = min(number - full * each, each) if room[rest] else 0
    _move(room, rest, sheets=min(more, 1), by=more * depth)
    return number - full * each - more


def _move(room: dict[Fraction, int], rest: Fraction, *, sheets: int, by: Fraction) -> None:
    """Takes sheets from those with so much room to those with less."""
    room[rest] -= sheets
    room[rest - by] = room.get(rest - by, 0) + sheets
