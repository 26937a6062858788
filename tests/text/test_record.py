"""Entries with fixed words."""

from dataclasses import dataclass, field

import pytest

from paradestate.text.context import Context
from paradestate.text.format import value
from paradestate.text.record import Named, record, usual_values, word
from paradestate.text.slip import INVALID
from paradestate.text.yaml_tree import read_yaml


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """Two ends."""

    begins: int = 0
    ends: int = 9


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """An entry."""

    name: str
    size: int
    span: Span = Span()
    tags: tuple[str, ...] = field(default_factory=tuple)
    by_hand: str = ""


THING = record(
    Thing,
    word("size", value.WHOLE, required=True, about="how large"),
    word("from", value.WHOLE, attribute="span.begins"),
    word("until", value.WHOLE, attribute="span.ends"),
    nested={"span": Span},
)
THINGS = Named(entry=THING)


def read(text: str) -> tuple[object, list[str]]:
    node = read_yaml(text, file="f").node
    assert node is not None
    context = Context()
    return THINGS.read(node, context), [found.code for found in context.findings]


@pytest.mark.parametrize(
    ("text", "thing"),
    [
        ("a: {size: 3}", Thing(name="a", size=3)),
        ("a: {size: 3, from: 2}", Thing(name="a", size=3, span=Span(begins=2))),
        ("a: {size: 3, by hand: odd}", Thing(name="a", size=3, by_hand="odd")),
    ],
)
def test_an_entry_reads_and_is_written_the_same(text: str, thing: Thing) -> None:
    assert read(text) == ({"a": thing}, [])
    node = read_yaml(str(THINGS.write({"a": thing})), file="f").node
    assert node is not None
    assert THINGS.read(node, Context()) == {"a": thing}


@pytest.mark.parametrize(
    ("text", "value", "codes"),
    [
        ("{a: {size: 3}, b: {}}", {"a": Thing(name="a", size=3)}, ["missing-word"]),
        ("a: {size: 3, sise: 4}", {}, ["unknown-word"]),
        ("a: {size: x, from: y}", {}, ["not-a-number", "not-a-number"]),
        ("a: 3", {}, ["wrong-shape"]),
        ("[a]", INVALID, ["wrong-shape"]),
    ],
)
def test_every_slip_of_an_entry_is_found_and_valid_ones_are_kept(
    text: str, value: object, codes: list[str]
) -> None:
    assert read(text) == (value, codes)


def test_the_schema_is_closed_and_says_what_words_are_for() -> None:
    schema = THING.schema()
    assert schema["additionalProperties"] is False
    assert schema["required"] == ["size"]
    properties = schema["properties"]
    assert isinstance(properties, dict)
    assert properties["size"]["description"] == "how large"
    assert set(properties) == {"size", "from", "until", "by hand"}


def test_an_entry_without_required_words_requires_none() -> None:
    assert "required" not in record(Span, word("begins", value.WHOLE), by_hand=False).schema()


def test_usual_values_are_the_defaults_of_a_record() -> None:
    usual = usual_values(Thing(name="a", size=3))
    assert getattr(usual, "tags") == ()  # noqa: B009 - it has no type of its own
    assert not hasattr(usual, "size")
    assert not vars(usual_values("no record"))
