"""How many legal forces don't hold an entry, for every entry and many numbers of points.

The counts of the ways that lead to the nodes before an entry, and of those that lead on from the
nodes after it, are found once for all entries; between them the entry is passed by untaken. So all
entries together cost little more than two walks of the diagram.
"""

from collections.abc import Mapping, Sequence

from paradestate.chance.force.diagram import Diagram, Row
from paradestate.chance.force.legal_count import legal_levels
from paradestate.chance.force.packing import Packing, packing
from paradestate.core.support.force_map import LevelForces


def levels_without(
    drawn: Diagram, *, points: Sequence[int]
) -> Mapping[str, tuple[LevelForces, ...]]:
    """Entry to the legal forces that don't hold it, with each of these numbers of points."""
    packed = packing(drawn)
    judged, rows = drawn.judged, len(drawn.rows)
    before = _forward(packed, first=0, last=judged)
    behind = _forward(packed, first=judged, last=rows)
    onward = _backward(packed)
    found = {}
    for place, row in enumerate(drawn.rows):
        reached: Sequence[int] = before[judged]
        if place < judged:
            reached = _passed_by(packed, place, before=before[place])
            for other in range(place + 1, judged):
                reached = packed.after(other, reached, nodes=drawn.nodes_after(other))
            rest = onward[judged][0]
        else:
            ways = _passed_by(packed, place, before=behind[place - judged])
            rest = sum(
                one * other for one, other in zip(ways, onward[place + 1], strict=True) if one
            )
        found[row.entry] = legal_levels(
            packed, reached=reached, rest=rest & packed.mask, points=points
        )
    return found


def _forward(packed: Packing, *, first: int, last: int) -> Sequence[Sequence[int]]:
    """The counts of the ways to each node of the rows from the first to the last, and behind it."""
    tables: list[Sequence[int]] = [[1]]
    for row in range(first, last):
        tables.append(packed.after(row, tables[-1], nodes=packed.drawn.nodes_after(row)))
    return tables


def _backward(packed: Packing) -> Mapping[int, Sequence[int]]:
    """The counts of the ways on from each node of the rows after all shares are known."""
    rows = len(packed.drawn.rows)
    tables: dict[int, Sequence[int]] = {rows: [1]}
    for row in reversed(range(packed.drawn.judged, rows)):
        tables[row] = packed.before(row, tables[row + 1])
    return tables


def _passed_by(packed: Packing, place: int, *, before: Sequence[int]) -> list[int]:
    """The counts at the nodes after an entry of which none is taken."""
    row = packed.drawn.rows[place]
    bits = -row.lowest * packed.bits
    found = [0] * packed.drawn.nodes_after(place)
    for ways, after in zip(before, nodes_after_nothing(row), strict=True):
        if after is not None:
            found[after] += ways << bits
    return [each & packed.mask for each in found]


def nodes_after_nothing(row: Row) -> Sequence[int | None]:
    """For each node of a row the one to which taking none of the entry leads; None: some must."""
    nothing = {
        move for taking, move in zip(row.plain, row.move_of, strict=True) if not taking.purchases
    }
    bundles = {place for place, moves in enumerate(row.bundles) if nothing & {*moves}}
    return [next((after for bundle, after in ways if bundle in bundles), None) for ways in row.ways]
