"""Where an evening of asking may stand, points aside.

Two standings that leave the same to come are the same standing, so that there are few.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple, TypeAlias

import numpy as np
import numpy.typing as npt

Flags: TypeAlias = npt.NDArray[np.bool_]
"""Yes or no, a standing a row."""

Whole: TypeAlias = npt.NDArray[np.int64]
"""Whole numbers, a standing a row."""

Places: TypeAlias = npt.NDArray[np.int64]
"""Numbers of standings, or of rows."""

UNSEEN = -1


class Standing(NamedTuple):
    """One standing, to be read."""

    asked: int
    """A bit for each rolled entry that was asked for, or never can be."""
    taken: int
    """A bit for each rolled entry that is held and still matters to others."""
    early: tuple[int, ...]
    """Which holding is held of each entry that may be bought early."""
    room: tuple[int, ...]
    """What each group may still take, no more than could be taken of it."""
    seen: tuple[int, ...]
    """The case that each roll came to, among those that decide more than one entry."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Standings:
    """Many standings, a row for each. What they tell is what one tells, a column for each place."""

    asked: Flags
    taken: Flags
    early: Whole
    room: Whole
    seen: Whole

    def __len__(self) -> int:
        """How many there are."""
        return len(self.asked)

    def those(self, rows: Places | Flags | slice) -> "Standings":
        """Some of them."""
        return Standings(
            asked=self.asked[rows],
            taken=self.taken[rows],
            early=self.early[rows],
            room=self.room[rows],
            seen=self.seen[rows],
        )

    def told(self) -> list[bytes]:
        """For each what tells it from all others."""
        flags = np.packbits(np.hstack([self.asked, self.taken]), axis=1)
        numbers = np.hstack([self.early, self.room, self.seen]).astype(np.int64)
        rows = np.hstack([flags, numbers.view(np.uint8).reshape(len(self), -1)])
        found: list[bytes] = np.ascontiguousarray(rows).view(f"V{rows.shape[1]}").ravel().tolist()
        return found

    def at(self, row: int) -> Standing:
        """One of them."""
        return Standing(
            asked=_bits(self.asked[row]),
            taken=_bits(self.taken[row]),
            early=tuple(self.early[row].tolist()),
            room=tuple(self.room[row].tolist()),
            seen=tuple(self.seen[row].tolist()),
        )


def joined(parts: Sequence[Standings]) -> Standings:
    """All of them, one after the other."""
    return Standings(
        asked=np.concatenate([part.asked for part in parts]),
        taken=np.concatenate([part.taken for part in parts]),
        early=np.concatenate([part.early for part in parts]),
        room=np.concatenate([part.room for part in parts]),
        seen=np.concatenate([part.seen for part in parts]),
    )


def _bits(flags: Flags) -> int:
    return sum(1 << place for place in np.flatnonzero(flags).tolist())
