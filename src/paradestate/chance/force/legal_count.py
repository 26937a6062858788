"""How many legal forces a game has, for many numbers of points at once."""

from collections.abc import Sequence
from itertools import accumulate

from paradestate.chance.force.diagram import Diagram
from paradestate.chance.force.packing import Packing, packing
from paradestate.core.support.force_map import LevelForces


def legal_forces(drawn: Diagram, *, points: Sequence[int]) -> tuple[LevelForces, ...]:
    """How many forces are legal with each of these numbers of points, none above the greatest.

    Where the points of a group must or may only be a share of the points of the game, each number
    of points is judged by its own shares.
    """
    packed = packing(drawn)
    rest, reached = _rest(packed), _reached(packed)
    counts: dict[tuple[int, ...], tuple[list[int], list[int]]] = {}
    found = []
    for number in points:
        nodes = drawn.allowed(points=number)
        if nodes not in counts:
            spending = packed.unpacked(sum(reached[node] for node in nodes) * rest)
            counts[nodes] = (spending, list(accumulate(spending)))
        spending, legal = counts[nodes]
        found.append(_level(drawn, points=number, spending=spending, legal=legal))
    return tuple(found)


def _level(
    drawn: Diagram, *, points: int, spending: Sequence[int], legal: Sequence[int]
) -> LevelForces:
    if points < 0:
        # Nothing may be taken then, not even what brings points.
        return LevelForces(
            points=points, legal=int(drawn.allows_nothing(points=points)), spending_all=0
        )
    slot = points - drawn.lowest
    if slot < 0 or not drawn.is_legal:
        return LevelForces(points=points, legal=0, spending_all=0)
    return LevelForces(points=points, legal=legal[slot], spending_all=spending[slot])


def _rest(packed: Packing) -> int:
    """The counts of the entries after all shares are known."""
    found = [1]
    for row in reversed(range(packed.drawn.judged, len(packed.drawn.rows))):
        found = packed.before(row, found)
    return found[0]


def _reached(packed: Packing) -> list[int]:
    """The counts of the entries before, for each node at which all shares are known."""
    drawn = packed.drawn
    found = [1]
    for row in range(drawn.judged):
        is_last = row + 1 == drawn.judged
        nodes = len(drawn.spent) if is_last else len(drawn.rows[row + 1].ways)
        found = packed.after(row, found, nodes=nodes)
    return found
