"""Lengths and outlines."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.outline import (
    Disc,
    Outline,
    Rectangle,
    decimal_text,
    inches,
    millimetres,
    outline_text,
)


def test_an_inch_is_25_4_millimetres() -> None:
    """International yard and pound agreement of 1959: 1 yard = 0.9144 m exactly."""
    assert inches(36) == millimetres(Fraction(9144, 10))
    assert (inches("3/2"), inches("3/4")) == (millimetres("38.1"), millimetres("19.05"))


@pytest.mark.parametrize(
    ("number", "text"),
    [
        (Fraction(40), "40"),
        (Fraction(381, 10), "38.1"),
        (Fraction(-1, 8), "-0.125"),
        (Fraction(1, 20), "0.05"),
        (Fraction(1, 3), "1/3"),
    ],
)
def test_a_number_is_written_exactly(number: Fraction, text: str) -> None:
    assert decimal_text(number) == text


@given(st.fractions(max_denominator=10_000))
def test_what_is_written_reads_as_the_same_number(number: Fraction) -> None:
    assert Fraction(decimal_text(number)) == number


@pytest.mark.parametrize(
    ("outline", "text"),
    [
        (None, "none"),
        (Disc(diameter=millimetres(30)), "30 mm disc"),
        (Rectangle(width=millimetres(40), depth=millimetres("19.05")), "40 x 19.05 mm"),
    ],
)
def test_an_outline_is_written_as_its_owner_does(outline: Outline | None, text: str) -> None:
    assert outline_text(outline) == text
