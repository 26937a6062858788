"""Whether rectangles go into one tray at all: tried out to the end, or to a number of steps.

Lengths are in whole units, grown by the gap. The tray is filled from the far side: the lowest and
leftmost cell that isn't settled yet is either covered by a piece whose corner lies there, or stays
empty. Cells are bounded by sums of sides, for all pieces can be pushed to the far side and the left
until each lies on others or a side; so nothing is missed (normal patterns, as in `bound`).
"""

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import gcd

from paradestate.core.tray.bound import sum_of_shifts
from paradestate.core.tray.dual import are_too_much
from paradestate.core.tray.thing import Piece, Put, Room

STEPS = 100_000
"""How many steps are tried where nothing else is said; about a second."""


class TooManyStepsError(Exception):
    """The search came to its end before it was decided."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sort:
    """Pieces that are alike, and the ways in which they may lie."""

    ways: tuple[tuple[int, int], ...]
    numbers: tuple[int, ...]


Skyline = tuple[tuple[int, int, int], ...]
"""From left to right: where a step begins, where it ends, how deep all is settled before it."""


def filled(
    room: Room, pieces: Sequence[Piece], *, may_turn: bool = True, steps: int = STEPS
) -> tuple[Put, ...] | None:
    """All the pieces in their places, or None where there is no way to lay them.

    Raises TooManyStepsError where neither is known after so many steps.
    """
    unit = gcd(*(side for piece in pieces for side in (piece.width, piece.depth))) or 1
    less = [
        replace(piece, width=piece.width // unit, depth=piece.depth // unit) for piece in pieces
    ]
    within = Room(width=room.width // unit, depth=room.depth // unit)
    if may_turn:
        found = _Filling(within, less, may_turn=True, steps=steps).answer()
    else:
        found = _filled_beside(within, less, steps=steps)
    return None if found is None else tuple(_times(put, unit) for put in found)


def _filled_beside(room: Room, pieces: Sequence[Piece], *, steps: int) -> tuple[Put, ...] | None:
    """Pieces as long as the tray are pushed to a side, and the others laid beside them.

    Nothing else can lie before or behind such a piece, so what is beside it may close up.
    """
    for piece in pieces:
        rest = [each for each in pieces if each is not piece]
        if piece.depth == room.depth and piece.width <= room.width:
            beside = Room(width=room.width - piece.width, depth=room.depth)
            move = piece.width, 0
        elif piece.width == room.width and piece.depth <= room.depth:
            beside = Room(width=room.width, depth=room.depth - piece.depth)
            move = 0, piece.depth
        else:
            continue
        found = _filled_beside(beside, rest, steps=steps)
        if found is None:
            return None
        first = Put(piece=piece, across=0, deep=0)
        return (first, *(_moved(put, across=move[0], deep=move[1]) for put in found))
    return _Filling(room, pieces, may_turn=False, steps=steps).answer()


def _moved(put: Put, *, across: int, deep: int) -> Put:
    return replace(put, across=put.across + across, deep=put.deep + deep)


def _times(put: Put, unit: int) -> Put:
    piece = replace(put.piece, width=put.piece.width * unit, depth=put.piece.depth * unit)
    return Put(piece=piece, across=put.across * unit, deep=put.deep * unit)


class _Filling:
    """Goes through the ways in depth, and remembers what led nowhere."""

    def __init__(self, room: Room, pieces: Sequence[Piece], *, may_turn: bool, steps: int) -> None:
        self.room = room
        self.steps = steps
        self.by_number = {piece.number: piece for piece in pieces}
        self.sorts = tuple(_sorts(pieces, may_turn=may_turn))
        self.across = _sums(room.width, ([way[0] for way in s.ways] for s in _each(self.sorts)))
        self.deep = _sums(room.depth, ([way[1] for way in s.ways] for s in _each(self.sorts)))
        self.is_too_much = are_too_much(room, pieces, may_turn=may_turn)
        self.waste = room.width * room.depth - sum(p.width * p.depth for p in pieces)
        self.dead: set[tuple[Skyline, tuple[int, ...]]] = set()
        self.widths: dict[tuple[int, ...], int] = {}
        self.shortest: dict[tuple[tuple[int, ...], int], int] = {}
        self.found: list[tuple[int, int, int, int, int]] = []

    def answer(self) -> tuple[Put, ...] | None:
        """The places, or None."""
        left = tuple(len(sort.numbers) for sort in self.sorts)
        if (
            self.waste < 0
            or self.is_too_much
            or not self._goes(((0, self.room.width, 0),), left, waste=self.waste)
        ):
            return None
        return tuple(self._puts())

    def _puts(self) -> Iterator[Put]:
        used = [0] * len(self.sorts)
        for sort, width, depth, across, deep in self.found:
            piece = self.by_number[self.sorts[sort].numbers[used[sort]]]
            used[sort] += 1
            lies = piece if (piece.width, piece.depth) == (width, depth) else piece.turned
            yield Put(piece=lies, across=across, deep=deep)

    def _goes(self, skyline: Skyline, left: tuple[int, ...], *, waste: int) -> bool:
        """Whether what is left can be laid behind the skyline."""
        if not any(left):
            return True
        skyline, lost = self._settled(skyline, left)
        waste -= lost
        if waste < 0:
            return False
        key = (skyline, left)
        if key in self.dead:
            return False
        if self.steps <= 0:
            raise TooManyStepsError
        self.steps -= 1
        if self._must_lose(skyline, left) > waste:
            self.dead.add(key)
            return False
        start, end, deep = min(skyline, key=lambda step: (step[2], step[0]))
        for sort, width, depth in self._choices(
            left, width=end - start, depth=self.room.depth - deep
        ):
            self.found.append((sort, width, depth, start, deep))
            rest = (*left[:sort], left[sort] - 1, *left[sort + 1 :])
            if self._goes(
                _raised(skyline, (start, start + width, deep + depth)), rest, waste=waste
            ):
                return True
            self.found.pop()
        if self._goes_with_a_gap(skyline, left, waste=waste, at=(start, end, deep)):
            return True
        self.dead.add(key)
        return False

    def _settled(self, skyline: Skyline, left: tuple[int, ...]) -> tuple[Skyline, int]:
        """With valleys closed that are too narrow or too shallow for all that is left."""
        narrowest = self._least(left, side=0)
        shallowest = self._least(left, side=1)
        lost = 0
        for start, end, deep in skyline:
            if self.room.depth > deep > self.room.depth - shallowest:
                lost += (end - start) * (self.room.depth - deep)
                skyline = _raised(skyline, (start, end, self.room.depth))
        while True:
            closed = self._closed(skyline, narrowest)
            if closed is None:
                return skyline, lost
            skyline, lost = closed[0], lost + closed[1]

    def _closed(self, skyline: Skyline, narrowest: int) -> tuple[Skyline, int] | None:
        """One narrow valley closed, and the area that this loses; None where there is none."""
        for place, (start, end, deep) in enumerate(skyline):
            to = min(self._beside(skyline, place))
            if end - start < narrowest and deep < to:
                return _raised(skyline, (start, end, to)), (end - start) * (to - deep)
        return None

    def _beside(self, skyline: Skyline, place: int) -> tuple[int, int]:
        """How deep the steps on either side are; the sides of the tray are as deep as it is."""
        last = len(skyline) - 1
        before = self.room.depth if place == 0 else skyline[place - 1][2]
        return before, self.room.depth if place == last else skyline[place + 1][2]

    def _least(self, left: tuple[int, ...], *, side: int) -> int:
        """The shortest that anything left is across (0) or deep (1)."""
        key = (left, side)
        if key not in self.shortest:
            self.shortest[key] = min(
                way[side]
                for number, sort in zip(left, self.sorts, strict=True)
                if number
                for way in sort.ways
            )
        return self.shortest[key]

    def _must_lose(self, skyline: Skyline, left: tuple[int, ...]) -> int:
        """Units of area at least that stay empty in valleys which no sum of widths fills."""
        reached = self._reached(left)
        lost = 0
        for place, (start, end, deep) in enumerate(skyline):
            before, behind = self._beside(skyline, place)
            if deep < min(before, behind):
                width = end - start
                most = (reached & ((2 << width) - 1)).bit_length() - 1
                high = min(before, behind, _next(self.deep, deep, last=self.room.depth)) - deep
                lost += (width - most) * high
        return lost

    def _reached(self, left: tuple[int, ...]) -> int:
        """The sums of widths that what is left makes, as bits."""
        if left not in self.widths:
            reached, mask = 1, (2 << self.room.width) - 1
            for number, sort in zip(left, self.sorts, strict=True):
                for _ in range(number):
                    reached |= sum_of_shifts(reached, (w for w, _ in sort.ways), unit=1) & mask
            self.widths[left] = reached
        return self.widths[left]

    def _choices(
        self, left: Sequence[int], *, width: int, depth: int
    ) -> Iterator[tuple[int, int, int]]:
        """What may lie in the corner, the largest first."""
        found = [
            (number, *way)
            for number, sort in enumerate(self.sorts)
            if left[number]
            for way in sort.ways
            if way[0] <= width and way[1] <= depth
        ]
        yield from sorted(found, key=lambda choice: (-choice[1] * choice[2], choice))

    def _goes_with_a_gap(
        self, skyline: Skyline, left: tuple[int, ...], *, waste: int, at: tuple[int, int, int]
    ) -> bool:
        """Whether it goes if the cell in the corner stays empty."""
        start, end, deep = at
        place = skyline.index(at)
        to = min(end, _next(self.across, start, last=self.room.width))
        beside = self._beside(skyline, place)
        behind = min(*beside, _next(self.deep, deep, last=self.room.depth))
        lost = (to - start) * (behind - deep)
        if lost > waste:
            return False
        return self._goes(_raised(skyline, (start, to, behind)), left, waste=waste - lost)


def _next(sums: Sequence[int], after: int, *, last: int) -> int:
    place = bisect_right(sums, after)
    return sums[place] if place < len(sums) else last


def _sorts(pieces: Iterable[Piece], *, may_turn: bool) -> Iterator[Sort]:
    numbers: dict[tuple[tuple[int, int], ...], list[int]] = {}
    for piece in pieces:
        ways = piece.ways if may_turn else (piece,)
        sides = tuple(sorted((way.width, way.depth) for way in ways))
        numbers.setdefault(sides, []).append(piece.number)
    for sides, alike in numbers.items():
        yield Sort(ways=sides, numbers=tuple(alike))


def _each(sorts: Iterable[Sort]) -> Iterator[Sort]:
    for sort in sorts:
        yield from (sort for _ in sort.numbers)


def _sums(most: int, choices: Iterable[Sequence[int]]) -> tuple[int, ...]:
    """All sums up to `most`, of one length or none from each of the choices."""
    reached, mask = 1, (1 << (most + 1)) - 1
    for lengths in choices:
        reached |= sum_of_shifts(reached, lengths, unit=1) & mask
    return tuple(place for place in range(most + 1) if reached >> place & 1)


def _raised(skyline: Skyline, block: tuple[int, int, int]) -> Skyline:
    """The skyline with a block laid on it, steps of one depth joined."""
    start, end, deep = block
    steps: list[tuple[int, int, int]] = []
    for left, right, level in skyline:
        parts = (
            (left, min(right, start), level),
            (max(left, start), min(right, end), deep),
            (max(left, end), right, level),
        )
        steps.extend(part for part in parts if part[0] < part[1])
    joined = [steps[0]]
    for before, step in pairwise(steps):
        if before[2] == step[2]:
            joined[-1] = (joined[-1][0], step[1], step[2])
        else:
            joined.append(step)
    return tuple(joined)
