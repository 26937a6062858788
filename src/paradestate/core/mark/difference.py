"""How far colours are apart to each sort of viewer, in whole hundredths.

What it takes to see is worked out elsewhere and handed in; here are the numbers only.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from itertools import combinations

THRESHOLD = 2_000
"""Hundredths of CIEDE2000 below which two colours are too alike across a table.

About 1 is just noticeable side by side in good light; a hall and a table's width are neither
(common practice, no source).
"""


class Viewer(StrEnum):
    """Who looks."""

    USUAL = "most people"
    RED_WEAK = "red-weak"
    GREEN_WEAK = "green-weak"
    BLUE_WEAK = "blue-weak"
    GREY = "in grey"
    """A photocopy, or a dim hall."""


COLOUR_VIEWERS = (Viewer.USUAL, Viewer.RED_WEAK, Viewer.GREEN_WEAK, Viewer.BLUE_WEAK)
"""Those by whom colours are chosen; grey is only told, for signs and bars hold there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """Two colours and how far they are apart to each viewer."""

    one: str
    other: str
    by_viewer: Mapping[Viewer, int]
    """Hundredths."""

    @property
    def weakest(self) -> Viewer:
        """The viewer of colours to whom they are most alike; of several the first."""
        return min(COLOUR_VIEWERS, key=lambda viewer: self.by_viewer[viewer])

    @property
    def least(self) -> int:
        """How far apart they are to that viewer."""
        return self.by_viewer[self.weakest]

    @property
    def is_alike(self) -> bool:
        """Whether some viewer of colours takes one for the other."""
        return self.least < THRESHOLD

    @property
    def is_alike_in_grey(self) -> bool:
        """Whether a sign or bars have to tell them apart in grey."""
        return self.is_alike_to(Viewer.GREY)

    def is_alike_to(self, viewer: Viewer) -> bool:
        """Whether a viewer takes one for the other."""
        return self.by_viewer[viewer] < THRESHOLD


@dataclass(frozen=True, slots=True, kw_only=True)
class Differences:
    """All pairs of some colours."""

    pairs: Mapping[frozenset[str], Pair] = field(default_factory=dict)

    def of(self, *names: str) -> Pair:
        """The pair of two different colours."""
        return self.pairs[frozenset(names)]

    def among(self, names: Iterable[str]) -> Iterator[Pair]:
        """The pairs of these colours that are known, each once."""
        for one, other in combinations(dict.fromkeys(names), 2):
            pair = self.pairs.get(frozenset((one, other)))
            if pair is not None:
                yield pair


def differences_of(pairs: Iterable[Pair]) -> Differences:
    """The pairs as one value."""
    return Differences(pairs={frozenset((pair.one, pair.other)): pair for pair in pairs})


def closest(pairs: Iterable[Pair], *, viewer: Viewer | None = None) -> Pair | None:
    """The pair that is most alike to a viewer, or to any viewer of colours; the first of several.

    None where there is no pair.
    """
    every = tuple(pairs)
    if viewer is None:
        return min(every, key=lambda pair: pair.least, default=None)
    return min(every, key=lambda pair: pair.by_viewer[viewer], default=None)
