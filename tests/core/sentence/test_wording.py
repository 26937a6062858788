"""Small words."""

from fractions import Fraction

import pytest

from paradestate.core.number import NumberRange
from paradestate.core.sentence.wording import (
    by_hand_words,
    capital,
    counted,
    decimal,
    listed,
    plural,
    several,
    spelled,
    window_words,
)
from paradestate.core.span import Window, month, year


@pytest.mark.parametrize(
    ("word", "many"),
    [
        ("company", "companies"),
        ("rifleman", "riflemen"),
        ("bus", "bus"),
        ("torch", "torches"),
        ("box", "boxes"),
        ("convoy", "convoys"),
        ("truck", "trucks"),
    ],
)
def test_plurals_by_the_usual_rule(word: str, many: str) -> None:
    assert plural(word) == many


def test_numbers() -> None:
    assert (spelled(0), spelled(3), spelled(11), spelled(-1)) == ("no", "three", "11", "-1")
    assert several(1, "truck") == "1 truck"
    assert several(NumberRange(least=2, most=4), "company") == "2-4 companies"
    assert counted({"rifleman": 4, "officer": 1}) == "4 riflemen and 1 officer"
    assert decimal(Fraction(1, 2)) == "0.5"


def test_lists() -> None:
    assert listed([]) == ""
    assert listed(["a"]) == "a"
    assert listed(["a", "b", "c"], joint="or") == "a, b or c"


def test_windows_and_notes() -> None:
    assert window_words(Window()) == ""
    both = Window(begins=month(1942, 6), ends=year(1943))
    assert window_words(both) == " from 1942-06 until 1943"
    assert by_hand_words("") == ""
    assert by_hand_words("x").endswith("not checked by machine: x.")
    assert capital("ein") == "Ein"
