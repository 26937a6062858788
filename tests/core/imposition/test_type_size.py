"""Sizes of type."""

from fractions import Fraction

from paradestate.core.imposition.type_size import (
    USUAL_DISTANCE,
    X_HEIGHT,
    least_type_size,
    length_of_points,
    points,
    reading_distance,
)
from paradestate.core.outline import millimetres


def test_at_60_cm_an_x_has_to_be_1_75_mm_high() -> None:
    """Computation 3.19; 1.75 mm at 600 mm is 10 minutes of arc."""
    assert least_type_size(USUAL_DISTANCE) * X_HEIGHT == Fraction("1.75")
    assert round(points(least_type_size(USUAL_DISTANCE))) == 10


def test_twice_as_far_away_type_is_twice_as_large() -> None:
    assert least_type_size(millimetres(1200)) == 2 * least_type_size(millimetres(600))
    assert reading_distance(least_type_size(millimetres(450))) == 450


def test_72_points_are_an_inch() -> None:
    assert points(millimetres("25.4")) == 72
    assert length_of_points(Fraction(36)) == Fraction("12.7")
