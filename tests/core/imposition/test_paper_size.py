"""Sizes of paper."""

import pytest

from paradestate.core.imposition.paper_size import A4, LETTER, SIZES, Stock, a_size
from paradestate.core.outline import millimetres


def test_a4_and_letter_are_what_printers_have() -> None:
    assert (A4.name, A4.width, A4.height) == ("A4", millimetres(210), millimetres(297))
    assert (LETTER.width, LETTER.height) == (millimetres("215.9"), millimetres("279.4"))
    assert SIZES[Stock("letter")] is LETTER
    assert SIZES[Stock("a4")] is A4


def test_each_size_is_half_of_the_one_before() -> None:
    for number in range(8):
        larger, smaller = a_size(number), a_size(number + 1)
        assert smaller.height == larger.width
        assert smaller.width == larger.height // 2


def test_no_size_is_larger_than_the_first() -> None:
    with pytest.raises(ValueError, match="no size A-1"):
        a_size(-1)
