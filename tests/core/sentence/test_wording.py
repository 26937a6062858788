"""Small words."""

import datetime
from fractions import Fraction

import pytest

from paradestate.core.number import NumberRange
from paradestate.core.sentence.wording import (
    by_hand_words,
    capital,
    clipped,
    counted,
    day_words,
    decimal,
    end_words,
    hours_words,
    how_often,
    listed,
    month_words,
    on_one_line,
    plural,
    rail_words,
    runs,
    several,
    spelled,
    window_words,
)
from paradestate.core.span import DateSpan, Window, day, month, year


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


def test_hours_of_work() -> None:
    assert hours_words(Fraction(0)) == "0 min"
    assert hours_words(Fraction(45, 2)) == "22.5 min"
    assert hours_words(Fraction(60)) == "1 h"
    assert hours_words(Fraction(2070)) == "34 h 30 min"
    assert hours_words(Fraction(100)) == "1 h 40 min"
    assert hours_words(Fraction(239, 2)) == "2 h"
    assert hours_words(Fraction(2145, 2)) == "17 h 53 min"


def test_hours_beside_a_rail() -> None:
    minutes = (Fraction(45, 2), Fraction(60), Fraction(2070))
    assert [rail_words(each) for each in minutes] == ["23 min", "1 h", "34 h 30"]


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


def test_days_and_months_are_said_in_words() -> None:
    christmas = datetime.date(2026, 12, 25)
    assert month_words(christmas) == "December 2026"
    assert day_words(christmas) == "25 December 2026"


def test_the_end_of_some_days_is_said_as_short_as_it_can_be() -> None:
    first, last = datetime.date(2026, 12, 20), datetime.date(2027, 1, 5)
    assert end_words(month(2028, 2)) == "February 2028"
    assert end_words(day(first)) == "20 December 2026"
    assert end_words(DateSpan(first=first, last=last)) == "5 January 2027"
    assert end_words(year(2027)) == "31 December 2027"


def test_how_often_something_happens() -> None:
    assert [how_often(number) for number in (0, 1, 2, 3, 12)] == [
        "never",
        "once",
        "twice",
        "three times",
        "12 times",
    ]


def test_numbers_that_follow_on_one_another_are_one_range() -> None:
    assert [*runs([9, 1, 4, 5, 7, 8])] == ["1", "4", "5", "7 to 9"]


def test_what_somebody_typed_is_shown_on_one_line_and_not_too_long() -> None:
    assert on_one_line("a\nb\x1b[2J\N{RIGHT-TO-LEFT OVERRIDE}") == "a / b\ufffd[2J\ufffd"
    assert clipped("abc", most=3) == "abc"
    assert clipped("abcd", most=3) == "ab\N{HORIZONTAL ELLIPSIS}"
