"""A tray with what lies in it, read row by row from the far side, each from left to right.

A row ends where a straight cut from side to side meets nothing. So rows are seen from the places
alone, however these were found.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.tray.stagger import BY_TURNS
from paradestate.core.tray.thing import Case, Lying


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidRow:
    """What lies between two cuts through the tray."""

    lying: tuple[Lying, ...]
    """In the order in which they are read."""
    starts: Fraction
    """Millimetres from the far side."""
    ends: Fraction

    @property
    def width(self) -> Fraction:
        """From the left side to the end of what reaches farthest."""
        return max(each.across + each.width for each in self.lying)

    @property
    def is_straight(self) -> bool:
        """Whether all of it stands on one line."""
        return all(each.deep == self.starts for each in self.lying)

    @property
    def is_staggered(self) -> bool:
        """Whether it is alike discs in lines."""
        alike = len({each.thing.outline for each in self.lying}) == 1
        return not self.is_straight and alike and self.lying[0].thing.is_round


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidTray:
    """One tray and its rows."""

    case: Case
    rows: tuple[LaidRow, ...]

    @property
    def lying(self) -> tuple[Lying, ...]:
        """Everything in it, in the order in which it is read."""
        return tuple(each for row in self.rows for each in row.lying)

    @property
    def depth_taken(self) -> Fraction:
        """From the far side to behind the last row, with the gap that it has there."""
        last = max((row.ends for row in self.rows), default=Fraction(0))
        return min(self.case.inside.depth, last + self.case.gap) if self.rows else last

    @property
    def width_taken(self) -> Fraction:
        """From the left side to the end of the longest row."""
        return max((row.width for row in self.rows), default=Fraction(0))


def laid(case: Case, lying: Iterable[Lying]) -> LaidTray:
    """The tray with its rows, from places in any order."""
    rows: list[LaidRow] = []
    held: list[Lying] = []
    end = Fraction(0)
    for each in sorted(lying, key=lambda each: (each.deep, each.across)):
        if held and each.deep >= end:
            rows.append(_row(held))
            held = []
        held.append(each)
        end = max(end, each.deep + each.depth)
    if held:
        rows.append(_row(held))
    return LaidTray(case=case, rows=tuple(rows))


def _row(lying: Sequence[Lying]) -> LaidRow:
    """Two lines of discs are read by turns, as they lie beside each other."""
    lines = {each.deep for each in lying}
    is_round = all(each.thing.is_round for each in lying)
    is_one = len(lines) == 1 or (len(lines) == BY_TURNS and is_round)
    read = sorted(lying, key=lambda each: each.across) if is_one else lying
    return LaidRow(
        lying=tuple(read),
        starts=min(lines),
        ends=max(each.deep + each.depth for each in lying),
    )
