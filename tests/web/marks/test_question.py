"""What is asked of the sheet of marks, as its address says it."""

import pytest

from paradestate.core.mark.paint import MOST_AT_HAND
from paradestate.core.mark.reading import LONGEST
from paradestate.web.marks.question import LONGEST_MORE, marks_question


@pytest.mark.parametrize(
    ("text", "number", "is_unreadable"),
    [
        ("4", 4, False),
        (" 60 ", 60, False),
        ("", None, False),
        ("0", None, True),
        ("61", None, True),
        ("four", None, True),
        ("٤", None, True),
        ("9" * 5_000, None, True),
    ],
)
def test_a_number_of_colours(text: str, number: int | None, is_unreadable: bool) -> None:  # noqa: FBT001
    asked = marks_question({"choose": text})
    assert (asked.number, asked.is_unreadable) == (number, is_unreadable)


def test_ticked_paints_and_further_ones_are_at_hand() -> None:
    asked = marks_question({"hand:brown": "yes", "hand:black": "no", "more": "bone=E3DAC9, x=1"})
    assert asked.asked.at_hand == ("brown", "bone=E3DAC9", " x=1")


def test_the_address_says_it_all_again() -> None:
    values = {"choose": "3", "hand:sky blue": "yes", "more": "bone=E3DAC9", "read": "blue"}
    asked = marks_question(values)
    assert asked.query(told="", written="x") == (
        "?choose=3&more=bone%3DE3DAC9&hand%3Asky+blue=yes&written=x"
    )
    assert marks_question({}).query() == ""
    assert marks_question(asked.fields).fields == asked.fields


def test_no_more_is_taken_than_can_be_looked_at() -> None:
    many = {f"hand:{number}": "yes" for number in range(500)}
    asked = marks_question({**many, "more": "x" * 9_000, "read": "y" * 9_000})
    assert len(asked.ticked) == MOST_AT_HAND + 1
    assert (len(asked.more), len(asked.read)) == (LONGEST_MORE, LONGEST)
