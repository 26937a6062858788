"""Numbers from nought up with the least squares."""

from fractions import Fraction

import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import nnls

from paradestate.core.work.least_squares import least_squares

Rows = list[list[int]]


def normal(rows: Rows, wanted: list[int]) -> tuple[list[list[Fraction]], list[Fraction]]:
    """The matrix and vector of a table of measurements, and one more of each number alone."""
    number = len(rows[0])
    alone = [[int(at == other) for other in range(number)] for at in range(number)]
    every, values = [*rows, *alone], [*wanted, *([0] * number)]
    matrix = [
        [Fraction(sum(row[one] * row[two] for row in every)) for two in range(number)]
        for one in range(number)
    ]
    pairs = list(zip(every, values, strict=True))
    return matrix, [Fraction(sum(row[at] * value for row, value in pairs)) for at in range(number)]


tables = st.integers(1, 5).flatmap(
    lambda number: st.lists(
        st.tuples(
            st.lists(st.integers(-9, 9), min_size=number, max_size=number), st.integers(-99, 99)
        ),
        min_size=1,
        max_size=8,
    )
)


@settings(max_examples=150)
@given(tables)
def test_nothing_better_is_near_and_another_program_finds_the_same(
    table: list[tuple[list[int], int]],
) -> None:
    """The conditions of Karush, Kuhn and Tucker, and scipy's nnls (Lawson and Hanson, 1974)."""
    rows, wanted = [row for row, _ in table], [value for _, value in table]
    matrix, vector = normal(rows, wanted)
    found = least_squares(matrix, vector)
    for at, row in enumerate(matrix):
        slope = sum(a * x for a, x in zip(row, found, strict=True)) - vector[at]
        assert found[at] >= 0
        assert slope >= 0
        assert found[at] * slope == 0
    number = len(rows[0])
    every = numpy.vstack([numpy.array(rows, dtype=float), numpy.eye(number)])
    theirs, _ = nnls(every, numpy.array([*wanted, *([0] * number)], dtype=float))
    assert [float(each) for each in found] == pytest.approx(list(theirs), abs=1e-7)


def test_a_number_that_would_fall_below_nought_is_nought() -> None:
    matrix = [[Fraction(2), Fraction(1)], [Fraction(1), Fraction(2)]]
    assert least_squares(matrix, [Fraction(3), Fraction(0)]) == (Fraction(3, 2), Fraction(0))
    assert least_squares(matrix, [Fraction(3), Fraction(3)]) == (Fraction(1), Fraction(1))
    assert least_squares(matrix, [Fraction(-1), Fraction(-1)]) == (Fraction(0), Fraction(0))


def test_one_that_was_set_to_nought_too_soon_comes_back() -> None:
    """Without the others each is below nought; with them at nought the last is above it."""
    matrix = [[Fraction(a) for a in row] for row in ((5, 4, -2), (4, 5, -3), (-2, -3, 3))]
    vector = [Fraction(1), Fraction(-3), Fraction(1)]
    found = least_squares(matrix, vector)
    slopes = [
        sum(a * x for a, x in zip(r, found, strict=True)) - v
        for r, v in zip(matrix, vector, strict=True)
    ]
    assert min(slopes) >= 0
    assert [x * slope for x, slope in zip(found, slopes, strict=True)] == [0, 0, 0]


def test_where_exchanging_all_at_once_goes_round_it_is_done_one_by_one() -> None:
    """A matrix, found by drawing many, for which exchanging all comes back to where it began."""
    matrix = [
        [Fraction(a) for a in row]
        for row in ((71, 78, -38, -47), (78, 98, -21, -45), (-38, -21, 114, 31), (-47, -45, 31, 44))
    ]
    vector = [Fraction(each) for each in (4, 2, 2, -4)]
    found = least_squares(matrix, vector)
    slopes = [
        sum((a * x for a, x in zip(row, found, strict=True)), -each)
        for row, each in zip(matrix, vector, strict=True)
    ]
    assert min(found) >= 0
    assert min(slopes) >= 0
    assert [x * slope for x, slope in zip(found, slopes, strict=True)] == [0, 0, 0, 0]


def test_a_matrix_that_tells_nothing_apart_is_refused() -> None:
    same = [[Fraction(1), Fraction(1)], [Fraction(1), Fraction(1)]]
    with pytest.raises(ValueError, match="positive definite"):
        least_squares(same, [Fraction(1), Fraction(1)])
