"""Where each value of a YAML text is written."""

import pytest

from paradestate.text.extent import (
    Written,
    WrittenFields,
    WrittenList,
    comments_in,
    extents_of,
    line_end,
    line_start,
    next_line,
)


def fields(written: Written | None) -> WrittenFields:
    assert isinstance(written, WrittenFields)
    return written


def written_in(text: str) -> dict[str, str]:
    """The text of each value at the top, cut out by its extent."""
    return {
        entry.name: text[entry.value.start : entry.value.end]
        for entry in fields(extents_of(text)).entries
    }


def test_values_are_cut_out_whole_and_without_what_stands_behind() -> None:
    text = (
        "a: 1 # one\nb: 'x y'\nc:\n  d: {e: 1, f: [2]} # two\n\n# three\ng:\n- h\n- i: 1\n  j: 2\n"
        "\nk: [l,\n  m]\n"
    )
    assert written_in(text) == {
        "a": "1",
        "b": "'x y'",
        "c": "d: {e: 1, f: [2]}",
        "g": "- h\n- i: 1\n  j: 2",
        "k": "[l,\n  m]",
    }


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("a: |\n  x\n  y\n\n\nb: 1\n", "|\n  x\n  y"),
        ("a: >- # note\n  x\n", ">- # note\n  x"),
        ("a: |+\n  x\n\nb: 1\n", "|+\n  x\n"),
        ("a: |+\r\n  x\r\n\r\nb: 1\r\n", "|+\r\n  x\r\n"),
        ("a: |+\n  x", "|+\n  x"),
        ("a: |  # + is no sign here\n  x\n\nb: 1\n", "|  # + is no sign here\n  x"),
    ],
)
def test_a_block_text_ends_before_the_empty_lines_that_are_not_its_own(
    text: str, value: str
) -> None:
    assert written_in(text)["a"] == value


@pytest.mark.parametrize(("text", "at"), [("a:\nb: 1\n", 2), ("a:   # x\n", 2), ("{a: , b: 1}", 3)])
def test_a_value_of_which_nothing_is_written_stands_behind_the_colon(text: str, at: int) -> None:
    value = fields(extents_of(text)).entries[0].value
    assert (value.start, value.end) == (at, at)


def test_a_key_without_a_colon_has_its_nothing_behind_it() -> None:
    value = fields(extents_of("? a\n")).entries[0].value
    assert (value.start, value.end) == (3, 3)


def test_names_are_tidied_as_they_are_matched() -> None:
    assert fields(extents_of('"e\u0301 ": 1\n')).entry("\u00e9") is not None
    assert fields(extents_of("a: 1\n")).entry("b") is None


def test_columns_and_styles_are_known() -> None:
    root = fields(extents_of("a:\n  - {b: 1}\n"))
    items = root.entries[0].value
    assert isinstance(items, WrittenList)
    assert (items.flow, items.column, root.column) == (False, 2, 0)
    assert fields(items.items[0]).flow


def test_an_empty_text_holds_nothing() -> None:
    assert extents_of("# only a comment\n") is None


def test_lines_end_where_yaml_ends_them() -> None:
    text = "a\r\nb\x85c\u2028d"
    assert [line_start(text, index) for index in range(len(text))] == [0, 0, 2, 3, 3, 5, 5, 7]
    assert (line_end(text, 0), next_line(text, 0)) == (1, 3)
    assert (line_end(text, 7), next_line(text, 7)) == (8, 8)


def test_comments_are_told_from_signs_in_texts() -> None:
    text = "# a\nb: x#y # c\nd: '# no' # e\nf: | # g\n  # no\nh: [1, # i\n 2]\n# j"
    assert comments_in(text) == ("# a", "# c", "# e", "# g", "# i", "# j")
