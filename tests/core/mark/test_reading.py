"""Whose mark it is, from what was read on a stand."""

import pytest

from paradestate.core.mark.code import Sign
from paradestate.core.mark.reading import Doubt, Reading, mark_read, reading
from tests.core.mark.marked import marks_of
from tests.forces import marenz

MARKS = marks_of(marenz())


def asked(text: str) -> Reading:
    return reading(mark_read(text, MARKS.colours), MARKS)


@pytest.mark.parametrize(
    ("text", "colours", "bars", "sign"),
    [
        ("yellow, three bars", ("mid yellow",), 3, None),
        ("Mid Yellow 3 bars CROSS", ("mid yellow",), 3, Sign.CROSS),
        ("blue with a bar", ("royal blue", "sky blue"), 1, None),
        ("sky blue, one bar", ("sky blue",), 1, None),
        ("brown, no bars", ("brown",), 0, None),
        ("brown without stripes", ("brown",), 0, None),
        ("the ring", (), None, Sign.RING),
        ("bar", (), 1, None),
        ("bars", (), None, None),
        ("plain", ("",), None, None),
        ("plain, 2 bars", ("",), 2, None),
        ("3", (), None, None),
    ],
)
def test_the_parts_of_a_mark_in_words(
    text: str, colours: tuple[str, ...], bars: int | None, sign: Sign | None
) -> None:
    read = mark_read(text, MARKS.colours)
    assert (read.colours, read.bars, read.sign) == (colours, bars, sign)


def test_yellow_with_three_bars_is_the_third_platoon_of_no_2_company() -> None:
    """Story of the design: who is who."""
    found = asked("yellow, three bars")
    assert found.doubt is Doubt.NONE
    assert [each.unit.name for each in found.bearers] == ["No 2 Company / 3 Platoon"]


def test_the_troops_of_no_company_bear_the_plain_plate() -> None:
    found = asked("plain")
    assert [each.unit.name for each in found.bearers] == [""]


def test_what_several_bear_is_told_with_all_of_them() -> None:
    found = asked("blue, three bars")
    assert found.doubt is Doubt.SEVERAL
    assert [each.unit.name for each in found.bearers] == [
        "No 1 Company / 3 Platoon",
        "No 3 Company / 3 Platoon",
    ]


def test_a_misread_part_is_noticed_by_the_sign_and_never_names_another_unit() -> None:
    """Check value of the design: sky blue with three bars read as two, sign as it is."""
    (due,) = asked("sky blue, three bars").bearers
    assert due.mark.sign is not None
    found = asked(f"sky blue, two bars, {due.mark.sign}")
    assert found.doubt is Doubt.MISREAD
    assert due in found.bearers


def test_no_mark_read_with_one_part_wrong_is_another_units_mark() -> None:
    marks = [mark for mark in MARKS.by_mark if mark.colour]
    for mark in marks:
        for bars in set(range(4)) - {mark.bars}:
            found = asked(f"{mark.colour}, {bars} bars, {mark.sign}")
            assert found.doubt is Doubt.MISREAD
            assert mark in [each.mark for each in found.bearers]


def test_what_nobody_bears_and_isnt_whole_is_nobodys() -> None:
    assert asked("yellow, five bars").doubt is Doubt.NOBODY
    assert asked("yellow, five bars").bearers == ()


@pytest.mark.parametrize("text", ["mauve, two bars", "yellow, two bars, square", "yellow 3"])
def test_words_that_mean_nothing_here_are_told(text: str) -> None:
    found = asked(text)
    assert found.doubt is Doubt.UNKNOWN_WORD
    assert found.read.unknown
    assert found.bearers == ()


@pytest.mark.parametrize("text", ["", "  ", "!?", "and with the"])
def test_nothing_read_leads_to_nobody(text: str) -> None:
    assert asked(text).doubt is Doubt.NOTHING_READ


def test_no_more_is_looked_at_than_a_stand_can_bear() -> None:
    assert asked("yellow " * 40 + " three bars").read.bars is None
