"""The words strengths and arrivals of a game."""

from fractions import Fraction

import pytest

from paradestate.core.dice import LookUp, Row, Totals
from paradestate.core.scenario import Arrival
from paradestate.text.dice import read_dice
from tests.text.format.reading import codes, force
from tests.text.slips import value_of


def game(words: str) -> str:
    return f"games: {{g: {{posture: attack, {words}}}}}"


def test_strengths() -> None:
    made = force(game("strengths: {top: {roll: 1d6, gives: {1-2: 50%, 3 or more: 100%}}}"))
    rows = (
        Row(least=1, most=2, gives=Fraction(1, 2)),
        Row(least=3, most=None, gives=Fraction(1)),
    )
    assert made.games["g"].strengths == {"top": LookUp(roll=value_of(read_dice("1d6")), gives=rows)}


def test_arrivals() -> None:
    words = "{roll: 1d6, on: 4 or more, from turn: 3, until turn: 6, edge: east, by hand: late}"
    made = force(game(f"arrivals: {{gun: {words}, top: {{}}}}"))
    assert made.games["g"].arrivals == {
        "gun": Arrival(
            roll=value_of(read_dice("1d6")),
            on=Totals(least=4, most=None),
            from_turn=3,
            until_turn=6,
            edge="east",
            by_hand="late",
        ),
        "top": Arrival(),
    }


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("strengths: {rifle: {roll: 1d6, gives: {1-6: 50%}}}", ["unknown-name"]),
        ("strengths: {top: {roll: 1d6, gives: {1-6: half}}}", ["not-a-share"]),
        ("strengths: {top: 50%}", ["wrong-shape"]),
        ("arrivals: {gnu: {}}", ["unknown-name"]),
        ("arrivals: {gun: {on: often}}", ["not-a-band"]),
        ("arrivals: {gun: {from turn: 0}}", ["not-a-whole-number"]),
        ("arrivals: {gun: {turn: 3}}", ["unknown-word"]),
    ],
)
def test_odd_scenarios(words: str, expected: list[str]) -> None:
    assert codes(game(words)) == expected
