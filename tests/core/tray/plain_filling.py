"""The plainest search whether rectangles go into a tray: every whole place of every one."""

from collections.abc import Sequence
from itertools import product

from paradestate.core.tray.thing import Room

Cells = frozenset[tuple[int, int]]


def goes_in(room: Room, sizes: Sequence[tuple[int, int]], *, may_turn: bool) -> bool:
    """Whether all of them go in, each at some whole place."""
    return _goes(room, list(sizes), taken=frozenset(), may_turn=may_turn)


def _goes(room: Room, sizes: list[tuple[int, int]], *, taken: Cells, may_turn: bool) -> bool:
    if not sizes:
        return True
    width, depth = sizes[0]
    for wide, long in {(width, depth), (depth, width) if may_turn else (width, depth)}:
        for x, y in product(range(room.width - wide + 1), range(room.depth - long + 1)):
            cells = frozenset(product(range(x, x + wide), range(y, y + long)))
            if not cells & taken and _goes(room, sizes[1:], taken=taken | cells, may_turn=may_turn):
                return True
    return False
