"""Lengths, outlines and scales from text."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.outline import Disc, Millimetres, Rectangle, millimetres, outline_text
from paradestate.core.table import Line
from paradestate.text.length import (
    footprint_text,
    ground_scale_text,
    length_text,
    line_text,
    read_base,
    read_footprint,
    read_ground_scale,
    read_length,
    read_line,
    read_outline,
    read_rectangle,
    read_thickness,
    read_tray_place,
    tray_place_text,
)
from tests.text.slips import code_of, value_of


@pytest.mark.parametrize(
    ("text", "length"), [("40 mm", "40"), ("4cm", "40"), ("1 in", "25.4"), ("0 mm", "0")]
)
def test_lengths_have_a_unit(text: str, length: str) -> None:
    assert value_of(read_length(text)) == millimetres(length)


def test_inches_are_exact() -> None:
    """An inch is 25.4 mm (international yard and pound agreement, 1959)."""
    read = value_of(read_outline("1 1/2 x 3/4 in"))
    assert read == Rectangle(width=millimetres("38.1"), depth=millimetres("19.05"))


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("40", "length-without-unit"),
        ("40 feet", "length-without-unit"),
        ("1,5", "comma-decimal"),
        ("x mm", "not-a-number"),
        ("-1 mm", "length-out-of-bounds"),
        ("200000 mm", "length-out-of-bounds"),
    ],
)
def test_odd_lengths(text: str, code: str) -> None:
    assert code_of(read_length(text)) == code


@pytest.mark.parametrize("text", ["40 x 20 mm", "4 cm x 20 mm", "40 × 20 mm", "40 mm x 2 cm"])
def test_rectangles_are_front_by_depth(text: str) -> None:
    expected = Rectangle(width=millimetres(40), depth=millimetres(20))
    assert value_of(read_rectangle(text)) == expected


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("40 mm", "not-an-outline"),
        ("1,5", "comma-decimal"),
        ("40 x 20", "length-without-unit"),
        ("x x 20 mm", "not-a-number"),
        ("0 x 20 mm", "not-above-nought"),
        ("0 mm disc", "not-above-nought"),
        ("wide disc", "length-without-unit"),
    ],
)
def test_odd_outlines(text: str, code: str) -> None:
    assert code_of(read_outline(text)) == code


@pytest.mark.parametrize("text", ["0 x 29.4 mm", "42 x 22 mm turned"])
def test_places_in_a_tray_are_read_as_they_are_written(text: str) -> None:
    place = value_of(read_tray_place(text))
    assert place.is_turned is text.endswith("turned")
    assert tray_place_text(place) == text
    assert value_of(read_tray_place("1 cm x 2 mm")).across == 10


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("40 mm", "not-a-place"),
        ("1,5", "comma-decimal"),
        ("40 x 20", "length-without-unit"),
        ("x x 20 mm", "not-a-number"),
        ("0 x -2 mm turned", "length-out-of-bounds"),
    ],
)
def test_odd_places_in_a_tray(text: str, code: str) -> None:
    assert code_of(read_tray_place(text)) == code


def test_discs_bases_and_footprints() -> None:
    disc = Disc(diameter=millimetres(30))
    assert value_of(read_outline("30 mm disc")) == disc
    assert value_of(read_footprint("30 mm")) == disc
    assert value_of(read_footprint("30 mm disc")) == disc
    assert value_of(read_footprint("15 x 34 mm")) == value_of(read_rectangle("15 x 34 mm"))
    assert code_of(read_footprint("wide")) == "length-without-unit"
    assert read_base("none") is None
    assert read_base("30 mm disc") == disc


SIZES = st.fractions(min_value=Fraction(1, 10), max_value=900, max_denominator=100).map(Millimetres)
OUTLINES = SIZES.map(lambda size: Disc(diameter=size)) | st.tuples(SIZES, SIZES).map(
    lambda sides: Rectangle(width=sides[0], depth=sides[1])
)


@given(OUTLINES)
def test_an_outline_reads_as_it_is_written(outline: Disc | Rectangle) -> None:
    assert value_of(read_outline(outline_text(outline))) == outline
    assert value_of(read_footprint(footprint_text(outline))) == outline


@given(SIZES)
def test_a_length_reads_as_it_is_written(length: Millimetres) -> None:
    assert value_of(read_length(length_text(length))) == length


@given(st.fractions(min_value=Fraction(1, 50), max_value=50, max_denominator=50))
def test_a_ground_scale_reads_as_it_is_written(scale: Fraction) -> None:
    assert value_of(read_ground_scale(ground_scale_text(scale))) == scale


@pytest.mark.parametrize("text", ["1:1000", "1 mm = 1", "1 mm = x m", "0 mm = 1 m", "1 = 1 m"])
def test_odd_ground_scales(text: str) -> None:
    assert code_of(read_ground_scale(text)) == "not-a-ground-scale"


@given(st.integers(1, 20), SIZES)
def test_a_line_of_stands_reads_as_it_is_written(number: int, width: Millimetres) -> None:
    line = Line(number=number, width=width)
    assert value_of(read_line(line_text(line))) == line


def test_a_line_is_written_as_a_number_by_a_front() -> None:
    assert line_text(Line(number=2, width=millimetres(50))) == "2 x 50 mm"


@pytest.mark.parametrize("text", ["2", "x x 50 mm", "2 x 50", "2 by 50 mm"])
def test_odd_lines(text: str) -> None:
    assert code_of(read_line(text)) == "not-a-line"


def test_a_thickness_is_above_nought() -> None:
    assert value_of(read_thickness("0.1 mm")) == Fraction(1, 10)
    assert code_of(read_thickness("0 mm")) == "not-above-nought"
    assert code_of(read_thickness("0.1")) == "length-without-unit"
