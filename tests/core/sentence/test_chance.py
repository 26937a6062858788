"""Chances in words."""

from fractions import Fraction

import pytest

from paradestate.core.sentence.chance import chance_words, hundredths_words, near_text


@pytest.mark.parametrize(
    ("share", "words"),
    [
        (Fraction(13, 18), "72 in 100"),
        (Fraction(1, 8), "13 in 100"),
        (Fraction(0), "0 in 100"),
        (Fraction(1), "100 in 100"),
        (Fraction(1, 201), "less than 1 in 100"),
        (Fraction(1, 200), "1 in 100"),
        (Fraction(200, 201), "more than 99 in 100"),
        (Fraction(199, 200), "more than 99 in 100"),
        (Fraction(198, 200), "99 in 100"),
    ],
)
def test_none_and_all_are_said_only_where_it_is_so(share: Fraction, words: str) -> None:
    assert hundredths_words(share) == words


@pytest.mark.parametrize(
    ("chance", "words"),
    [
        (Fraction(13, 27), "13/27, 48 in 100"),
        (Fraction(0), "never"),
        (Fraction(1), "always"),
        (Fraction(1, 1000), "1/1000, less than 1 in 100"),
        (Fraction(31031, 46656), "31031/46656, 67 in 100"),
        (Fraction(1346704211, 2176782336), "about 62 in 100"),
        (Fraction(1, 1234567890), "less than 1 in 100"),
    ],
)
def test_a_chance_is_told_exactly_where_that_is_short(chance: Fraction, words: str) -> None:
    assert chance_words(chance) == words


@pytest.mark.parametrize(
    ("number", "text"),
    [
        (Fraction(154, 9), "17.11"),
        (Fraction(173, 18), "9.61"),
        (Fraction(9), "9"),
        (Fraction(100), "100"),
        (Fraction(17, 2), "8.5"),
        (Fraction(-1, 3), "-0.33"),
        (Fraction(1, 999), "0"),
    ],
)
def test_a_mean_is_told_to_two_decimals(number: Fraction, text: str) -> None:
    assert near_text(number) == text
