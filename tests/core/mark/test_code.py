"""What marks are made of, and how many parts they differ in."""

from dataclasses import replace

import pytest

from paradestate.core.mark.code import (
    LEAST_SIGNS,
    SIGNS,
    Mark,
    Sign,
    fields_apart,
    grid_of,
    least_fields_apart,
    most_marks,
)

RED = Mark(colour="red", value="AA0000", bars=2, sign=Sign.CHEVRON)


def test_sixteen_codes_of_four_colours_and_bars_differ_in_two_parts() -> None:
    """Check value of the design."""
    grid = grid_of(4, (0, 1, 2, 3))
    marks = [
        Mark(colour=f"{company}", value="", bars=bars, sign=grid.sign(company, bars=bars))
        for company in range(4)
        for bars in range(4)
    ]
    assert len(set(marks)) == 16 == most_marks(colours=4, bars=4, signs=4)
    assert least_fields_apart(marks) == 2


def test_the_third_company_with_three_bars_has_the_second_sign() -> None:
    """Check value of the design: a = 2, b = 3, c = 1."""
    assert grid_of(4, range(4)).sign(2, bars=3) is SIGNS[1]
    assert grid_of(4, range(4)).sign(2, bars=2) is SIGNS[0]


@pytest.mark.parametrize(
    ("companies", "bars", "signs"),
    [(1, (0,), 4), (4, (0, 1, 2, 3), 4), (5, (0, 1), 5), (3, range(7), 7), (0, (), 4)],
)
def test_there_are_as_many_signs_as_companies_and_numbers_of_bars(
    companies: int, bars: tuple[int, ...], signs: int
) -> None:
    assert grid_of(companies, bars).signs == signs
    assert grid_of(companies, bars).is_held


def test_more_companies_or_bars_than_signs_are_not_held() -> None:
    assert not grid_of(9, (0,)).is_held
    assert not grid_of(2, range(9)).is_held
    assert grid_of(2, range(1, 9)).is_held
    assert len(SIGNS) == 8


def test_a_grid_is_full_where_every_number_of_bars_is_used() -> None:
    assert grid_of(4, (0, 1, 2, 3)).is_full
    assert not grid_of(4, (1, 2, 3)).is_full
    assert LEAST_SIGNS == 4


def test_parts_are_colour_bars_and_sign_and_the_value_is_none() -> None:
    assert fields_apart(RED, replace(RED, value="BB0000", has_rear_bar=True)) == 0
    assert fields_apart(RED, replace(RED, bars=1)) == 1
    assert fields_apart(RED, Mark(colour="", value="", bars=0, sign=None)) == 3


def test_on_the_plain_plate_the_number_is_the_check() -> None:
    plain = [Mark(colour="", value="", bars=bars, sign=None) for bars in (0, 1, 2)]
    assert least_fields_apart(plain) == 2
    assert least_fields_apart(plain[:1]) is None
    assert least_fields_apart([RED, RED]) is None


def test_no_sign_meant_a_company_on_a_vehicle() -> None:
    assert not {"triangle", "square", "circle", "diamond"} & set(SIGNS)
