"""How many equal pieces one page takes: as they are, turned by a quarter, or some of each."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.imposition.frame import Frame
from paradestate.core.outline import Millimetres


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """Rows of equal pieces, and below or beside them more that lie turned by a quarter."""

    upright: int
    """Pieces that lie as they are."""
    turned: int

    @property
    def number(self) -> int:
        """Pieces on the page."""
        return self.upright + self.turned


def along(room: Millimetres, piece: Millimetres, *, gutter: Millimetres) -> int:
    """How many pieces lie in one row: (room + gutter) / (piece + gutter), rounded down."""
    return max(int((room + gutter) // (piece + gutter)), 0)


def per_page(room: Frame, *, width: Millimetres, height: Millimetres, gutter: Millimetres) -> Grid:
    """The most pieces that a room takes in one block, or in two of which one lies turned.

    Of two ways to one number the one with more pieces as they are.
    """
    both = (*_blocks(room, width, height=height, gutter=gutter), Grid(upright=0, turned=0))
    return max(both, key=lambda grid: (grid.number, grid.upright))


def _blocks(
    room: Frame, width: Millimetres, *, height: Millimetres, gutter: Millimetres
) -> Iterator[Grid]:
    """All ways to divide the room by one straight cut, across or down."""
    columns = along(room.width, width, gutter=gutter)
    rows = along(room.height, height, gutter=gutter)
    for kept in range(rows + 1):
        left = Millimetres(room.height - kept * (height + gutter))
        beside = along(room.width, height, gutter=gutter) * along(left, width, gutter=gutter)
        yield Grid(upright=kept * columns, turned=beside)
    for kept in range(columns + 1):
        left = Millimetres(room.width - kept * (width + gutter))
        below = along(left, height, gutter=gutter) * along(room.height, width, gutter=gutter)
        yield Grid(upright=kept * rows, turned=below)


def lies_turned(
    room: Frame, *, width: Millimetres, height: Millimetres, gutter: Millimetres
) -> bool:
    """Whether more of them go on a page when all lie turned by a quarter."""
    as_is = along(room.width, width, gutter=gutter) * along(room.height, height, gutter=gutter)
    turned = along(room.width, height, gutter=gutter) * along(room.height, width, gutter=gutter)
    return turned > as_is
