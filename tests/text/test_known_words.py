"""The words that may be written at a key path."""

import pytest

from paradestate.text.cursor import Cursor
from paradestate.text.known_words import KnownWord, known_words

NAMES = {
    "figures": ("rifleman", "officer"),
    "stages": ("in packet", "painted"),
    "stands and formations": ("rifle section", "platoon"),
    "formations": ("platoon",),
}


def words(*path: str, is_key: bool = True, word: str = "") -> list[str]:
    cursor = Cursor(path=path, is_key=is_key, word=word)
    return [known.word for known in known_words(cursor, names=NAMES)]


def test_at_the_top_stand_the_sections() -> None:
    assert {"format", "title", "figures", "raise"} <= set(words())


@pytest.mark.parametrize(
    ("path", "expected"),
    [
        (("figures", "rifleman", "may stand for"), ["rifleman", "officer"]),
        (("stands", "x", "figures"), ["rifleman", "officer"]),
        (("stock",), ["rifleman", "officer"]),
        (("stock", "rifleman"), ["in packet", "painted"]),
        (("raise", "wished", "1"), ["rifle section", "platoon"]),
        (("figures",), []),
        (("nowhere", "at all"), []),
    ],
)
def test_keys_are_names_of_what_belongs_there(path: tuple[str, ...], expected: list[str]) -> None:
    assert words(*path) == expected


def test_parts_are_written_by_name_or_as_a_list_of_entries() -> None:
    assert words("formations", "x", "parts") == ["rifle section", "platoon"]
    assert "number" in words("formations", "x", "parts", "2")


@pytest.mark.parametrize(
    ("path", "expected"),
    [
        (("figures", "x", "sort"), ["foot", "mounted", "gun", "vehicle", "scenery"]),
        (("figures", "x", "may stand for", "officer"), ["good", "poor"]),
        (("formations", "x", "parts", "1", "of"), ["rifle section", "platoon"]),
        (("formations", "x", "drop", "1"), ["rifle section", "platoon"]),
        (("raise", "formation"), ["platoon"]),
        (("private",), ["yes", "no"]),
        (("title",), []),
    ],
)
def test_values_are_words_of_a_list_or_names(path: tuple[str, ...], expected: list[str]) -> None:
    assert words(*path, is_key=False) == expected


def test_words_that_go_on_from_what_is_written_come_first() -> None:
    assert words("figures", "x", word="s") == ["sort", "may stand for"]
    assert words("figures", "x", "sort", is_key=False, word="foot") == []


def test_a_word_is_said_with_what_it_is_about() -> None:
    found = known_words(Cursor(path=("stands", "x"), is_key=True, word="base"), names=NAMES)
    assert found == ()
    found = known_words(Cursor(path=("stands", "x"), is_key=True, word="bas"), names=NAMES)
    assert found == (
        KnownWord(word="base", about="front x depth, a disc, or none; such as 30 mm disc"),
    )


def test_of_a_name_nothing_is_said() -> None:
    cursor = Cursor(path=("raise",), is_key=True, word="formation")
    assert known_words(cursor, names=NAMES) == ()
    (found,) = known_words(Cursor(path=("raise",), is_key=True, word="formatio"), names=NAMES)
    assert found.about == ""
