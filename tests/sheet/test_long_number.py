"""Numbers of many digits."""

import pytest

from paradestate.sheet.long_number import mark, number, number_words, placed, text_of


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (0, "0"),
        (3809, "3,809"),
        (999_999_999_999_999, "999,999,999,999,999"),
        (10**15, "about 1.0 times 10 to the 15"),
        (264 * 10**18, "about 2.6 times 10 to the 20"),
    ],
)
def test_in_a_sentence(value: int, words: str) -> None:
    assert number_words(value) == words


def test_in_a_drawing_the_power_is_set_high() -> None:
    assert text_of(number(3809)) == "3,809"
    made = number(264 * 10**18)
    assert text_of(made) == "about 2.6 × 1020"
    (power,) = made.iter("tspan")
    assert (power.text, power.get("dy")) == ("20", "-5")


def test_at_a_scale_small_powers_are_written_out() -> None:
    assert text_of(mark(10_000)) == "10,000"
    assert text_of(mark(100_000)) == "105"
    assert [span.text for span in mark(100_000).iter("tspan")] == ["5"]


def test_it_ends_where_it_is_placed() -> None:
    made = placed(number(7), x=20, y=10, class_="b")
    assert (made.get("x"), made.get("y"), made.get("text-anchor")) == ("20.0", "10.0", "end")
