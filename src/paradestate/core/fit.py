"""Whether figures fit on a stand, and how crowded it is. Seen from above, in millimetres."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from itertools import product

from paradestate.core.arrangement import Ground, arranged
from paradestate.core.outline import Disc, Millimetres, Outline, Rectangle
from paradestate.core.spot import Put, Ruler, Shape, Spot, is_apart, is_within, ruler_for

MOST_ONE_BY_ONE = 24
"""Figures on one stand up to which callers have places sought one by one; that takes time."""

FINE = 60
"""Steps of the grid that is tried across a disc."""

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
class Fit:
    """Whether the figures fit, and where those stand that were placed."""

    fits: Fits
    spots: tuple[Spot, ...]
    """Exact places; none of them overlap or pass the edge."""


def fit(base: Outline, figures: Sequence[Outline], *, edge: Millimetres, gap: Millimetres) -> Fit:
    """Spreads the figures over the stand in columns, or else places them one by one.

    One by one, the largest comes first, each as far to the front left as it goes. Fronts run
    along the width; rectangles may be turned by a quarter. A place found is a proof that they
    fit. That they don't is proved where their area is greater than the stand's.
    """
    found = fit_in_columns(base, figures, edge=edge, gap=gap)
    if found is not None:
        return found
    ruler, ground = _measured(base, figures, edge=edge, gap=gap)
    shapes = [ruler.shape(figure) for figure in sorted(figures, key=area, reverse=True)]
    puts = _one_by_one(ground, shapes)
    spots = tuple(ruler.spot(put) for put in puts)
    if len(spots) == len(figures):
        return Fit(fits=Fits.YES, spots=spots)
    too_much = sum((area(each) for each in figures), Fraction(0)) > area(base)
    return Fit(fits=Fits.NO if too_much else Fits.NOT_FOUND, spots=spots)


def fit_in_columns(
    base: Outline, figures: Sequence[Outline], *, edge: Millimetres, gap: Millimetres
) -> Fit | None:
    """Spreads the figures over the stand in columns; None where that finds no place for each."""
    if not figures:
        return Fit(fits=Fits.YES, spots=())
    ruler, ground = _measured(base, figures, edge=edge, gap=gap)
    spread = arranged(ground, [ruler.shape(figure) for figure in figures])
    if spread is None:
        return None
    return Fit(fits=Fits.YES, spots=tuple(ruler.spot(put) for put in spread.puts))


def _measured(
    base: Outline, figures: Sequence[Outline], *, edge: Millimetres, gap: Millimetres
) -> tuple[Ruler, Ground]:
    ruler = ruler_for((base, *figures), edge, gap)
    ground = Ground(base=ruler.shape(base), edge=ruler.length(edge), gap=ruler.length(gap))
    return ruler, ground


def _one_by_one(ground: Ground, figures: Sequence[Shape]) -> list[Put]:
    """Those figures for which a place was found, in the order in which they were tried."""
    placed: list[Put] = []
    taken: dict[Shape, set[tuple[int, int]]] = {}
    without: set[Shape] = set()
    for figure in figures:
        if figure in without:
            continue
        put = _first_place(ground, figure, placed=placed, taken=taken)
        if put is None:
            without.add(figure)
        else:
            placed.append(put)
    return placed


def _first_place(
    ground: Ground,
    figure: Shape,
    *,
    placed: Sequence[Put],
    taken: dict[Shape, set[tuple[int, int]]],
) -> Put | None:
    """The first place that is free; notes in `taken` those that aren't, and never will be."""
    for lying in figure.ways_to_lie:
        seen = taken.setdefault(lying, set())
        for front, left in product(*_corners(ground, placed)):
            if (front, left) in seen:
                continue
            put = Put(shape=lying, left=left, front=front)
            if is_within(ground.base, put, edge=ground.edge) and all(
                is_apart(put, other, gap=ground.gap) for other in placed
            ):
                return put
            seen.add((front, left))
    return None


def _corners(ground: Ground, placed: Sequence[Put]) -> tuple[list[int], list[int]]:
    """Fronts and lefts worth trying: at the rim, beside what is placed, a fine grid on a disc."""
    lefts = {ground.edge, *(put.left + put.shape.width + ground.gap for put in placed)}
    fronts = {ground.edge, *(put.front + put.shape.depth + ground.gap for put in placed)}
    if ground.base.is_round:
        grid = {ground.base.width * number // FINE for number in range(FINE)}
        lefts |= grid
        fronts |= grid
    return sorted(fronts), sorted(lefts)
