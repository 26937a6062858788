"""Dice as a value."""

import pytest

from paradestate.core.dice import NOUGHT, Dice, Fixed, Keep, LookUp, Row, SignedTerm, Throw

TWO_D6 = SignedTerm(term=Throw(number=2, sides=6))


def dice(*terms: SignedTerm, at_least: int | None = None, at_most: int | None = None) -> Dice:
    return Dice(terms=terms, at_least=at_least, at_most=at_most)


def fixed(number: int, *, minus: bool = False) -> SignedTerm:
    return SignedTerm(term=Fixed(number=number), minus=minus)


@pytest.mark.parametrize(
    ("text", "term"),
    [
        ("2d6", Throw(number=2, sides=6)),
        ("2d6 x 10", Throw(number=2, sides=6, times=10)),
        ("best 2 of 3d6", Throw(number=3, sides=6, keep=Keep.BEST, kept=2)),
        ("worst 1 of 2d8", Throw(number=2, sides=8, keep=Keep.WORST, kept=1)),
    ],
)
def test_a_throw_is_written_as_the_trade_does(text: str, term: Throw) -> None:
    assert str(dice(SignedTerm(term=term))) == text


def test_a_sum_is_written_with_its_signs_and_bounds() -> None:
    whole = dice(fixed(18), TWO_D6, fixed(1, minus=True), at_least=20, at_most=28)
    assert str(whole) == "18 + 2d6 - 1, at least 20, at most 28"
    assert str(dice(fixed(2, minus=True), TWO_D6)) == "-2 + 2d6"


def test_totals_are_all_that_can_come_up() -> None:
    assert dice(TWO_D6).totals() == tuple(range(2, 13))
    assert dice(fixed(18), TWO_D6).totals() == tuple(range(20, 31))
    assert dice(fixed(10), SignedTerm(term=Throw(number=1, sides=4), minus=True)).totals() == (
        6,
        7,
        8,
        9,
    )
    times = SignedTerm(term=Throw(number=1, sides=3, times=10))
    assert dice(times).totals() == (10, 20, 30)
    best = SignedTerm(term=Throw(number=3, sides=6, keep=Keep.BEST, kept=2))
    assert dice(best).totals() == tuple(range(2, 13))


def test_bounds_hold_the_totals() -> None:
    assert dice(TWO_D6, at_least=4, at_most=6).totals() == (4, 5, 6)


def test_nought_is_nothing() -> None:
    assert NOUGHT.totals() == (0,)


def test_a_roll_that_is_looked_up() -> None:
    rows = (Row(least=7, most=None, gives=14), Row(least=2, most=6, gives=10))
    points = LookUp(roll=dice(TWO_D6), gives=rows)
    assert points.given(6) == 10
    assert points.given(7) == 14
    assert points.totals() == (10, 14)
    with pytest.raises(KeyError):
        points.given(1)


def test_rows_as_the_owner_writes_them() -> None:
    rows = [Row(least=3, most=3, gives=1), Row(least=2, most=4, gives=1)]
    assert [str(row) for row in (*rows, Row(least=9, most=None, gives=1))] == [
        "3",
        "2-4",
        "9 or more",
    ]
