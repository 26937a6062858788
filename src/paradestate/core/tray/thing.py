"""What is put into trays, and the trays: exact lengths, and the same in whole units for searches.

Each thing owns half the gap on every side of it, a rectangle squarely and a disc all round. So a
tray and all things in it may be thought larger by one gap, and then nothing has a gap any more.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from paradestate.core.outline import Disc, Millimetres, Outline, Rectangle

LEAST_UNIT = 100
"""Units in a millimetre, at least: staggered discs lie on hundredths."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """A stand that needs a place."""

    name: str
    """Such as `No 2 Company / 3 Platoon / 1 Section`."""
    pattern: str
    outline: Outline
    height: Millimetres | None = None
    """None: nobody has said it."""
    company: str = ""
    """What it is kept together with; empty for troops of no company."""
    platoon: str = ""
    """What it is kept together with where its company doesn't go into one tray."""

    @property
    def width(self) -> Fraction:
        """Across, as it lies unturned."""
        match self.outline:
            case Disc(diameter=diameter):
                return diameter
            case Rectangle(width=width):
                return width

    @property
    def depth(self) -> Fraction:
        """From front to rear, as it lies unturned."""
        match self.outline:
            case Disc(diameter=diameter):
                return diameter
            case Rectangle(depth=depth):
                return depth

    @property
    def is_round(self) -> bool:
        """Whether it is a disc."""
        return isinstance(self.outline, Disc)


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One tray: of two that are alike each is a case of its own."""

    name: str
    """Such as `case 2`."""
    kind: str
    """The name under which the folder has it."""
    inside: Rectangle
    height: Millimetres | None
    """Clear height; None: nobody has said it."""
    gap: Millimetres

    def is_too_low_for(self, thing: Thing) -> bool:
        """Whether the thing is known to be higher than the tray is clear."""
        if self.height is None or thing.height is None:
            return False
        return thing.height > self.height


@dataclass(frozen=True, slots=True, kw_only=True)
class Lying:
    """A thing in its place: its corner nearest to the far side and the left of the tray."""

    thing: Thing
    across: Fraction
    """Millimetres from the left side."""
    deep: Fraction
    """Millimetres from the far side."""
    is_turned: bool = False
    """By a quarter, so that its width runs from front to rear."""

    @property
    def width(self) -> Fraction:
        """Across, as it lies."""
        return self.thing.depth if self.is_turned else self.thing.width

    @property
    def depth(self) -> Fraction:
        """From front to rear, as it lies."""
        return self.thing.width if self.is_turned else self.thing.depth


def units_in(cases: Iterable[Case], things: Iterable[Thing]) -> int:
    """So many units to the millimetre that every length is a whole number of them."""
    lengths = [length for case in cases for length in (*_sides(case), case.gap)]
    lengths += [length for thing in things for length in (thing.width, thing.depth)]
    return lcm(LEAST_UNIT, *(length.denominator for length in lengths))


def _sides(case: Case) -> tuple[Fraction, Fraction]:
    return case.inside.width, case.inside.depth


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A thing grown by the gap of a tray, in whole units."""

    number: int
    """Which of the things it is."""
    pattern: str
    width: int
    depth: int
    is_round: bool

    @property
    def turned(self) -> "Piece":
        """The same, turned by a quarter."""
        return Piece(
            number=self.number,
            pattern=self.pattern,
            width=self.depth,
            depth=self.width,
            is_round=self.is_round,
        )

    @property
    def ways(self) -> tuple["Piece", ...]:
        """The ways in which it may lie that differ."""
        return (self,) if self.width == self.depth else (self, self.turned)


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """A tray grown by its gap, in whole units."""

    width: int
    depth: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Put:
    """A piece in its place, in whole units."""

    piece: Piece
    """As it lies."""
    across: int
    deep: int


def room_of(case: Case, *, units: int) -> Room:
    """The tray with one gap more on each side, as far as things are concerned."""
    width, depth = ((side + case.gap) * units for side in _sides(case))
    return Room(width=width.numerator, depth=depth.numerator)


def piece_of(thing: Thing, *, number: int, gap: Fraction, units: int) -> Piece:
    """The thing with its share of the gaps around it."""
    width, depth = ((side + gap) * units for side in (thing.width, thing.depth))
    return Piece(
        number=number,
        pattern=thing.pattern,
        width=width.numerator,
        depth=depth.numerator,
        is_round=thing.is_round,
    )
