"""Exact chances of whole numbers."""

from fractions import Fraction

import pytest

from paradestate.core.support.chances import Chances, chances

DIE = chances(dict.fromkeys(range(1, 7), 1))


def test_chances_are_kept_in_lowest_terms_with_numbers_rising() -> None:
    made = chances({3: 4, 1: 2, 2: 0})
    assert made == Chances(counts={1: 1, 3: 2}, ways=3)
    assert list(made.counts) == [1, 3]


def test_one_die() -> None:
    assert DIE.of(6) == Fraction(1, 6)
    assert DIE.of(7) == 0
    assert DIE.at_least(3) == Fraction(2, 3)
    assert DIE.mean == Fraction(7, 2)


def test_a_quantile_is_the_least_number_that_is_reached_so_often() -> None:
    assert [DIE.quantile(Fraction(n, 6)) for n in range(1, 7)] == [1, 2, 3, 4, 5, 6]
    assert DIE.quantile(Fraction(1, 2)) == 3
    with pytest.raises(ValueError, match="no share"):
        DIE.quantile(Fraction(7, 6))


def test_numbers_may_be_moved_or_become_others() -> None:
    assert DIE.moved(10).counts == dict.fromkeys(range(11, 17), 1)
    assert DIE.become(lambda number: number // 4) == Chances(counts={0: 1, 1: 1}, ways=2)
