"""Ranges and shares."""

from fractions import Fraction

from paradestate.core.number import NONE, NumberRange, exactly, percent_text, summed


def test_a_range_holds_both_its_ends() -> None:
    companies = NumberRange(least=2, most=4)
    assert [number in companies for number in (1, 2, 4, 5)] == [False, True, True, False]
    assert not companies.is_single
    assert exactly(3).is_single


def test_ranges_add_and_multiply_end_by_end() -> None:
    men = NumberRange(least=9, most=11)
    assert men + exactly(4) == NumberRange(least=13, most=15)
    assert men * 3 == NumberRange(least=27, most=33)
    assert NONE + men == men


def test_a_range_is_written_with_a_dash() -> None:
    assert str(NumberRange(least=2, most=4)) == "2-4"
    assert str(exactly(4)) == "4"


def test_a_share_is_written_with_a_sign() -> None:
    assert percent_text(Fraction(34, 100)) == "34%"
    assert percent_text(Fraction(1, 3)) == "100/3%"


def test_numbers_are_added_up_by_name_in_the_order_in_which_names_come() -> None:
    found = summed([{"officer": 1, "rifleman": 0}, {"rifleman": 2, "officer": 3}, {}])
    assert list(found.items()) == [("officer", 4), ("rifleman", 2)]
    assert summed([]) == {}
