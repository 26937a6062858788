"""What a mark is made of, and the check by which one misread part never names another unit.

A mark has three fields: colour for the company, bars for the platoon, and a sign. The sign says
nothing new: it is the one of (place of the company + bars), counted round the signs there are. So
two marks always differ in two fields, and whoever misreads one sees a sign that isn't due.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import combinations


class Sign(StrEnum):
    """The signs, in the order in which they are counted round.

    None of them is a triangle, square, circle or diamond, which meant companies on vehicles.
    """

    CROSS = "cross"
    RING = "ring"
    CHEVRON = "chevron"
    BLOCK = "block"
    TEE = "tee"
    FORK = "fork"
    HOOK = "hook"
    STEP = "step"


SIGNS = tuple(Sign)
LEAST_SIGNS = 4
"""Signs that are counted round where no more are needed."""

MOST_DRAWN_BARS = 5
"""Of more the number is written."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """The mark of one unit, on all its stands alike."""

    colour: str
    """Name of the company's; empty for troops of no company, whose plate is plain."""
    value: str
    """Six hexadecimal digits; empty for the plain plate."""
    bars: int
    """Which platoon of its company; nought for the company's own troops."""
    sign: Sign | None
    """None on the plain plate: there the number of bars is written beside them as the check."""
    has_rear_bar: bool = False
    """A bar along the foot tells it from the enemy's."""

    @property
    def fields(self) -> tuple[str, int, Sign | int | None]:
        """What is read one by one."""
        check = self.sign if self.colour else (self.bars or None)
        return self.colour, self.bars, check


def fields_apart(one: Mark, other: Mark) -> int:
    """In how many fields two marks differ."""
    return sum(a != b for a, b in zip(one.fields, other.fields, strict=True))


def least_fields_apart(marks: Iterable[Mark]) -> int | None:
    """The least number of fields in which any two of different marks differ; None below two."""
    every = dict.fromkeys(marks)
    return min((fields_apart(one, other) for one, other in combinations(every, 2)), default=None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """The marks that a number of colours and bars make."""

    companies: int
    """Colours."""
    bars: tuple[int, ...]
    """Numbers of bars that are used, rising."""
    places: tuple[int, ...] = ()
    """The place of each company in the check; its number from nought where nothing is said."""

    @property
    def signs(self) -> int:
        """Signs that are counted round: as many as companies, and as numbers of bars."""
        across = self.bars[-1] - self.bars[0] + 1 if self.bars else 1
        return max(LEAST_SIGNS, self.companies, across)

    @property
    def is_held(self) -> bool:
        """Whether there are signs enough for the check."""
        return self.signs <= len(SIGNS)

    @property
    def is_full(self) -> bool:
        """Whether every number of bars up to the last sign is used."""
        return len(self.bars) >= self.signs

    def sign(self, company: int, *, bars: int) -> Sign:
        """The sign that is due."""
        place = self.places[company] if self.places else company
        return SIGNS[(place + bars) % min(self.signs, len(SIGNS))]


def most_marks(*, colours: int, bars: int, signs: int) -> int:
    """How many marks differ from one another in two fields: all but the largest multiplied."""
    least, middle, _ = sorted((colours, bars, signs))
    return least * middle


def grid_of(companies: int, bars: Sequence[int]) -> Grid:
    """The grid of so many colours and of these numbers of bars."""
    return Grid(companies=companies, bars=tuple(sorted(set(bars))))
