"""Legal forces one by one: all of them, where they are few, or some at random, each as likely."""

import random
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.chance.force.diagram import Diagram
from paradestate.chance.force.packing import Packing, packing
from paradestate.chance.force.taking import Taking
from paradestate.core.game import Purchase

Force = tuple[Purchase, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceDraw:
    """All legal forces of a game with so many points, to be walked through."""

    packed: Packing
    tables: tuple[list[int], ...]
    """For each row, and the end, how many ways on each node has, for all slots of points."""
    slot: int
    nothing: int | None = None
    """With less than no points, how often nothing at all is legal: once or never."""

    @property
    def number(self) -> int:
        """How many there are."""
        if self.nothing is not None:
            return self.nothing
        return self.packed.at(self.tables[0][0], self.slot) if self.packed.drawn.is_legal else 0

    def every(self) -> Iterator[Force]:
        """All of them, each once."""
        if self.nothing:
            yield ()
        elif self.number:
            yield from self._from(0, node=0, slot=self.slot)

    def _from(self, row: int, *, node: int, slot: int) -> Iterator[Force]:
        if row == len(self.packed.drawn.rows):
            yield ()
            return
        for taking, after, left, _ in self._ways(row, node=node, slot=slot):
            takings = self.packed.drawn.rows[row].takings
            for rest in self._from(row + 1, node=self._node(row + 1, after), slot=left):
                for place in range(taking.ways):
                    yield self.packed.drawn.force((*takings.purchases_of(taking, place), *rest))

    def at_random(self, lot: random.Random) -> Force:
        """One of them, each as likely as any other; there must be one.

        Steps from node to node, each way as likely as its share of the forces that lead on by it.
        """
        if self.nothing:
            return ()
        node, slot, there, found = 0, self.slot, self.number, list[Purchase]()
        for row, each in enumerate(self.packed.drawn.rows):
            drawn = lot.randrange(there)
            ways = self._ways(row, node=node, slot=slot)
            taking, after, left, there = next(ways)
            while drawn >= there * taking.ways:
                drawn -= there * taking.ways
                taking, after, left, there = next(ways)
            found.extend(each.takings.purchases_of(taking, drawn // there))
            node, slot = self._node(row + 1, after), left
        return self.packed.drawn.force(found)

    def _ways(self, row: int, *, node: int, slot: int) -> Iterator[tuple[Taking, int, int, int]]:
        """Takings that lead on to a force; the node after each, the slot left, and the forces."""
        here = self.packed.drawn.rows[row]
        for bundle, after in here.ways[node]:
            moves = here.bundles[bundle]
            for taking, move in zip(here.plain, here.move_of, strict=True):
                left = slot - taking.points + here.lowest
                if move not in moves:
                    continue
                there = self.packed.at(self.tables[row + 1][after], left)
                if there:
                    yield taking, after, left, there

    def _node(self, row: int, node: int) -> int:
        """The node of a row; all become one where the shares of the points are judged."""
        return 0 if row == self.packed.drawn.judged else node


def force_draw(drawn: Diagram, *, points: int) -> ForceDraw:
    """All legal forces with so many points, no more than the greatest of the diagram."""
    packed = packing(drawn)
    found = [packed.everywhere()]
    tables = [found]
    for row in reversed(range(len(drawn.rows))):
        if row + 1 == drawn.judged:
            found = _judged(drawn, found[0], points=points)
            tables[-1] = found
        found = packed.before(row, found)
        tables.append(found)
    if not drawn.judged:
        tables[-1] = _judged(drawn, found[0], points=points)
    return ForceDraw(
        packed=packed,
        tables=tuple(reversed(tables)),
        slot=points - drawn.lowest,
        nothing=int(drawn.allows_nothing(points=points)) if points < 0 else None,
    )


def _judged(drawn: Diagram, counts: int, *, points: int) -> list[int]:
    """The counts at each node at which all shares are known: nought where one is broken."""
    allowed = set(drawn.allowed(points=points))
    return [counts if node in allowed else 0 for node in range(len(drawn.spent))]
