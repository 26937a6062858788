"""Nearest words and look-alike letters."""

import pytest

from paradestate.text.spelling import (
    nearest,
    nearest_hint,
    odd_spaces,
    strange_letters,
    tidy,
)


def test_names_are_matched_after_composition_and_trimming() -> None:
    assert tidy("cafe\u0301 ") == "café"
    assert tidy("plain") == "plain"


def test_the_nearest_word() -> None:
    known = ["light mortar section", "rifle section"]
    assert nearest("light motar section", known) == "light mortar section"
    assert nearest("RIFLE section", known) == "rifle section"
    assert nearest("tank", known) is None


def test_a_hint_offers_the_nearest_or_lists_what_is_known() -> None:
    assert nearest_hint("rifel", ["rifle"]) == "Did you mean 'rifle'?"
    assert nearest_hint("x", []) == "None is known here yet."
    assert nearest_hint("x", ["ab", "cd"]) == "Known here: 'ab', 'cd'."
    many = [f"name {number}" for number in range(20)]
    assert nearest_hint("x", many).endswith(" and 8 more.")


@pytest.mark.parametrize("text", ["plain", "\u041c\u0430\u0440\u0443", "Ünïcode", "日本 x"])
def test_one_alphabet_is_nothing_strange(text: str) -> None:
    assert strange_letters(text) is None


def test_letters_of_another_alphabet_are_named() -> None:
    assert strange_letters("of Mar\u0435nz") == ("Mar\u0435nz", "Cyrillic", ["\u0435"])
    assert strange_letters("1 \u0391lpha2") == ("\u0391lpha2", "Greek", ["\u0391"])


def test_odd_spaces_are_named() -> None:
    assert odd_spaces("a\u00a0b\u200bc") == ["no-break space", "zero width space"]
    assert odd_spaces("a b") == []
