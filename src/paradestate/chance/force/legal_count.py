"""How many legal forces a game has, for many numbers of points at once."""

from collections.abc import Iterator, Sequence
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
    return legal_levels(packed, reached=_reached(packed), rest=_rest(packed), points=points)


def legal_levels(
    packed: Packing, *, reached: Sequence[int], rest: int, points: Sequence[int]
) -> tuple[LevelForces, ...]:
    """The same from the counts before and after all shares of the points are known."""
    found = []
    for number, (spending, legal) in _by_slot(packed, reached=reached, rest=rest, points=points):
        found.append(_level(packed.drawn, points=number, spending=spending, legal=legal))
    return tuple(found)


def least_unspent(drawn: Diagram, *, points: Sequence[int]) -> tuple[int | None, ...]:
    """The fewest points that a legal force leaves of each of these numbers; None: none is legal.

    Of less than no points nothing can be spent, so that None stands there too.
    """
    packed = packing(drawn)
    reached, rest = _reached(packed), _rest(packed)
    found: list[int | None] = []
    for number, (spending, _) in _by_slot(packed, reached=reached, rest=rest, points=points):
        slot = number - drawn.lowest if number >= 0 and drawn.is_legal else -1
        left = (less for less in range(slot + 1) if spending[slot - less])
        found.append(next(left, None))
    return tuple(found)


def _by_slot(
    packed: Packing, *, reached: Sequence[int], rest: int, points: Sequence[int]
) -> Iterator[tuple[int, tuple[Sequence[int], Sequence[int]]]]:
    """Each number of points with the forces of that game that cost exactly, and at most, so much.

    Slot by slot.
    """
    counts: dict[tuple[int, ...], tuple[Sequence[int], Sequence[int]]] = {}
    for number in points:
        nodes = packed.drawn.allowed(points=number)
        if nodes not in counts:
            spending = packed.unpacked(sum(reached[node] for node in nodes) * rest)
            counts[nodes] = (spending, list(accumulate(spending)))
        yield number, counts[nodes]


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
        found = packed.after(row, found, nodes=drawn.nodes_after(row))
    return found
