"""The section worths."""

from fractions import Fraction

import pytest

from tests.text.format.reading import codes, force


def entry(words: str) -> str:
    return f"supporting troops: {{e: {{cost: 1, {words}}}, f: {{cost: 1}}}}"


def test_worths_by_number_and_by_choice() -> None:
    text = entry("choice: [flame]") + "\nworths: {e: {flame: {1: 4.5}}, f: {1: 2, 2: 3}}"
    worths = force(text).worths
    assert worths["e"].by_choice == {"flame": {1: Fraction(9, 2)}}
    assert worths["f"].by_choice == {"": {1: Fraction(2), 2: Fraction(3)}}


@pytest.mark.parametrize(
    ("worths", "expected"),
    [
        ("[e]", ["wrong-shape"]),
        ("{x: {1: 2}}", ["unknown-name"]),
        ("{e: {1: x}}", ["not-a-number"]),
        ("{e: 3}", ["wrong-shape"]),
    ],
)
def test_odd_worths(worths: str, expected: list[str]) -> None:
    assert codes(entry("group: g") + f"\nworths: {worths}") == expected
