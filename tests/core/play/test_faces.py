"""Dice as they are read out at the table."""

from itertools import combinations_with_replacement, product

import pytest

from paradestate.core.dice import Dice
from paradestate.core.finding import Finding, Level
from paradestate.core.play.faces import Shown, read_shown, total_of
from paradestate.core.play.machine_roll import thrown
from paradestate.text.dice import read_dice
from paradestate.text.slip import Slip


def dice(text: str) -> Dice:
    read = read_dice(text)
    assert not isinstance(read, Slip)
    return read


@pytest.mark.parametrize(
    ("text", "faces", "total"),
    [
        ("18 + 2d6", (6, 2), 26),
        ("best 2 of 3d6", (1, 6, 4), 10),
        ("worst 1 of 3d6 x 10", (5, 3, 4), 30),
        ("2d6 - 1d4", (1, 2, 4), -1),
        ("2d6, at least 5", (1, 1), 5),
        ("12", (), 12),
    ],
)
def test_faces_are_added_up_as_the_dice_are_written(
    text: str, faces: tuple[int, ...], total: int
) -> None:
    assert total_of(dice(text), faces) == total
    assert read_shown(dice(text), faces) == Shown(faces=faces, total=total)


@pytest.mark.parametrize(
    "text", ["1d6 + 1d4", "best 1 of 2d6", "worst 2 of 3d4 x 3", "9 - 1d8, at most 5"]
)
def test_the_totals_of_all_faces_are_all_totals_of_the_dice(text: str) -> None:
    rolled = dice(text)
    every = product(*(range(1, sides + 1) for sides in thrown(rolled)))
    assert {total_of(rolled, faces) for faces in every} == set(rolled.totals())


def slip(text: str, *numbers: int) -> Finding:
    found = read_shown(dice(text), numbers)
    assert isinstance(found, Finding)
    assert (found.code, found.level) == ("roll-impossible", Level.STOP)
    return found


@pytest.mark.parametrize(
    ("text", "numbers", "message"),
    [
        ("1d6", (7,), "7 on 1d6."),
        ("1d6", (0,), "0 on 1d6."),
        ("18 + 2d6", (0, 7), "0 on 1d6 and 7 on 1d6."),
        ("2d6", (1,), "2d6 gives 2 to 12; 1 was entered."),
        ("18 + 2d6", (8,), "18 + 2d6 gives 20 to 30; 8 was entered."),
        (
            "2d6 x 10",
            (25,),
            "2d6 x 10 gives 20, 30, 40, 50, 60, 70, 80, 90, 100, 110 and 120; 25 was entered.",
        ),
        ("12", (13,), "12 gives 12; 13 was entered."),
        ("2d6", (1, 2, 3), "2d6 is 2 dice; 3 numbers were entered."),
        ("1d6", (), "1d6 is 1 die; 0 numbers were entered."),
    ],
)
def test_what_no_dice_show_is_stopped(text: str, numbers: tuple[int, ...], message: str) -> None:
    """Row 51 of the mistakes."""
    assert slip(text, *numbers).message == message


def test_a_total_alone_is_taken_without_its_faces() -> None:
    rolled = dice("18 + 2d6")
    assert read_shown(rolled, (26,)) == Shown(faces=(), total=26)
    assert read_shown(dice("2d6 x 10"), (30,)) == Shown(faces=(), total=30)


def test_faces_and_their_total_say_the_same() -> None:
    rolled = dice("3d6 + 2")
    for faces in combinations_with_replacement(range(1, 7), 3):
        shown = read_shown(rolled, faces)
        assert isinstance(shown, Shown)
        assert read_shown(rolled, (shown.total,)) == Shown(faces=(), total=shown.total)
