"""Pieces laid as close as they go, in no rows: for what rows have no room for.

Lengths are in whole units, grown by the gap; a disc has the room of its square. What is still free
is kept as all the largest free rectangles, which may overlap; a piece goes where least is left
over beside it, or nearest to the far side (Jylanki 2010: maximal rectangles, best short side fit
and bottom left).
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from paradestate.core.tray.thing import Piece, Put, Room


@dataclass(frozen=True, slots=True, kw_only=True)
class Free:
    """A rectangle with nothing in it."""

    across: int
    deep: int
    width: int
    depth: int


Fit = Callable[[Free, Piece], tuple[int, int]]
"""How well a piece fits a free rectangle that holds it: the smaller, the better."""


def least_left_over(free: Free, piece: Piece) -> tuple[int, int]:
    """By the narrower of the strips that stay free beside it, then by the wider."""
    beside = free.width - piece.width, free.depth - piece.depth
    return min(beside), max(beside)


def nearest_to_the_far_side(free: Free, piece: Piece) -> tuple[int, int]:
    """By how far back it reaches, then by how far across."""
    return free.deep + piece.depth, free.across


FITS: tuple[Fit, ...] = (least_left_over, nearest_to_the_far_side)


class Tight:
    """A tray that is being filled."""

    def __init__(self, room: Room) -> None:
        self.free = [Free(across=0, deep=0, width=room.width, depth=room.depth)]
        self.puts: list[Put] = []

    def copy(self) -> "Tight":
        """One to try things with."""
        other = Tight(Room(width=0, depth=0))
        other.free, other.puts = list(self.free), list(self.puts)
        return other

    def best(self, piece: Piece, *, fit: Fit) -> tuple[tuple[int, int], Put] | None:
        """Where the piece fits best, and how well; None where it doesn't."""
        found: tuple[tuple[int, int], Put] | None = None
        for way in piece.ways:
            for free in self.free:
                if way.width > free.width or way.depth > free.depth:
                    continue
                how = fit(free, way)
                if found is None or how < found[0]:
                    found = how, Put(piece=way, across=free.across, deep=free.deep)
        return found

    def put(self, put: Put) -> None:
        """Lays it there, be that free or not."""
        self.puts.append(put)
        whole: list[Free] = []
        cut: list[Free] = []
        for free in self.free:
            if _is_apart(free, put):
                whole.append(free)
            else:
                cut.extend(_beside(free, put))
        self.free = [*whole, *_largest(cut, beside=whole)]

    def put_all(self, pieces: Iterable[Piece], *, fit: Fit) -> bool:
        """Lays all of them, one after another; stops at the first without room."""
        for piece in pieces:
            found = self.best(piece, fit=fit)
            if found is None:
                return False
            self.put(found[1])
        return True


def _is_apart(free: Free, put: Put) -> bool:
    return (
        put.across >= free.across + free.width
        or put.across + put.piece.width <= free.across
        or put.deep >= free.deep + free.depth
        or put.deep + put.piece.depth <= free.deep
    )


def _beside(free: Free, put: Put) -> Iterator[Free]:
    """What stays free of a rectangle in which something is laid: left, right, before, behind."""
    end, rear = free.across + free.width, free.deep + free.depth
    put_end, put_rear = put.across + put.piece.width, put.deep + put.piece.depth
    strips = (
        (free.across, free.deep, put.across - free.across, free.depth),
        (put_end, free.deep, end - put_end, free.depth),
        (free.across, free.deep, free.width, put.deep - free.deep),
        (free.across, put_rear, free.width, rear - put_rear),
    )
    for across, deep, width, depth in strips:
        if width > 0 and depth > 0:
            yield Free(across=across, deep=deep, width=width, depth=depth)


def _largest(cut: Iterable[Free], *, beside: Iterable[Free]) -> list[Free]:
    """Of what was cut what isn't within another; what wasn't cut can't be within a part of it."""
    unique, whole = list(dict.fromkeys(cut)), list(beside)
    return [
        free
        for free in unique
        if not any(other is not free and _holds(other, free) for other in (*unique, *whole))
    ]


def _holds(outer: Free, inner: Free) -> bool:
    return (
        outer.across <= inner.across
        and outer.deep <= inner.deep
        and outer.across + outer.width >= inner.across + inner.width
        and outer.deep + outer.depth >= inner.deep + inner.depth
    )
