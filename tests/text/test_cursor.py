"""What is being written at a cursor, which stands where | is."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.text import cursor
from paradestate.text.cursor import Cursor, cursor_in


def at(text: str) -> Cursor | None:
    before, after = text.split("|")
    line, column = before.count("\n") + 1, len(before) - before.rfind("\n")
    return cursor_in(before + after, line=line, column=column)


@pytest.mark.parametrize(
    ("text", "path"),
    [
        ("|", ()),
        ("format: 1\n|", ()),
        ("a:\n  |", ("a",)),
        ("a:\n  b: 1\n  |", ("a",)),
        ("a:\n  b: 1\n|", ()),
        ("a:\n  b: 1\n\n  # a note\n  c|", ("a",)),
        ("a: {b: 1, |}", ("a",)),
        ("a: {b: {|", ("a", "b")),
        ("a: {b: {c: 1}, |", ("a",)),
        ("a: {b: 1,  # a note, with {\n  |", ("a",)),
        ("a:\n  - b: 1\n    |", ("a", "1")),
        ("a:\n  - {b: 1}\n  - {|", ("a", "2")),
        ("a:\n- b: 1\n- c: 1\n  |", ("a", "2")),
        ("a:\n  - - b: 1\n    - |", ("a", "1", "2")),
        ("a:\n  - |", ("a", "1")),
        ("'a b':\n  |", ("a b",)),
        ('"a: b": {|', ("a: b",)),
        ("a:\r\n  b: 1\r\n  |", ("a",)),
        ("title: {'a, b': 1, |", ("title",)),
    ],
)
def test_a_key_is_written_in_the_mapping_around_it(text: str, path: tuple[str, ...]) -> None:
    found = at(text)
    assert found is not None
    assert found.is_key
    assert found.path == path


@pytest.mark.parametrize(
    ("text", "path", "word"),
    [
        ("a: |", ("a",), ""),
        ("a: bc|d", ("a",), "bc"),
        ("a:\n  b: c|", ("a", "b"), "c"),
        ("a: {b: c|}", ("a", "b"), "c"),
        ("a: {b: c, d: |}", ("a", "d"), ""),
        ("a: [b, c|]", ("a", "2"), "c"),
        ("a: {b: [|", ("a", "b", "1"), ""),
        ("a:\n  - b\n  - of: |", ("a", "2", "of"), ""),
        ("a: {b: 'c|", ("a", "b"), "c"),
        ("a: {b:\n  c|", ("a", "b"), "c"),
    ],
)
def test_a_value_is_written_at_its_own_path(text: str, path: tuple[str, ...], word: str) -> None:
    found = at(text)
    assert found is not None
    assert not found.is_key
    assert (found.path, found.word) == (path, word)


@pytest.mark.parametrize(("line", "column"), [(0, 1), (3, 1), (-1, 1)])
def test_a_line_that_is_not_there_has_no_words(line: int, column: int) -> None:
    assert cursor_in("a: 1\nb", line=line, column=column) is None


def test_far_down_nothing_is_offered(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cursor, "MOST_LINES", 2)
    assert cursor_in("a:\n\n", line=2, column=1) is not None
    assert cursor_in("a:\n\n", line=3, column=1) is None


@given(st.text(st.sampled_from("ab:- {}[],'\"#\n")), st.integers(1, 9), st.integers(-1, 9))
def test_no_text_is_too_strange(text: str, line: int, column: int) -> None:
    found = cursor_in(text, line=line, column=column)
    assert (found is None) == (line > text.count("\n") + 1)
