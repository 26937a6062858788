"""Counts for all numbers of points at once, in one whole number with a slot for each.

A slot is wide enough that no count can spill over, so that one shift and one addition move the
counts of all numbers of points together (packing a polynomial into a whole number is Kronecker's
substitution). Counts have any size. Slot nought stands for the fewest points that a force can cost.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import prod

from paradestate.chance.force.diagram import Diagram, Row

BITS_IN_BYTE = 8

Terms = tuple[tuple[int, int], ...]
"""Bits to shift by, and ways, for the takings of a bundle."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Packing:
    """How counts of the forces of a diagram are packed."""

    drawn: Diagram
    width: int
    """Bytes of a slot."""
    terms: tuple[tuple[Terms, ...], ...]
    """For each row and each of its bundles."""

    @property
    def bits(self) -> int:
        """Bits of a slot."""
        return self.width * BITS_IN_BYTE

    @property
    def mask(self) -> int:
        """All slots filled with ones."""
        return (1 << self.bits * self.drawn.slots) - 1

    def everywhere(self) -> int:
        """A count of one in every slot."""
        return self.mask // ((1 << self.bits) - 1)

    def unpacked(self, packed: int) -> list[int]:
        """The counts of all slots."""
        slots, width = self.drawn.slots, self.width
        written = (packed & self.mask).to_bytes(slots * width, "little")
        return [
            int.from_bytes(written[place : place + width], "little")
            for place in range(0, slots * width, width)
        ]

    def at(self, packed: int, slot: int) -> int:
        """The count of one slot; nought below the first."""
        return packed >> slot * self.bits & (1 << self.bits) - 1 if slot >= 0 else 0

    def before(self, row: int, after: Sequence[int]) -> list[int]:
        """The counts of the ways on from each node of a row, from those of the row after it."""
        mask, terms = self.mask, self.terms[row]
        found = []
        for ways in self.drawn.rows[row].ways:
            total = 0
            for bundle, node in ways:
                packed = after[node]
                for shift, number in terms[bundle]:
                    moved = packed << shift
                    total += moved if number == 1 else moved * number
            found.append(total & mask)
        return found

    def after(self, row: int, before: Sequence[int], *, nodes: int) -> list[int]:
        """The counts of the ways that lead to each of the `nodes` after a row."""
        mask, terms = self.mask, self.terms[row]
        found = [0] * nodes
        for packed, ways in zip(before, self.drawn.rows[row].ways, strict=True):
            for bundle, node in ways:
                for shift, number in terms[bundle]:
                    found[node] += (packed << shift) * number
        return [packed & mask for packed in found]


def packing(drawn: Diagram) -> Packing:
    """A packing with room for the number of all forces, legal or not, whatever they cost."""
    most = prod(sum(taking.ways for taking in row.plain) for row in drawn.rows)
    width = most.bit_length() // BITS_IN_BYTE + 1
    return Packing(
        drawn=drawn,
        width=width,
        terms=tuple(
            _terms(row, bits=width * BITS_IN_BYTE, slots=drawn.slots) for row in drawn.rows
        ),
    )


def _terms(row: Row, *, bits: int, slots: int) -> tuple[Terms, ...]:
    by_move: dict[int, list[tuple[int, int]]] = {}
    for taking, move in zip(row.plain, row.move_of, strict=True):
        reached = by_move.setdefault(move, [])
        if taking.points - row.lowest < slots:
            reached.append((taking.points - row.lowest, taking.ways))
    found = []
    for bundle in row.bundles:
        ways: dict[int, int] = {}
        for move in bundle:
            for points, number in by_move[move]:
                ways[points] = ways.get(points, 0) + number
        found.append(tuple((points * bits, number) for points, number in ways.items()))
    return tuple(found)
