"""Dice and bands from text."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.dice import Dice, Fixed, Keep, SignedTerm, Throw
from paradestate.core.support.entry import Band
from paradestate.text.dice import read_band, read_dice
from tests.text.slips import code_of, value_of


def test_the_allowance_of_the_example() -> None:
    dice = value_of(read_dice("18 + 2d6"))
    assert dice.totals() == tuple(range(20, 31))


@pytest.mark.parametrize("text", ["d6", "1d6"])
def test_one_die(text: str) -> None:
    assert value_of(read_dice(text)).totals() == (1, 2, 3, 4, 5, 6)


@pytest.mark.parametrize(
    "text",
    [
        "2d+6",
        "",
        "2d6+",
        "2d6 +3",
        "0d6",
        "1d1",
        "1d101",
        "21d6",
        "11d6 + 10d6",
        "10001",
        "best 0 of 3d6",
        "best 4 of 3d6",
        "1d6 x 0",
        "2d6, at least",
        "2d6, at least 3, at least 4",
        "2d6, at least 9, at most 3",
        "2d6, at least 1, at most 2, at most 3",
        " + ".join(["1"] * 21),
        "1" * 501,
        "1d100 x 1 + 1d100 x 101 + 1d100 x 9999",
    ],
)
def test_what_is_no_dice_is_refused(text: str) -> None:
    assert code_of(read_dice(text)) == "not-dice"


THROWS = st.builds(
    Throw, number=st.integers(1, 4), sides=st.integers(2, 20), times=st.integers(1, 5)
) | st.builds(
    Throw,
    number=st.just(3),
    sides=st.integers(2, 12),
    keep=st.sampled_from([Keep.BEST, Keep.WORST]),
    kept=st.integers(1, 3),
)
TERMS = st.builds(
    SignedTerm,
    term=THROWS | st.builds(Fixed, number=st.integers(0, 100)),
    minus=st.booleans(),
)
DICE = st.builds(
    Dice,
    terms=st.tuples(st.builds(SignedTerm, term=THROWS), TERMS, TERMS),
    at_least=st.none() | st.integers(0, 5),
    at_most=st.none() | st.integers(6, 40),
)


@given(DICE)
def test_dice_read_as_they_are_written(dice: Dice) -> None:
    assert value_of(read_dice(str(dice))) == dice


@given(st.integers(0, 30), st.none() | st.integers(0, 30))
def test_a_band_reads_as_it_is_written(least: int, width: int | None) -> None:
    most = None if width is None else least + width
    assert value_of(read_band(str(Band(least=least, most=most, allows=1)))) == (least, most)


@pytest.mark.parametrize(
    ("text", "code"),
    [("4-2", "range-backwards"), ("x", "not-a-band"), ("x or more", "not-a-number")],
)
def test_odd_bands(text: str, code: str) -> None:
    assert code_of(read_band(text)) == code
