"""Whether figures fit on a stand, and how crowded it is. Seen from above, in millimetres."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from itertools import product

from paradestate.core.outline import Disc, Millimetres, Outline, Rectangle

FINE = 60
"""Steps of the grid that is tried across a disc; none is finer than half a millimetre."""

PI = Fraction(314159265358979, 10**14)
"""The circle's number, too small by less than 10^-14: enough for areas that people compare."""


def area(outline: Outline) -> Fraction:
    """Square millimetres, with PI as above for discs."""
    if isinstance(outline, Disc):
        return PI * outline.diameter**2 / 4
    return outline.width * outline.depth


def crowding(base: Outline, figures: Mapping[Outline, int]) -> Fraction:
    """The share of a stand's area that so many figures of each footprint cover."""
    covered = sum((area(figure) * number for figure, number in figures.items()), Fraction(0))
    return covered / area(base)


def grid_fit(base: Rectangle, figure: Disc, *, edge: Millimetres, gap: Millimetres) -> int:
    """How many equal discs fit in rows and columns."""
    across = (base.width - 2 * edge + gap) // (figure.diameter + gap)
    deep = (base.depth - 2 * edge + gap) // (figure.diameter + gap)
    return int(max(across, 0) * max(deep, 0))


class Fits(Enum):
    """What is known about the fit."""

    YES = "a place was found for each"
    NO = "proved not to fit"
    NOT_FOUND = "no place was found for each"


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A figure placed: its box from the stand's left front corner, its outline as it lies."""

    outline: Outline
    left: Fraction
    front: Fraction

    @property
    def width(self) -> Fraction:
        """Of its box."""
        return self.outline.diameter if isinstance(self.outline, Disc) else self.outline.width

    @property
    def depth(self) -> Fraction:
        """Of its box."""
        return self.outline.diameter if isinstance(self.outline, Disc) else self.outline.depth


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """Whether the figures fit, and where those stand that were placed."""

    fits: Fits
    spots: tuple[Spot, ...]


def fit(base: Outline, figures: Sequence[Outline], *, edge: Millimetres, gap: Millimetres) -> Fit:
    """Places the figures one by one, the largest first, each as far to the front left as it goes.

    Fronts run along the width; rectangles may be turned by a quarter. A place found is a proof
    that they fit. That they don't is proved where their area is greater than the stand's.
    """
    placed: list[Spot] = []
    for figure in sorted(figures, key=area, reverse=True):
        spot = _first_spot(base, figure, placed=placed, edge=edge, gap=gap)
        if spot is None:
            too_much = sum((area(each) for each in figures), Fraction(0)) > area(base)
            return Fit(fits=Fits.NO if too_much else Fits.NOT_FOUND, spots=tuple(placed))
        placed.append(spot)
    return Fit(fits=Fits.YES, spots=tuple(placed))


def _first_spot(
    base: Outline,
    figure: Outline,
    *,
    placed: Sequence[Spot],
    edge: Millimetres,
    gap: Millimetres,
) -> Spot | None:
    fronts, lefts = _corners(base, placed, edge=edge, gap=gap)
    for lying in _ways_to_lie(figure):
        for front, left in product(fronts, lefts):
            spot = Spot(outline=lying, left=left, front=front)
            if _within(base, spot, edge=edge) and all(
                _apart(spot, other, gap=gap) for other in placed
            ):
                return spot
    return None


def _ways_to_lie(figure: Outline) -> tuple[Outline, ...]:
    if isinstance(figure, Disc) or figure.width == figure.depth:
        return (figure,)
    return (figure, Rectangle(width=figure.depth, depth=figure.width))


def _corners(
    base: Outline, placed: Sequence[Spot], *, edge: Millimetres, gap: Millimetres
) -> tuple[list[Fraction], list[Fraction]]:
    """Fronts and lefts worth trying: at the rim, beside what is placed, a fine grid on a disc."""
    lefts = {edge, *(spot.left + spot.width + gap for spot in placed)}
    fronts = {edge, *(spot.front + spot.depth + gap for spot in placed)}
    if isinstance(base, Disc):
        step = max(base.diameter / FINE, Fraction(1, 2))
        lefts |= {step * number for number in range(FINE)}
        fronts |= {step * number for number in range(FINE)}
    return sorted(fronts), sorted(lefts)


def _within(base: Outline, spot: Spot, *, edge: Millimetres) -> bool:
    if isinstance(base, Rectangle):
        right, rear = spot.left + spot.width + edge, spot.front + spot.depth + edge
        return right <= base.width and rear <= base.depth
    centre = base.diameter / 2
    room = centre - edge
    if isinstance(spot.outline, Disc):
        room -= spot.outline.diameter / 2
        reach = _squared(spot.left + spot.width / 2 - centre, spot.front + spot.depth / 2 - centre)
        return room >= 0 and reach <= room**2
    corners = product((spot.left, spot.left + spot.width), (spot.front, spot.front + spot.depth))
    return room >= 0 and all(_squared(x - centre, y - centre) <= room**2 for x, y in corners)


def _apart(one: Spot, other: Spot, *, gap: Millimetres) -> bool:
    """Whether two placed figures keep the gap; two discs by their centres, else by their boxes."""
    if isinstance(one.outline, Disc) and isinstance(other.outline, Disc):
        across = one.left + one.width / 2 - other.left - other.width / 2
        deep = one.front + one.depth / 2 - other.front - other.depth / 2
        least = (one.width + other.width) / 2 + gap
        return _squared(across, deep) >= least**2
    return (
        one.left + one.width + gap <= other.left
        or other.left + other.width + gap <= one.left
        or one.front + one.depth + gap <= other.front
        or other.front + other.depth + gap <= one.front
    )


def _squared(across: Fraction, deep: Fraction) -> Fraction:
    return across**2 + deep**2
