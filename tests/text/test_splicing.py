"""Each style of YAML changed by hand-picked edits: the whole text after them."""

import pytest

from paradestate.core.place import KeyPath
from paradestate.text.codec import Plain
from paradestate.text.editing import Edit, Put, TakeOut, edited
from paradestate.text.splicing import Splice, spliced


def after(text: str, *edits: Edit) -> str:
    return edited(text.encode(), edits, file="force.yaml").data.decode()


@pytest.mark.parametrize(
    ("text", "value", "expected"),
    [
        ("a: 'x' # n\n", "y", "a: 'y' # n\n"),
        ("a: x\n", ["y", "z, w"], "a: [y, 'z, w']\n"),
        ("a: one\n  two # n\n", "y", "a: y # n\n"),
        ("a: | # n\n  x\n\n# m\nb: 1\n", "y", "a: y # n\n\n# m\nb: 1\n"),
        ("a: >-\n  x\n", "y", "a: y\n"),
        ("a:\nb: 1\n", "y", "a: y\nb: 1\n"),
        ("a:   # n\n", "y", "a: y   # n\n"),
        ("{a: , b: 1}\n", "y", "{a: y , b: 1}\n"),
        ("a: # n\n  # m\n  - x\n  - y\n\nb: 1\n", "z", "a: z # n\n  # m\n\nb: 1\n"),
        ("a:\n- x\nb: 1\n", ["y", "z"], "a:\n- y\n- z\nb: 1\n"),
        ("a:\n- x\nb: 1\n", {"y": "1"}, "a:\n  y: 1\nb: 1\n"),
        ("a:\n    x: 1\n", ["y"], "a:\n    - y\n"),
        ("a:\n    x: 1", [], "a: []\n"),
        ("a: [x, # n\n  y]\nb: 1\n", ["z"], "a: [z]\nb: 1\n"),
        ("? a\n: x\nb: 1\n", "y", "? a\n: y\nb: 1\n"),
    ],
)
def test_a_value_is_put_in_place_of_another(text: str, value: Plain, expected: str) -> None:
    assert after(text, Put(path=("a",), value=value)) == expected


@pytest.mark.parametrize(
    ("text", "path", "expected"),
    [
        ("a:\n  - x # n\n  - y\n", ("a", "1"), "a:\n  - new # n\n  - y\n"),
        ("a: [x, y]\n", ("a", "2"), "a: [x, new]\n"),
        ("a:\n  -\n  - y\n", ("a", "1"), "a:\n  - new\n  - y\n"),
        ("a:\n  - b: 1\n    c: 2\n", ("a", "1"), "a:\n  - new\n"),
        ("a:\n  - b: 1\n    c: 2\n", ("a", "1", "d"), "a:\n  - b: 1\n    c: 2\n    d: new\n"),
        ("a:\n  -\n    - b\n", ("a", "1"), "a:\n  -\n    new\n"),
    ],
)
def test_items_of_lists_are_counted_from_one(text: str, path: KeyPath, expected: str) -> None:
    assert after(text, Put(path=path, value="new")) == expected


@pytest.mark.parametrize(
    ("text", "path", "expected"),
    [
        ("a:\n  b: 1 # n\n\n# m\nc: 2\n", ("a", "x"), "a:\n  b: 1 # n\n  x: new\n\n# m\nc: 2\n"),
        ("a:\n    b: 1", ("a", "x"), "a:\n    b: 1\n    x: new"),
        ("a:\r\n  b: 1", ("a", "x"), "a:\r\n  b: 1\r\n  x: new"),
        ("a:\n  b: |\n    t\n\nc: 1\n", ("a", "x"), "a:\n  b: |\n    t\n  x: new\n\nc: 1\n"),
        ("a:\n  b: |+\n    t\n\nc: 1\n", ("a", "x"), "a:\n  b: |+\n    t\n\n  x: new\nc: 1\n"),
        ("a: {b: 1}\n", ("a", "x"), "a: {b: 1, x: new}\n"),
        ("a: {b: 1, }\n", ("a", "x"), "a: {b: 1, x: new, }\n"),
        ("a: {}\n", ("a", "x"), "a: {x: new}\n"),
        ("a: {# n\n}\n", ("a", "x"), "a: {x: new # n\n}\n"),
        ("a: {\n  b: 1 # n\n}\n", ("a", "x"), "a: {\n  b: 1, # n\n  x: new\n}\n"),
        ("a: {\n  b: 1, # n\n}\n", ("a", "x"), "a: {\n  b: 1, # n\n  x: new,\n}\n"),
        ("a: {\n  b: 1}\n", ("a", "x"), "a: {\n  b: 1, x: new}\n"),
        ("a: {b: 1 # n\n}\n", ("a", "x"), "a: {b: 1, x: new # n\n}\n"),
        ("a: {\n  b: 1 # n\n  , # m\n}\n", ("a", "x"), "a: {\n  b: 1 # n\n  , # m\n  x: new,\n}\n"),
        ("a:\nb: 1\n", ("a", "x", "y"), "a: {x: {y: new}}\nb: 1\n"),
        ("a: 1\n...\n", ("x",), "a: 1\nx: new\n...\n"),
    ],
)
def test_a_missing_key_is_put_in_as_its_neighbours_stand(
    text: str, path: KeyPath, expected: str
) -> None:
    assert after(text, Put(path=path, value="new")) == expected


