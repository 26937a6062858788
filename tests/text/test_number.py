"""Numbers from text."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.number import NumberRange, exactly, percent_text
from paradestate.text.number import (
    GREATEST,
    comma_slip,
    read_decimal,
    read_measure,
    read_part,
    read_percent,
    read_positive,
    read_range,
    read_whole,
)
from paradestate.text.slip import Slip
from tests.text.slips import code_of, value_of


@pytest.mark.parametrize(("text", "number"), [("1", 1), ("24", 24), ("007", 7), ("3.0", 3)])
def test_whole_numbers(text: str, number: int) -> None:
    assert value_of(read_whole(text)) == number


@pytest.mark.parametrize("text", ["0", "-1", "2.5"])
def test_broken_and_negative_numbers_are_not_whole(text: str) -> None:
    assert code_of(read_whole(text)) == "not-a-whole-number"


def test_the_least_may_be_nought() -> None:
    assert value_of(read_whole("0", least=0)) == 0


@pytest.mark.parametrize(
    "text",
    [
        *("", "inf", "nan", "1e5000000", "0x10", "1_000", "+3", "\u0663", "\uff13", "1.", ".5"),
        *("12:30", "no", "1 000", "--1", "9" * 16 + "x"),
    ],
)
def test_what_is_no_number_is_refused(text: str) -> None:
    assert code_of(read_decimal(text)) == "not-a-number"


@pytest.mark.parametrize("text", ["9" * 16, "-" + "9" * 16, f"0.{'3' * 16}"])
def test_of_too_many_digits_it_says_how_many_are_read(text: str) -> None:
    read = read_decimal(text)
    assert isinstance(read, Slip)
    assert read.code == "too-many-digits"
    assert read.message == f"{text} has 16 digits in a row; at most 15 are read."
    assert code_of(read_whole(text)) == code_of(read_measure(text)) == "too-many-digits"
    assert value_of(read_decimal(f"0.{'3' * 15}")) == Fraction(int("3" * 15), 10**15)


def test_a_fraction_and_a_range_may_be_too_long_too() -> None:
    assert code_of(read_measure(f"1/{'9' * 16}")) == "too-many-digits"
    assert code_of(read_range(f"1-{'9' * 16}")) == "too-many-digits"


def test_a_very_long_number_is_shown_by_its_beginning() -> None:
    read = read_decimal("7" * 5000)
    assert isinstance(read, Slip)
    assert read.message == f"{'7' * 40}... has 5000 digits in a row; at most 15 are read."


def test_numbers_are_bounded() -> None:
    assert value_of(read_decimal(str(GREATEST))) == GREATEST
    assert code_of(read_decimal(str(GREATEST + 1))) == "number-too-great"


def test_a_comma_is_not_a_point() -> None:
    read = read_decimal("3,50")
    assert code_of(read) == "comma-decimal"


def test_decimals_are_exact() -> None:
    assert value_of(read_decimal("0.1")) == Fraction(1, 10)
    assert value_of(read_decimal("-3.50")) == Fraction(-7, 2)


def test_positive_numbers() -> None:
    assert value_of(read_positive("0.86")) == Fraction(43, 50)
    assert code_of(read_positive("0")) == "not-above-nought"
    assert code_of(read_positive("x")) == "not-a-number"


@pytest.mark.parametrize(
    ("text", "number"),
    [("38.1", Fraction(381, 10)), ("3/4", Fraction(3, 4)), ("1 1/2", Fraction(3, 2))],
)
def test_numbers_as_on_a_ruler(text: str, number: Fraction) -> None:
    assert value_of(read_measure(text)) == number


def test_nothing_is_divided_by_nought() -> None:
    assert code_of(read_measure("1/0")) == "not-a-number"


@pytest.mark.parametrize("text", ["2-4", "2 - 4", "2–4"])
def test_ranges(text: str) -> None:
    assert value_of(read_range(text)) == NumberRange(least=2, most=4)


def test_a_single_number_is_a_range() -> None:
    assert value_of(read_range("3")) == exactly(3)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("4-2", "range-backwards"),
        ("0-4", "not-a-whole-number"),
        (f"1-{GREATEST + 1}", "not-a-whole-number"),
        ("two", "not-a-number"),
        ("0", "not-a-whole-number"),
    ],
)
def test_odd_ranges(text: str, code: str) -> None:
    assert code_of(read_range(text)) == code


@pytest.mark.parametrize("text", ["34", "x%", "101%", "-1%", "%"])
def test_odd_shares(text: str) -> None:
    assert code_of(read_percent(text)) == "not-a-share"


@given(st.fractions(min_value=0, max_value=1, max_denominator=500))
def test_a_share_reads_as_it_is_written(share: Fraction) -> None:
    assert value_of(read_percent(percent_text(share))) == share


def test_a_part_is_less_than_the_whole() -> None:
    assert value_of(read_part("50%")) == Fraction(1, 2)
    assert value_of(read_part("0%")) == 0
    for text in ("100%", "120%", "half"):
        assert code_of(read_part(text)) == "not-a-share"


def test_a_row_of_digits_without_end_is_refused_at_once() -> None:
    """Tried from each of its digits on this took minutes."""
    assert comma_slip("9" * 100_000) is None
    slip = comma_slip("1-3,50")
    assert slip is not None
    assert slip.hint == "Write 1-3.50."
