"""Whether rectangles are too much for one tray, though their area isn't.

Lengths are replaced by shares of a side, so that lengths that go side by side still have shares
that do (dual feasible functions, Fekete and Schepers 2004): three that are longer than a third and
shorter than a half take half a side each, what is longer than the half of it all. Where the shares
of area come to more than one for some pair of such functions, the rectangles don't go in.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction

from paradestate.core.tray.thing import Piece, Room

MOST_PARTS = 5
"""Into how many parts a side is cut; more parts refuse hardly anything more."""

Share = Callable[[int], Fraction]
"""From a length to its share of the side, in the sense above."""


def are_too_much(room: Room, pieces: Sequence[Piece], *, may_turn: bool = True) -> bool:
    """Whether they can't go in, whatever else is tried; False says nothing."""
    ways = [
        [way for way in (piece.ways if may_turn else (piece,)) if _has_room(room, way)]
        for piece in pieces
    ]
    if not all(ways):
        return True
    across = {way.width for each in ways for way in each}
    deep = {way.depth for each in ways for way in each}
    wide = [{one: share(one) for one in across} for share in _shares(room.width, across)]
    long = [{one: share(one) for one in deep} for share in _shares(room.depth, deep)]
    return any(
        sum(min(w[way.width] * d[way.depth] for way in each) for each in ways) > 1
        for w in wide
        for d in long
    )


def _has_room(room: Room, way: Piece) -> bool:
    return way.width <= room.width and way.depth <= room.depth


def _shares(side: int, lengths: Iterable[int]) -> Iterator[Share]:
    """Functions under which lengths that together fit a side have shares of at most one."""
    yield lambda length: Fraction(length, side)
    for parts in range(1, MOST_PARTS + 1):
        yield _in_parts(side, parts)
    for least in sorted({min(length, side - length) for length in lengths}):
        if 0 < least <= side // 2:
            yield _all_or_nothing(side, least)


def _in_parts(side: int, parts: int) -> Share:
    """Rounded down to so many parts, of one part more."""

    def share(length: int) -> Fraction:
        times, rest = divmod(length * (parts + 1), side)
        return Fraction(length, side) if rest == 0 else Fraction(times, parts)

    return share


def _all_or_nothing(side: int, least: int) -> Share:
    """What leaves less than `least` beside it takes all; what is shorter than that nothing."""

    def share(length: int) -> Fraction:
        if length > side - least:
            return Fraction(1)
        return Fraction(length, side) if length >= least else Fraction(0)

    return share