def test_keys_above_a_new_mapping_have_lines_of_their_own() -> None:
    one: dict[str, Plain] = {"of": "x", "for": "y"}
    assert after("a: 1\n", Put(path=("b", "c", "d"), value=one)) == (
        "a: 1\nb:\n  c:\n    d: {of: x, for: y}\n"
    )
    assert after("b:\n  c: 1\n", Put(path=("b", "e", "d"), value=one)) == (
        "b:\n  c: 1\n  e:\n    d: {of: x, for: y}\n"
    )
    assert after("b: {c: 1}\n", Put(path=("b", "e", "d"), value=one)) == (
        "b: {c: 1, e: {d: {of: x, for: y}}}\n"
    )
    assert after("a: 1\n", Put(path=("b", "c"), value={})) == "a: 1\nb: {c: {}}\n"


def test_a_long_mapping_is_put_in_on_lines_of_its_own() -> None:
    long: dict[str, Plain] = {"one": "x" * 60, "two": "y" * 60}
    assert after("a:\n b: 1\n", Put(path=("a", "c"), value=long)) == (
        f"a:\n b: 1\n c:\n   one: {'x' * 60}\n   two: {'y' * 60}\n"
    )


@pytest.mark.parametrize(
    ("text", "path", "expected"),
    [
        ("a: 1\n# n\nb: 2 # m\n\nc: 3\n", ("b",), "a: 1\n# n\n\nc: 3\n"),
        ("a: 1\nb: 2", ("b",), "a: 1\n"),
        ("a:\n  - b: 1\n    c: 2\n", ("a", "1", "b"), "a:\n  - c: 2\n"),
        ("a:\n  - b: 1\n    c: 2\n", ("a", "1", "c"), "a:\n  - b: 1\n"),
        ("a:\n  b: 1\nc: 2\n", ("a", "b"), "a: {}\nc: 2\n"),
        ("a:\n  - b: 1\n", ("a", "1", "b"), "a:\n  - {}\n"),
        ("# n\na: 1\n", ("a",), "# n\n"),
        ("{a: 1}\n", ("a",), "{}\n"),
        ("? a\n: 1\nb: 2\n", ("a",), "b: 2\n"),
        ("{a: 1, b: 2, c: 3}\n", ("a",), "{b: 2, c: 3}\n"),
        ("{a: 1, b: 2, c: 3}\n", ("b",), "{a: 1, c: 3}\n"),
        ("{a: 1, b: 2, c: 3}\n", ("c",), "{a: 1, b: 2}\n"),
        ("{\n  a: 1, # n\n  b: 2, # m\n}\n", ("a",), "{\n  b: 2, # m\n}\n"),
        ("{\n  a: 1, # n\n  b: 2 # m\n}\n", ("b",), "{\n  a: 1, # n\n}\n"),
        ("{a: 1, # n\n b: 2} # m\n", ("b",), "{a: 1 # n\n } # m\n"),
        ("{a: 1, # n\n b: 2} # m\n", ("a",), "{ # n\n b: 2} # m\n"),
        ("{a: 1\n, b: 2\n, c: 3}\n", ("b",), "{a: 1\n, c: 3}\n"),
        ("{a: 1 # n, m\n, b: 2}\n", ("b",), "{a: 1 # n, m\n }\n"),
    ],
)
def test_an_entry_is_taken_out_with_its_line_or_its_comma(
    text: str, path: KeyPath, expected: str
) -> None:
    assert after(text, TakeOut(path=path)) == expected


def test_two_splices_at_one_spot_stand_in_their_order() -> None:
    splices = (Splice(start=1, end=1, text="x"), Splice(start=1, end=1, text="y"))
    assert spliced("ab", splices) == "axyb"
    assert spliced("abc", (Splice(start=2, end=3), Splice(start=0, end=1, text="z"))) == "zb"
