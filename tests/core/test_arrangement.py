"""Figures spread over their stand."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.arrangement import Arrangement, Ground, arranged
from paradestate.core.spot import Shape, is_apart, is_within

FIGURE = Shape(width=600, depth=600, is_round=True)
TRUCK = Shape(width=1500, depth=3400, is_round=False)


def ground(width: int, depth: int, *, edge: int = 100, gap: int = 100) -> Ground:
    base = Shape(width=width, depth=depth, is_round=False)
    return Ground(base=base, edge=edge, gap=gap)


def disc(width: int) -> Ground:
    return Ground(base=Shape(width=width, depth=width, is_round=True), edge=100, gap=100)


def lefts(found: Arrangement | None) -> list[int]:
    assert found is not None
    return [put.left for put in found.puts]


def fronts(found: Arrangement | None) -> list[int]:
    assert found is not None
    return [put.front for put in found.puts]


def test_four_figures_stand_in_a_row_with_even_spaces() -> None:
    found = arranged(ground(4000, 2000), [FIGURE] * 4)
    assert lefts(found) == [320, 1240, 2160, 3080]
    assert fronts(found) == [700] * 4
    assert found is not None
    assert found.room == 220


def test_six_figures_stand_in_two_rows_since_that_is_roomier() -> None:
    found = arranged(ground(4000, 2000), [FIGURE] * 6)
    assert lefts(found) == [550, 550, 1700, 1700, 2850, 2850]


@pytest.mark.parametrize(
    ("figures", "columns"), [(5, [2, 1, 2]), (7, [2, 3, 2]), (8, [3, 2, 3]), (9, [3, 3, 3])]
)
def test_columns_are_the_same_on_both_sides(figures: int, columns: list[int]) -> None:
    found = arranged(ground(3000, 3000), [FIGURE] * figures)
    every = lefts(found)
    assert [every.count(left) for left in dict.fromkeys(every)] == columns


def test_a_large_model_stands_in_the_middle() -> None:
    found = arranged(ground(6000, 5000), [TRUCK, *[FIGURE] * 6])
    assert found is not None
    assert [put.shape for put in found.puts] == [*[FIGURE] * 3, TRUCK, *[FIGURE] * 3]


def test_rectangles_are_turned_only_where_they_do_not_fit_as_they_are() -> None:
    upright = arranged(ground(6000, 5000), [TRUCK])
    lying = arranged(ground(6000, 2000), [TRUCK])
    assert upright is not None
    assert lying is not None
    assert upright.puts[0].shape == TRUCK
    assert lying.puts[0].shape == Shape(width=3400, depth=1500, is_round=False)


def test_two_figures_stand_side_by_side_in_the_middle_of_a_disc() -> None:
    found = arranged(disc(3000), [FIGURE] * 2)
    left, right = lefts(found)
    assert fronts(found) == [1200, 1200]
    assert abs(left - (3000 - 600 - right)) <= 1, "but for one unit that can't be halved"


def test_what_has_no_room_is_not_arranged() -> None:
    assert arranged(ground(4000, 2000), [FIGURE] * 12) is None
    assert arranged(disc(1000), [FIGURE] * 4) is None
    assert arranged(disc(3000), [TRUCK, TRUCK]) is None


def test_narrow_columns_may_stand_in_a_narrow_place_only_if_they_are_few() -> None:
    assert arranged(ground(900, 9000), [FIGURE] * 8) is not None
    found = arranged(ground(2400, 9000), [TRUCK, *[FIGURE] * 5])
    assert found is not None
    assert len(found.puts) == 6


SIDES = st.integers(300, 1500)
SHAPES = st.lists(
    SIDES.map(lambda side: Shape(width=side, depth=side, is_round=True))
    | st.tuples(SIDES, SIDES).map(
        lambda sides: Shape(width=sides[0], depth=sides[1], is_round=False)
    ),
    min_size=1,
    max_size=9,
)
BASES = st.tuples(st.integers(1000, 7000), st.integers(1000, 7000)).map(
    lambda sides: Shape(width=sides[0], depth=sides[1], is_round=False)
) | st.integers(1000, 7000).map(lambda side: Shape(width=side, depth=side, is_round=True))


@given(base=BASES, figures=SHAPES, edge=st.integers(0, 200), gap=st.integers(0, 200))
def test_none_overlap_none_pass_the_edge_and_the_room_is_there(
    *, base: Shape, figures: list[Shape], edge: int, gap: int
) -> None:
    found = arranged(Ground(base=base, edge=edge, gap=gap), figures)
    if found is None:
        return
    assert len(found.puts) == len(figures)
    assert sorted(put.shape.width * put.shape.depth for put in found.puts) == sorted(
        figure.width * figure.depth for figure in figures
    )
    assert all(is_within(base, put, edge=edge + found.room) for put in found.puts)
    assert all(
        is_apart(one, other, gap=gap + found.room) for one, other in combinations(found.puts, 2)
    )
