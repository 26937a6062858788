"""Crowding, and whether figures fit their stand."""

from collections import Counter
from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.fit import Fit, Fits, area, crowding, fit, fit_in_columns, grid_fit
from paradestate.core.outline import Disc, Millimetres, Outline, Rectangle, inches, millimetres
from paradestate.core.spot import Spot

BASE = Rectangle(width=millimetres(40), depth=millimetres(20))
FIGURE = Disc(diameter=millimetres(6))
ONE = millimetres(1)
NONE = millimetres(0)


def box(width: int | str, depth: int | str) -> Rectangle:
    return Rectangle(width=millimetres(width), depth=millimetres(depth))


def disc(diameter: int | str) -> Disc:
    return Disc(diameter=millimetres(diameter))


@pytest.mark.parametrize(
    ("number", "share"),
    [(2, "0.071"), (3, "0.106"), (4, "0.141"), (5, "0.177"), (6, "0.212"), (8, "0.283")],
)
def test_crowding_of_figures_of_6_mm_on_40_by_20(number: int, share: str) -> None:
    found = crowding(BASE, {FIGURE: number})
    assert abs(found - Fraction(share)) <= Fraction(1, 2000)


def test_on_a_disc_the_circle_number_cancels() -> None:
    assert crowding(disc(30), {disc(6): 2}) == Fraction(2, 25)


def test_ten_figures_stand_in_rows() -> None:
    assert grid_fit(BASE, FIGURE, edge=ONE, gap=ONE) == 10
    assert grid_fit(box(5, 5), FIGURE, edge=ONE, gap=ONE) == 0


def test_three_15_mm_figures_stand_on_an_inch_and_a_quarter_by_one() -> None:
    """Common practice, no source; the figure's own disc of 10 mm is ours."""
    base = Rectangle(width=inches("5/4"), depth=inches(1))
    assert (base.width, base.depth) == (millimetres("31.75"), millimetres("25.4"))
    figures: list[Outline] = [disc(10)] * 3
    assert fit(base, figures, edge=NONE, gap=NONE).fits is Fits.YES
    assert crowding(base, Counter(figures)) < Fraction(3, 10)


def test_ten_fit_and_twelve_find_no_place() -> None:
    assert fit(BASE, [FIGURE] * 10, edge=ONE, gap=ONE).fits is Fits.YES
    twelve = fit(BASE, [FIGURE] * 12, edge=ONE, gap=ONE)
    assert twelve.fits is Fits.NOT_FOUND
    assert len(twelve.spots) == 10


def test_more_area_than_the_stand_has_is_proved_not_to_fit() -> None:
    assert fit(box(10, 10), [box(10, 6), box(10, 6)], edge=NONE, gap=NONE).fits is Fits.NO


def test_a_rectangle_is_turned_where_that_helps() -> None:
    placed = fit(box(34, 16), [box(15, 34)], edge=NONE, gap=NONE)
    assert placed.fits is Fits.YES
    assert placed.spots[0].outline == box(34, 15)


def test_what_does_not_stand_in_columns_may_still_fit() -> None:
    figures = [box(20, 10), *[box(10, 10)] * 4]
    assert fit_in_columns(box(20, 30), figures, edge=NONE, gap=NONE) is None
    placed = fit(box(20, 30), figures, edge=NONE, gap=NONE)
    assert (placed.fits, len(placed.spots)) == (Fits.YES, 5)


def test_of_figures_that_do_not_all_fit_the_others_are_placed() -> None:
    placed = fit(box(30, 10), [box(34, 15), disc(6), disc(6)], edge=ONE, gap=ONE)
    assert placed.fits is Fits.NO
    assert [spot.outline for spot in placed.spots] == [disc(6), disc(6)]


def test_no_figures_fit_anywhere() -> None:
    assert fit(box(1, 1), [], edge=ONE, gap=ONE) == Fit(fits=Fits.YES, spots=())


def test_figures_on_a_disc() -> None:
    assert fit(disc(30), [disc(6), disc(6)], edge=ONE, gap=ONE).fits is Fits.YES
    assert fit(disc(30), [box(10, 14), disc(6)], edge=ONE, gap=ONE).fits is Fits.YES
    assert fit(disc(10), [disc(9)], edge=ONE, gap=ONE).fits is Fits.NOT_FOUND
    assert fit(disc(20), [box(15, 15)], edge=NONE, gap=NONE).fits is Fits.NOT_FOUND
    assert fit(disc(4), [disc(3)], edge=millimetres(3), gap=ONE).fits is Fits.NOT_FOUND


def overlap(one: Spot, other: Spot, *, gap: Millimetres) -> bool:
    """Slow second opinion: sample points of the one against the widened other."""
    if isinstance(one.outline, Disc) and isinstance(other.outline, Disc):
        across = (one.left + one.width / 2) - (other.left + other.width / 2)
        deep = (one.front + one.depth / 2) - (other.front + other.depth / 2)
        return across**2 + deep**2 < ((one.width + other.width) / 2 + gap) ** 2
    apart_across = abs((2 * one.left + one.width) - (2 * other.left + other.width))
    apart_deep = abs((2 * one.front + one.depth) - (2 * other.front + other.depth))
    close_across = apart_across < one.width + other.width + 2 * gap
    return close_across and apart_deep < one.depth + other.depth + 2 * gap


def corners(spot: Spot) -> list[tuple[Fraction, Fraction]]:
    return [
        (x, y)
        for x in (spot.left, spot.left + spot.width)
        for y in (spot.front, spot.front + spot.depth)
    ]


def is_inside(base: Outline, spot: Spot, *, edge: Millimetres) -> bool:
    if isinstance(base, Rectangle):
        return all(
            edge <= x <= base.width - edge and edge <= y <= base.depth - edge
            for x, y in corners(spot)
        )
    middle = base.diameter / 2
    room = middle - edge
    if isinstance(spot.outline, Disc):
        x, y = spot.left + spot.width / 2 - middle, spot.front + spot.depth / 2 - middle
        reach = room - spot.outline.diameter / 2
        return reach >= 0 and x**2 + y**2 <= reach**2
    return room >= 0 and all(
        (x - middle) ** 2 + (y - middle) ** 2 <= room**2 for x, y in corners(spot)
    )


SIDES = st.integers(3, 15)
FIGURES = st.lists(
    SIDES.map(disc) | st.tuples(SIDES, SIDES).map(lambda sides: box(*sides)), min_size=1, max_size=5
)
BASES = st.tuples(st.integers(10, 40), st.integers(10, 40)).map(lambda sides: box(*sides)) | (
    st.integers(10, 40).map(disc)
)


@given(
    base=BASES,
    figures=FIGURES,
    edge=st.fractions(0, 3, max_denominator=8).map(millimetres),
    gap=st.fractions(0, 2, max_denominator=8).map(millimetres),
)
def test_what_is_placed_is_inside_and_apart(
    *, base: Outline, figures: list[Outline], edge: Millimetres, gap: Millimetres
) -> None:
    placed = fit(base, figures, edge=edge, gap=gap)
    assert all(is_inside(base, spot, edge=edge) for spot in placed.spots)
    assert not any(overlap(one, other, gap=gap) for one, other in combinations(placed.spots, 2))
    if placed.fits is Fits.YES:
        assert len(placed.spots) == len(figures)
        assert sum(area(figure) for figure in figures) <= area(base)
