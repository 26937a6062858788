"""Sums of dice as others counted them; sources in `dice_rows/SOURCE.txt` or at the check."""

import csv
from collections import defaultdict
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.chance.dice import dice_chances
from paradestate.core.dice import Dice
from paradestate.core.support.chances import Chances
from paradestate.text.dice import read_dice

ROWS = Path(__file__).parent / "dice_rows" / "sum_of_n_d6_counts.csv"


def rolled(text: str) -> Chances:
    dice = read_dice(text)
    assert isinstance(dice, Dice)
    return dice_chances(dice)


def published() -> dict[int, dict[int, int]]:
    found: dict[int, dict[int, int]] = defaultdict(dict)
    with ROWS.open(encoding="utf-8", newline="") as opened:
        for row in csv.DictReader(opened):
            found[int(row["n_dice"])][int(row["sum"])] = int(row["ways"])
    return found


@pytest.mark.parametrize("number", range(1, 7))
def test_the_rows_of_one_to_six_dice(number: int) -> None:
    assert rolled(f"{number}d6") == Chances(counts=published()[number], ways=6**number)


def test_ten_comes_oftener_than_nine_of_three_dice() -> None:
    """Galileo, Opere 8 (1898), 591-594: 27 and 25 ways of 216."""
    three = rolled("3d6")
    assert three.ways == 216
    assert (three.counts[10], three.counts[9]) == (27, 25)


def test_a_six_in_four_throws_and_a_double_six_in_twenty_four() -> None:
    """The questions of the chevalier de Mere: 671/1296, and 0.49140 (MathWorld)."""
    assert rolled("best 1 of 4d6").of(6) == Fraction(671, 1296)
    double_six = 1 - (1 - rolled("2d6").of(12)) ** 24
    assert round(double_six, 5) == Fraction("0.49140")


def test_sixes_of_six_twelve_and_eighteen_dice() -> None:
    """Newton's answer to Pepys, in exact numbers: Stigler, Statistical Science 21 (2006)."""
    assert rolled("best 1 of 6d6").of(6) == Fraction(31031, 46656)
    assert rolled("best 2 of 12d6").of(12) == Fraction(1346704211, 2176782336)
    assert rolled("best 3 of 18d6").of(18) == Fraction(15166600495229, 25389989167104)


def test_throws_of_one_die_until_all_its_faces_have_come() -> None:
    """The coupon collector's mean for six: 147/10. With n faces missing a new one is 1 to n."""
    die = rolled("1d6")
    assert sum(1 / (1 - die.at_least(missing + 1)) for missing in range(1, 7)) == Fraction(147, 10)
