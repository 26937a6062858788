"""Line breaks of a file after its text went through a form."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.text.line_break import as_in_form, bytes_from_form, line_breaks

MARK = b"\xef\xbb\xbf"


def sent(text: str) -> str:
    """What a form sends for a text that is shown in it."""
    return as_in_form(text).replace("\n", "\r\n")


@pytest.mark.parametrize(
    ("before", "typed", "after"),
    [
        (b"a: 1\nb: 2\n", "a: 1\r\nb: 3\r\n", b"a: 1\nb: 3\n"),
        (b"a: 1\r\nb: 2\r\n", "a: 1\r\nb: 3\r\n", b"a: 1\r\nb: 3\r\n"),
        (b"a: 1\r\nb: 2\nc: 3\n", "a: 1\r\nb: 2\r\nc: 4\r\n", b"a: 1\nb: 2\nc: 4\n"),
        (MARK + b"a: 1\n", "a: 2\r\n", MARK + b"a: 2\n"),
        (b"", "a: 1\r\n", b"a: 1\n"),
    ],
)
def test_the_manner_of_the_file_is_kept(before: bytes, typed: str, after: bytes) -> None:
    assert bytes_from_form(typed, before=before) == after


def test_a_file_with_several_sorts_of_break_is_left_alone_where_nothing_changed() -> None:
    before = b"a: 1\r\nb: 2\nc: 3\r"
    assert line_breaks(before.decode()) == ("\n", "\r", "\r\n")
    assert bytes_from_form(sent(before.decode()), before=before) == before


@given(st.text(st.sampled_from("ab:\n\r é")))
def test_what_was_only_shown_comes_back_as_it_was(text: str) -> None:
    assert bytes_from_form(sent(text), before=text.encode()) == text.encode()
