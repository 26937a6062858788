"""Codecs of values, lists, mappings and names."""

from typing import TypeVar

import pytest

from paradestate.core.place import Place
from paradestate.text.codec import (
    Codec,
    FreeText,
    ListOf,
    MappingOf,
    NameOf,
    Text,
    one_of,
)
from paradestate.text.context import Context
from paradestate.text.number import read_whole
from paradestate.text.slip import INVALID, Invalid
from paradestate.text.tree import Fields
from paradestate.text.yaml_tree import read_yaml

T = TypeVar("T")

AT = Place(file="f", line=1, column=1)
NUMBER = Text(parse=read_whole, show=str, described={"type": "integer"})
WORD = one_of({"yes": True, "no": False})


def read(codec: Codec[T], text: str) -> tuple[T | Invalid, list[str]]:
    """What a codec makes of a YAML text, and the codes of its findings."""
    node = read_yaml(text, file="f").node
    assert node is not None
    context = Context(names={"figures": {"rifleman": AT}})
    value = codec.read(node, context)
    return value, [found.code for found in context.findings]


@pytest.mark.parametrize(
    ("text", "value", "codes"),
    [
        ("3", 3, []),
        ("x", INVALID, ["not-a-number"]),
        ("''", INVALID, ["empty-value"]),
        ("[3]", INVALID, ["wrong-shape"]),
        ("{a: 3}", INVALID, ["wrong-shape"]),
        ("1" * 501, INVALID, ["too-large"]),
    ],
)
def test_a_single_value(text: str, value: object, codes: list[str]) -> None:
    assert read(NUMBER, text) == (value, codes)
    assert NUMBER.write(3) == "3"
    assert NUMBER.schema() == {"type": "integer"}


@pytest.mark.parametrize(
    ("text", "value", "codes"),
    [
        ("any: thing", INVALID, ["wrong-shape"]),
        ("any thing", "any thing", []),
        ("''", "", []),
        ("- a", INVALID, ["wrong-shape"]),
    ],
)
def test_free_text(text: str, value: object, codes: list[str]) -> None:
    assert read(FreeText(), text) == (value, codes)
    assert FreeText().write("x") == "x"
    assert "type" in FreeText().schema()


def test_nothing_where_a_list_belongs() -> None:
    context = Context()
    node = read_yaml("a:", file="f").node
    assert isinstance(node, Fields)
    assert ListOf(of=NUMBER).read(node.nodes["a"], context) is INVALID
    assert [found.code for found in context.findings] == ["empty-value"]


def test_free_text_that_is_not_there_at_all() -> None:
    node = read_yaml("a:", file="f").node
    assert node is not None
    context = Context()
    assert MappingOf(key=FreeText(), value=FreeText()).read(node, context) is INVALID
    assert [found.code for found in context.findings] == ["empty-value"]


@pytest.mark.parametrize(
    ("text", "value", "codes"),
    [
        ("rifleman", "rifleman", []),
        ("rifelman", INVALID, ["unknown-name"]),
        ("''", INVALID, ["empty-value"]),
        ("[a]", INVALID, ["wrong-shape"]),
    ],
)
def test_names(text: str, value: object, codes: list[str]) -> None:
    names = NameOf(kind="figures")
    assert read(names, text) == (value, codes)
    assert names.write("rifleman") == "rifleman"
    assert "figures" in str(names.schema()["description"])


@pytest.mark.parametrize(
    ("text", "value", "codes"),
    [
        ("[1, 2]", (1, 2), []),
        ("[1, x, 0]", INVALID, ["not-a-number", "not-a-whole-number"]),
        ("1", INVALID, ["wrong-shape"]),
    ],
)
def test_lists(text: str, value: object, codes: list[str]) -> None:
    numbers = ListOf(of=NUMBER)
    assert read(numbers, text) == (value, codes)
    assert numbers.write((1, 2)) == ["1", "2"]
    assert numbers.schema()["type"] == "array"


@pytest.mark.parametrize(
    ("text", "value", "codes"),
    [
        ("{1: 5, 2: 9}", {1: 5, 2: 9}, []),
        ("{1: 5, 01: 9}", INVALID, ["key-twice"]),
        ("{1: x, y: 9}", INVALID, ["not-a-number", "not-a-number"]),
        ("[1]", INVALID, ["wrong-shape"]),
    ],
)
def test_mappings(text: str, value: object, codes: list[str]) -> None:
    table = MappingOf(key=NUMBER, value=NUMBER)
    assert read(table, text) == (value, codes)
    assert table.write({1: 5}) == {"1": "5"}
    assert table.schema()["type"] == "object"


def test_words_of_a_closed_list() -> None:
    assert read(WORD, "yes") == (True, [])
    assert read(WORD, "maybe") == (INVALID, ["unknown-word"])
    assert WORD.write(False) == "no"  # noqa: FBT003 - the value that is written
    assert WORD.schema() == {"enum": ["yes", "no", True, False]}  # some YAML readers type them
