"""At how many losses something is reached."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.play.loss_limit import LossLimit, Threshold


@pytest.mark.parametrize(
    ("threshold", "total", "least"),
    [
        (Threshold(amount=Fraction(1, 3), is_share=True), 10, 4),
        (Threshold(amount=Fraction(1, 3), is_share=True), 9, 3),
        (Threshold(amount=Fraction(1, 2), is_share=True), 11, 6),
        (Threshold(amount=Fraction(1, 2), is_share=True, is_more=True), 11, 6),
        (Threshold(amount=Fraction(1, 2), is_share=True, is_more=True), 10, 6),
        (Threshold(amount=Fraction(1), is_share=True), 7, 7),
        (Threshold(amount=Fraction(5)), 10, 5),
        (Threshold(amount=Fraction(5), is_more=True), 10, 6),
    ],
)
def test_the_first_number_that_reaches_a_share(
    threshold: Threshold, total: int, least: int
) -> None:
    assert threshold.least(total) == least


@given(
    upper=st.integers(1, 12),
    lower=st.integers(1, 12),
    is_share=st.booleans(),
    is_more=st.booleans(),
    total=st.integers(0, 40),
)
def test_it_is_the_first_that_a_plain_count_finds(
    *, upper: int, lower: int, is_share: bool, is_more: bool, total: int
) -> None:
    amount = Fraction(upper, lower) if is_share else Fraction(upper)
    threshold = Threshold(amount=amount, is_share=is_share, is_more=is_more)
    wanted = amount * total if is_share else amount
    lost = 0
    while not (lost > wanted if is_more else lost >= wanted):
        lost += 1
    assert threshold.least(total) == lost


@pytest.mark.parametrize(
    ("threshold", "text"),
    [
        (Threshold(amount=Fraction(5)), "5"),
        (Threshold(amount=Fraction(1, 2), is_share=True, is_more=True), "more than half"),
        (Threshold(amount=Fraction(2, 5), is_share=True), "40%"),
        (Threshold(amount=Fraction(3, 7), is_share=True), "3/7"),
        (Threshold(amount=Fraction(1), is_share=True), "all"),
    ],
)
def test_as_the_owner_writes_it(threshold: Threshold, text: str) -> None:
    assert str(threshold) == text


def test_stands_are_counted_unless_it_says_otherwise() -> None:
    assert LossLimit(at={}).counts_stands
    assert LossLimit(at={}, count="figures").counts_stands
    assert not LossLimit(at={}, count="leaders hit").counts_stands
