"""Colour differences against the 34 pairs that were published to test the formula with.

Pairs and their source stand in `ciede2000/`. They are in CIELAB, and partly of no colour that a
screen can show, so they are measured by the library as `sheet/sight.py` calls it.
"""

import csv
from pathlib import Path

import pytest

from paradestate.sheet.sight import apart, measured_at

with (Path(__file__).parent / "ciede2000" / "pairs.csv").open(encoding="utf-8") as opened:
    PAIRS = list(csv.DictReader(opened))

ROUNDING = 0.00005
"""The table has four decimals."""


def test_there_are_34_pairs() -> None:
    assert len(PAIRS) == 34


@pytest.mark.parametrize("row", PAIRS, ids=lambda row: row["pair"])
def test_the_difference_of_a_pair_is_the_published_one(row: dict[str, str]) -> None:
    one, other = (
        measured_at(*(float(row[f"{axis}{number}"]) for axis in "Lab")) for number in (1, 2)
    )
    for first, second in ((one, other), (other, one)):
        assert apart(first, second) == pytest.approx(float(row["dE00"]), abs=ROUNDING)
