"""What a YAML reader's complaint means: each sort of slip, its place and its way out."""

from collections.abc import Iterator

import pytest
import yaml

from paradestate.text.yaml_complaint import Spot, spot_of

INDENT = "Indent it as far as the lines it belongs beside"


def spot_in(text: str) -> Spot:
    try:
        list(yaml.parse(text, Loader=yaml.CBaseLoader))
    except yaml.YAMLError as error:
        return spot_of(error, text.split("\n"))
    raise AssertionError(text)


@pytest.mark.parametrize(
    ("text", "code", "at", "message", "hint"),
    [
        ("a: 1\n\tb: 2\n", "tab", (2, 1), "A tab stands", "Indent with spaces"),
        ("a: b: c\\d\n", "colon-in-text", (1, 5), "Text that holds ': '", 'Write a: "b: c\\\\d"'),
        ("a:\n  b: 1\n  c:2\n", "key-without-value", (3, 3), "'c:2' has no", "Write c: 2"),
        ("- b:\n   c:4\n   d: 5\n", "key-without-value", (2, 4), "'c:4' has no", "Write c: 4"),
        ("a: 1\nb\nc: 2\n", "key-without-value", (2, 1), "'b' has no colon", "Write key: value"),
        ("two words\nb: 1\n", "key-without-value", (1, 1), "'two words' has no", "Write key:"),
    ],
)
def test_what_was_meant(text: str, code: str, at: tuple[int, int], message: str, hint: str) -> None:
    spot = spot_in(text)
    assert (spot.slip.code, spot.line, spot.column) == (code, *at)
    assert spot.slip.message.startswith(message)
    assert spot.slip.hint.startswith(hint)


@pytest.mark.parametrize(
    ("text", "at", "message", "hint"),
    [
        ("a: 1\n\n   b: 2\n", (3, 4), "This line is indented deeper", INDENT),
        ("a: |\n   b\n  c: 2\n", (3, 3), "This line begins in a column", INDENT),
        ("a:\n  b: 1\n c: 2\n", (3, 2), "This line begins in a column", INDENT),
        ("- a\nb: 1\n", (2, 1), "The lines above are a list", "Begin it with '- '"),
        ("a: @x\nb: 1\n", (1, 4), "Text that begins with @", "Write a: '@x'"),
        ("a: [`it's, b]\n", (1, 5), "Text that begins with `", 'Write a: [ "`it\'s"'),
        ("a: 'it's'\nb: 1\n", (1, 8), "The text in quotes ends", "Put all of it"),
        ('a: "x" y\nb: 1\n', (1, 8), "The text in quotes ends", "Put all of it"),
        ("a: [1, 2\nb: 3\n", (1, 4), "The [ here isn't closed before line 2", "Close it with ]"),
        ("a: {b: 1 c: 2}\n", (1, 11), "A comma or } is missing", "Put commas"),
        ("a: {b: 1}}\n", (1, 10), "A } stands here", "Take it out"),
        ("a: {b: 1,, c: 2}\n", (1, 10), "A , stands here", "Take it out"),
        ("a: - b\nc: 1\n", (1, 4), "A list can't begin with -", "Write a: [b], or each item"),
        ('a: "\\q"\n', (1, 5), "A \\ in double quotes", "Write \\\\ for a \\"),
        ("a: 1\n...\nb: 2\n", (3, 1), "The data of this file ends", "Take the line '...' out"),
        ("%FOO\na: 1\n", (1, 5), "The file can't be read as YAML", "Look for a bracket"),
        ("[a]\nb: 1\n", (2, 1), "The data of this file ends", "Take the line '...' out"),
    ],
)
def test_what_has_no_code_of_its_own_is_said_in_words(
    text: str, at: tuple[int, int], message: str, hint: str
) -> None:
    spot = spot_in(text)
    assert (spot.slip.code, spot.line, spot.column) == ("not-yaml", *at)
    assert spot.slip.message.startswith(message)
    assert spot.slip.hint.startswith(hint)


@pytest.mark.parametrize(
    ("text", "since"),
    [
        ("a: 1\nb: 'x\n", ""),
        ("a: [1, 2\n\n", ""),
        ("a: 1\nb: {c: 'x y", ""),
        ('a: 1\nb: "x y', ""),
        ('a: 1\nb: "x\n  y', " It began on line 2."),
        ("a: [\n", ""),
        ("a: 1\nb\n", ""),
        ("a: 1\nb: 'x\n  y\n", " It began on line 2."),
    ],
)
def test_a_file_that_breaks_off_says_where_that_began(text: str, since: str) -> None:
    slip = spot_in(text).slip
    assert slip.code == "half-written"
    assert slip.message == f"The file ends in the middle of an entry.{since}"


@pytest.mark.parametrize("sign", ["\x07", "\x7f", "\ufffe"])
def test_a_control_character_is_named_with_its_place(sign: str) -> None:
    spot = spot_in(f"a: 1\nb: x{sign}y\n")
    assert (spot.slip.code, spot.line, spot.column) == ("control-character", 2, 5)
    assert f"U+{ord(sign):04X}" in spot.slip.message


def test_an_unknown_complaint_without_a_place_is_at_the_top() -> None:
    spot = spot_of(yaml.YAMLError("odd"), ["a: 1"])
    assert (spot.slip.code, spot.line, spot.column) == ("not-yaml", 1, 1)


def complaints_at_every_cut(text: str) -> Iterator[str]:
    for end in range(1, len(text)):
        try:
            list(yaml.parse(text[:end], Loader=yaml.CBaseLoader))
        except yaml.YAMLError as error:
            yield spot_of(error, text[:end].split("\n")).slip.code


def test_wherever_a_file_is_cut_off_it_is_said_or_what_is_left_is_whole() -> None:
    text = "a: {b: 'x y', c: [1, \"z\"]}\nlong name:\n  - d: 'one\n      two'\n    e: {f: g}\n"
    codes = list(complaints_at_every_cut(text))
    assert len(codes) > 50
    assert set(codes) == {"half-written"}
