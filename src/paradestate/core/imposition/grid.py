"""How many equal pieces lie in a row, and whether more go on a page turned by a quarter."""

from paradestate.core.imposition.frame import Frame
from paradestate.core.outline import Millimetres


def along(room: Millimetres, piece: Millimetres, *, gutter: Millimetres) -> int:
    """How many pieces lie in one row: (room + gutter) / (piece + gutter), rounded down."""
    return max(int((room + gutter) // (piece + gutter)), 0)


def lies_turned(
    room: Frame, *, width: Millimetres, height: Millimetres, gutter: Millimetres
) -> bool:
    """Whether more of them go on a page when all lie turned by a quarter."""
    as_is = along(room.width, width, gutter=gutter) * along(room.height, height, gutter=gutter)
    turned = along(room.width, height, gutter=gutter) * along(room.height, width, gutter=gutter)
    return turned > as_is
