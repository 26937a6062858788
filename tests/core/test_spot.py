"""Places of figures, in whole units."""

from fractions import Fraction

import pytest

from paradestate.core.outline import Disc, Rectangle, inches, millimetres
from paradestate.core.spot import Put, Ruler, Shape, Spot, is_apart, is_within, ruler_for

SQUARE = Shape(width=10, depth=10, is_round=False)
ROUND = Shape(width=10, depth=10, is_round=True)
LONG = Shape(width=6, depth=14, is_round=False)


def put(shape: Shape, left: int, *, front: int) -> Put:
    return Put(shape=shape, left=left, front=front)


def test_a_ruler_measures_what_it_was_made_for_exactly() -> None:
    seventh = millimetres("7/3")
    box = Rectangle(width=inches("5/4"), depth=seventh)
    ruler = ruler_for((box,), millimetres(1))
    assert ruler == Ruler(per_millimetre=300)
    assert ruler.shape(box) == Shape(width=9525, depth=700, is_round=False)
    assert ruler.length(seventh) == 700


def test_a_place_is_told_in_millimetres() -> None:
    ruler = Ruler(per_millimetre=100)
    disc = ruler.spot(put(Shape(width=600, depth=600, is_round=True), 325, front=50))
    assert disc == Spot(
        outline=Disc(diameter=millimetres(6)), left=Fraction(13, 4), front=Fraction(1, 2)
    )
    assert disc.width == disc.depth == millimetres(6)
    box = ruler.spot(put(Shape(width=600, depth=1400, is_round=False), 0, front=0))
    assert (box.width, box.depth) == (millimetres(6), millimetres(14))


def test_only_a_rectangle_can_be_turned() -> None:
    assert ROUND.ways_to_lie == (ROUND,)
    assert SQUARE.ways_to_lie == (SQUARE,)
    assert LONG.ways_to_lie == (LONG, Shape(width=14, depth=6, is_round=False))


@pytest.mark.parametrize(
    ("left", "front", "within"),
    [(2, 2, True), (1, 2, False), (2, 1, False), (28, 8, True), (29, 8, False), (28, 9, False)],
)
def test_the_edges_of_a_rectangle(left: int, front: int, *, within: bool) -> None:
    base = Shape(width=40, depth=20, is_round=False)
    assert is_within(base, put(SQUARE, left, front=front), edge=2) is within


def test_the_rim_of_a_disc() -> None:
    """A disc reaches the rim along a line from the middle, a rectangle with its corners."""
    base = Shape(width=50, depth=50, is_round=True)
    assert is_within(base, put(ROUND, 0, front=20), edge=0)
    assert not is_within(base, put(ROUND, 0, front=20), edge=1)
    assert not is_within(base, put(SQUARE, 0, front=20), edge=0)
    assert is_within(base, put(Shape(width=30, depth=40, is_round=False), 10, front=5), edge=0)
    assert not is_within(base, put(Shape(width=30, depth=40, is_round=False), 9, front=5), edge=0)
    assert not is_within(base, put(ROUND, 20, front=20), edge=26)


def test_discs_are_apart_by_their_rims_and_boxes_by_their_sides() -> None:
    """Centres 8 and 6 away from each other are 10 apart."""
    assert is_apart(put(ROUND, 0, front=0), put(ROUND, 8, front=6), gap=0)
    assert not is_apart(put(ROUND, 0, front=0), put(ROUND, 8, front=6), gap=1)
    assert not is_apart(put(SQUARE, 0, front=0), put(ROUND, 8, front=6), gap=0)
    assert is_apart(put(SQUARE, 0, front=0), put(SQUARE, 12, front=0), gap=2)
    assert is_apart(put(SQUARE, 0, front=0), put(LONG, 0, front=12), gap=2)
    assert not is_apart(put(SQUARE, 0, front=0), put(LONG, 0, front=11), gap=2)
