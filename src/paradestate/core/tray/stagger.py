"""Discs in lines, every other line shifted by half a pitch, so that more of them go into a width.

Lengths are in whole units, grown by the gap: discs may touch. What a root isn't whole in is
rounded up, so that two discs are never nearer than they may be.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isqrt

BY_TURNS = 2
"""Lines that are read by turns, as their discs lie beside each other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stagger:
    """So many discs in lines."""

    number: int
    diameter: int
    lines: int
    half: int
    """From one disc across to that of the next line: half of the pitch in a line."""
    offset: int
    """From one line to the next."""

    @property
    def depth(self) -> int:
        """Of all lines."""
        return self.diameter + (self.lines - 1) * self.offset

    @property
    def width(self) -> int:
        """Of all discs."""
        return self.diameter + max(across for across, _ in self.corners())

    def corners(self) -> tuple[tuple[int, int], ...]:
        """How far across and deep each disc is, two lines by turns, more line by line."""
        spots = sorted(
            self._spots(), key=lambda spot: spot if self.lines == BY_TURNS else spot[::-1]
        )
        return tuple((step * self.half, line * self.offset) for step, line in spots[: self.number])

    def _spots(self) -> Iterator[tuple[int, int]]:
        steps = fewest_steps(self.number, lines=self.lines)
        for line in range(self.lines):
            for step in range(line % 2, steps + 1, 2):
                yield step, line


def fewest_steps(number: int, *, lines: int) -> int:
    """Half pitches from the first to the last disc across, so that there are spots for all."""
    steps = 0
    while spots(steps, lines=lines) < number:
        steps += 1
    return steps


def spots(steps: int, *, lines: int) -> int:
    """How many discs have room in so many half pitches and lines."""
    return (lines + 1) // 2 * (steps // 2 + 1) + lines // 2 * ((steps + 1) // 2)


def shallowest(number: int, *, diameter: int, width: int) -> Stagger | None:
    """The staggered lines that are least deep within a width; None where there are none.

    Discs that go into one straight row aren't staggered.
    """
    found = [
        stagger
        for lines in range(BY_TURNS, number + 1)
        for stagger in [_in_lines(number, diameter=diameter, width=width, lines=lines)]
        if stagger is not None
    ]
    straight = number * diameter <= width
    return None if straight or not found else min(found, key=lambda stagger: stagger.depth)


def _in_lines(number: int, *, diameter: int, width: int, lines: int) -> Stagger | None:
    """As wide apart as the width allows, and therefore as little deep."""
    steps = fewest_steps(number, lines=lines)
    half = (width - diameter) // steps if steps else 0
    if width < diameter or 2 * half < diameter:
        return None
    offset = rise(half, diameter=diameter)
    if lines > BY_TURNS:  # every other line stands straight behind the one before
        offset = max(offset, -(-diameter // 2))
    return Stagger(number=number, diameter=diameter, lines=lines, half=half, offset=offset)


def loosened(stagger: Stagger, *, depth: int) -> Stagger:
    """Two lines as far apart as a depth allows, and so as narrow as can be; more lines as is."""
    if stagger.lines != BY_TURNS:
        return stagger
    least = -(-stagger.diameter // 2)
    offset = min(depth - stagger.diameter, rise(least, diameter=stagger.diameter))
    if offset <= stagger.offset:
        return stagger
    half = max(least, rise(offset, diameter=stagger.diameter))
    return Stagger(
        number=stagger.number, diameter=stagger.diameter, lines=BY_TURNS, half=half, offset=offset
    )


def rise(one_way: int, *, diameter: int) -> int:
    """How far two discs must be apart the other way, if so far one way; rounded up."""
    square = diameter**2 - one_way**2
    return isqrt(square - 1) + 1 if square > 0 else 0
