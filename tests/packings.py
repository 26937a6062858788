"""Published packings: read from their files, and the exact search around the packing decision.

The problems and their source stand in `tests/authority/packings/SOURCE.txt`.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from paradestate.core.tray.dual import are_too_much
from paradestate.core.tray.filling import filled
from paradestate.core.tray.thing import Piece, Room

FOLDER = Path(__file__).parent / "authority" / "packings"
BEASLEY = (164, 230, 247, 268, 358, 289, 430, 834, 924, 1452, 1688, 1865)
"""Greatest values of the first twelve problems, published (PackLib2)."""
MOST_STEPS = 3_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Sort:
    """Pieces of one size, so many at the most, each of a value."""

    width: int
    depth: int
    most: int
    value: int


def beasley(number: int) -> tuple[Room, list[Sort]]:
    """A problem of J. E. Beasley's (1985), from 1."""
    words = iter(int(word) for word in (FOLDER / "ngcutap.txt").read_text().split())
    next(words)
    room, sorts = Room(width=0, depth=0), list[Sort]()
    for _ in range(number):
        sorts = []
        count = next(words)
        room = Room(width=next(words), depth=next(words))
        for _ in range(count):
            width, depth, _least, most, value = (next(words) for _ in range(5))
            sorts.append(Sort(width=width, depth=depth, most=most, value=value))
    return room, sorts


def hopper_turton() -> Iterator[tuple[str, tuple[int, int], list[tuple[int, int]]]]:
    """The problems of E. Hopper and B. C. H. Turton (2001): name, tray, pieces without waste."""
    for line in (FOLDER / "hopper_turton.txt").read_text().splitlines():
        head, _, rest = line.partition(": ")
        name, tray = head.split()
        yield name, _sides(tray), [_sides(word) for word in rest.split()]


def _sides(text: str) -> tuple[int, int]:
    width, depth = map(int, text.split("x"))
    return width, depth


class GreatestValue:
    """The set of pieces of greatest value that goes into a tray, none of them turned.

    Pieces are taken by falling value of their area and left out by turns. What is worth more than
    the best is asked of the packing decision; where it doesn't go in, nothing that holds it does.
    """

    def __init__(self, room: Room, sorts: Sequence[Sort], *, at_least: int) -> None:
        every = [sort for sort in sorts for _ in range(sort.most)]
        self.room, self.best = room, at_least - 1
        self.items = sorted(every, key=lambda s: Fraction(-s.value, s.width * s.depth))

    def found(self) -> int:
        """The greatest value, proved; one below `at_least` where that isn't reached."""
        self._go(0, (), area=self.room.width * self.room.depth, value=0)
        return self.best

    def _go(self, at: int, taken: tuple[int, ...], *, area: int, value: int) -> None:
        if value > self.best:
            pieces = self._pieces(taken)
            if filled(self.room, pieces, may_turn=False, steps=MOST_STEPS) is None:
                return
            self.best = value
        if at == len(self.items) or value + self._most(at, area) <= self.best:
            return
        item = self.items[at]
        with_it = (*taken, at)
        if item.width * item.depth <= area and not are_too_much(
            self.room, self._pieces(with_it), may_turn=False
        ):
            rest = area - item.width * item.depth
            self._go(at + 1, with_it, area=rest, value=value + item.value)
        while at < len(self.items) and self.items[at] == item:
            at += 1
        self._go(at, taken, area=area, value=value)

    def _most(self, at: int, area: int) -> Fraction:
        """What the area would be worth if pieces could be cut."""
        worth = Fraction(0)
        for item in self.items[at:]:
            own = item.width * item.depth
            worth += Fraction(item.value * min(own, area), own)
            area -= min(own, area)
        return worth

    def _pieces(self, taken: Sequence[int]) -> list[Piece]:
        return [
            Piece(
                number=at,
                pattern="",
                width=self.items[at].width,
                depth=self.items[at].depth,
                is_round=False,
            )
            for at in taken
        ]
