"""Rows of totals, and what stands beside each."""

import pytest

from paradestate.core.dice import NOUGHT, LookUp, Row
from paradestate.core.support.entry import Band
from paradestate.text.dice import read_dice
from tests.text.format.reading import codes, force
from tests.text.slips import value_of


def entry(words: str) -> str:
    return f"supporting troops: {{e: {{cost: 1, {words}}}, f: {{cost: 1}}}}"


def test_bands() -> None:
    allows = "{1-2: 0, 3: 1, 4 or more: all}"
    words = f"availability: {{roll: 1d12, allows: {allows}}}, when refused: points kept"
    availability = force(entry(words)).supporting_troops["e"].availability
    assert availability is not None
    assert availability.allows == (
        Band(least=1, most=2, allows=0),
        Band(least=3, most=3, allows=1),
        Band(least=4, most=None, allows=None),
    )


@pytest.mark.parametrize(
    ("allows", "expected"),
    [
        ("all", ["wrong-shape"]),
        ("{x: 0}", ["not-a-band"]),
        ("{1: some}", ["not-a-number"]),
        ("{1: [0]}", ["wrong-shape"]),
    ],
)
def test_odd_bands(allows: str, expected: list[str]) -> None:
    words = f"availability: {{roll: 1d6, allows: {allows}}}, when refused: points kept"
    assert codes(entry(words)) == expected


def test_an_allowance_that_is_looked_up() -> None:
    made = force(
        "games: {g: {allowance: {roll: 2d6, gives: {2-6: 10, 7 or more: -1}}, posture: a}}"
    )
    rows = (Row(least=2, most=6, gives=10), Row(least=7, most=None, gives=-1))
    assert made.games["g"].allowance == LookUp(roll=value_of(read_dice("2d6")), gives=rows)


def test_a_game_without_an_allowance_has_no_points() -> None:
    assert force("games: {g: {posture: attack}}").games["g"].allowance == NOUGHT


@pytest.mark.parametrize(
    ("allowance", "expected"),
    [
        ("{gives: {1-6: 2}}", ["missing-word"]),
        ("{roll: 1d6, gives: {1-6: all}}", ["not-a-number"]),
        ("{roll: 1d6, gives: {six: 2}}", ["not-a-band"]),
        ("{roll: 1d6, gives: 4}", ["wrong-shape"]),
        ("{roll: 1d6, gives: {1-6: 2}, rounds: 2}", ["unknown-word"]),
    ],
)
def test_odd_allowances_that_are_looked_up(allowance: str, expected: list[str]) -> None:
    assert codes(f"games: {{g: {{allowance: {allowance}, posture: attack}}}}") == expected
