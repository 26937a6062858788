"""Words about marks."""

import pytest

from paradestate.core.mark.code import Mark, Sign
from paradestate.core.mark.reading import mark_read, reading
from paradestate.core.mark.unit import Unit
from paradestate.core.sentence.mark import (
    check_sentence,
    difference_text,
    grey_sentence,
    least_words,
    mark_words,
    reading_sentence,
    unit_words,
)
from tests.core.mark.marked import marks_of, pair
from tests.forces import marenz

MARKS = marks_of(marenz())
MISREAD = (
    "Nobody bears brown, two bars, cross: one part of it is misread. With one other part it is one "
    "of these 3."
)


@pytest.mark.parametrize(
    ("hundredths", "text"),
    [(3_400, "34.0"), (297, "3.0"), (2, "0.0"), (1_994, "19.9"), (1_996, "19.9"), (2_000, "20.0")],
)
def test_a_difference_below_enough_is_never_rounded_up_to_it(hundredths: int, text: str) -> None:
    assert difference_text(hundredths) == text


def test_a_mark_is_said_as_it_is_seen() -> None:
    assert mark_words(Mark(colour="brown", value="", bars=1, sign=Sign.RING)) == (
        "brown, one bar, ring"
    )
    barred = Mark(colour="brown", value="", bars=0, sign=Sign.RING, has_rear_bar=True)
    assert mark_words(barred) == "brown, no bars, ring, rear bar"
    assert mark_words(Mark(colour="", value="", bars=0, sign=None)) == "plain, no bars"
    assert mark_words(Mark(colour="", value="", bars=2, sign=None)) == "plain, two bars, number 2"


def test_a_unit_is_said_by_its_full_name() -> None:
    def words(name: str, *, company: int | None, bars: int) -> str:
        return unit_words(
            Unit(name=name, formation="x", company=company, bars=bars), whole="battalion"
        )

    assert words("No 1 Company / 2 Platoon", company=0, bars=2) == "No 1 Company, 2 Platoon"
    assert words("No 1 Company", company=0, bars=0) == "No 1 Company, own troops"
    assert words("Guns", company=None, bars=1) == "Guns"
    assert words("", company=None, bars=0) == "Battalion troops"


def test_the_least_difference_says_who_sees_it() -> None:
    assert least_words(pair("a", "b", blue_weak=3_400)) == "34.0: a and b to a blue-weak viewer"


def test_pairs_that_run_together_in_grey_are_named_the_most_alike_first() -> None:
    assert grey_sentence([pair("a", "b")]) == "In grey no two run together."
    alike = [pair("a", "b", grey=600), pair("c", "d", grey=0)]
    assert grey_sentence(alike) == (
        "In grey c and d (0.0) and a and b (6.0) run together: there sign and bars tell, not "
        "colour."
    )
    four = [pair(f"a{each}", f"b{each}", grey=each) for each in range(4)]
    assert "a1 and b1 (0.0) and 2 more pairs run together" in grey_sentence(four)


def test_the_check_is_said_as_far_as_it_holds() -> None:
    assert check_sentence(2, signs=4).startswith("Any two marks differ in two parts")
    assert check_sentence(1, signs=4).startswith("Some marks differ in one part alone")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("yellow, three bars", "No 2 Company, 3 Platoon"),
        (
            "blue, one bar",
            "Royal blue or sky blue, one bar: 2 units bear that. Read one part more.",
        ),
        ("mauve", "'mauve' is no colour of these marks, and no sign."),
        ("", "Say what you see: a colour, a number of bars, a sign."),
        ("plain, two bars", "Nobody bears plain, two bars."),
        ("brown, two bars, cross", MISREAD),
    ],
)
def test_whose_mark_it_is(text: str, said: str) -> None:
    found = reading(mark_read(text, MARKS.colours), MARKS)
    assert reading_sentence(found, whole="battalion") == said
