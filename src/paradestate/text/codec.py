"""Codecs: one definition that reads a value from the tree, writes it back and describes it.

A codec never raises for what an owner wrote: it records a finding and returns INVALID.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Generic, Protocol, TypeAlias, TypeVar

from paradestate.text.context import Context
from paradestate.text.slip import INVALID, Invalid, Slip
from paradestate.text.spelling import nearest_hint, tidy
from paradestate.text.tree import Fields, Items, Node, Scalar

T = TypeVar("T")
K = TypeVar("K")
V = TypeVar("V")

Plain: TypeAlias = "str | list[Plain] | dict[str, Plain]"
"""What is written: text, lists and mappings only."""

Schema: TypeAlias = dict[str, object]
"""A piece of a JSON Schema."""


MOST_LETTERS = 500
"""In a value that isn't free text."""

_TOO_LONG = Slip(
    code="too-large",
    message=f"more than {MOST_LETTERS} letters stand here.",
    hint="Look for a quote that isn't closed, or write less.",
)


class Codec(Protocol[T]):
    """Reads, writes and describes one sort of value."""

    def read(self, node: Node, context: Context) -> T | Invalid:
        """The value of `node`, or INVALID with a finding in `context`."""
        ...

    def write(self, value: T) -> Plain:
        """The value as the owner would write it."""
        ...

    def schema(self) -> Schema:
        """What may stand there, as JSON Schema (2020-12)."""
        ...


def shape_slip(node: Node, *, wanted: str, example: str = "") -> Slip:
    """The slip for a list where text is wanted, and the like."""
    if isinstance(node, Scalar) and not node.text and not node.quoted:
        return empty_slip()
    found = {Scalar: "a single value", Items: "a list", Fields: "a mapping"}[type(node)]
    return Slip(
        code="wrong-shape",
        message=f"{wanted} belongs here, not {found}.",
        hint=f"Write {wanted}{f', such as {example}' if example else ''}.",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Text(Generic[T]):
    """A single value that `parse` reads from its text and `show` writes."""

    parse: Callable[[str], T | Slip]
    show: Callable[[T], str]
    described: Schema

    def read(self, node: Node, context: Context) -> T | Invalid:
        """The value of a scalar."""
        if not isinstance(node, Scalar):
            context.stop(shape_slip(node, wanted="a single value"), node.place)
            return INVALID
        if not node.text:
            context.stop(empty_slip(), node.place)
            return INVALID
        if len(node.text) > MOST_LETTERS:
            context.stop(_TOO_LONG, node.place)
            return INVALID
        value = self.parse(node.text)
        if isinstance(value, Slip):
            context.stop(value, node.place)
            return INVALID
        return value

    def write(self, value: T) -> Plain:
        """The value's text."""
        return self.show(value)

    def schema(self) -> Schema:
        """As described."""
        return self.described


def empty_slip() -> Slip:
    """The slip for a key without a value."""
    return Slip(
        code="empty-value",
        message="nothing is written here.",
        hint="Write a value, or take the line out. Colours are written without #.",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class FreeText:
    """Text that may be anything, and empty where it was quoted."""

    def read(self, node: Node, context: Context) -> str | Invalid:
        """The text as it stands."""
        if not isinstance(node, Scalar):
            context.stop(shape_slip(node, wanted="text"), node.place)
            return INVALID
        if not node.text and not node.quoted:
            context.stop(empty_slip(), node.place)
            return INVALID
        return node.text

    def write(self, value: str) -> Plain:
        """The text."""
        return value

    def schema(self) -> Schema:
        """Any text or number."""
        return {"type": ["string", "number", "boolean"]}


DEFINED_UNDER = "a name defined under "
"""How a schema says of which kind the names are that may stand there."""


def keys_schema(kind: str) -> Schema:
    """What a schema says of an object whose keys are names of a kind."""
    return {"propertyNames": {"description": f"{DEFINED_UNDER}{kind}"}}


@dataclass(frozen=True, slots=True, kw_only=True)
class NameOf:
    """The name of something that the folder defines."""

    kind: str

    def read(self, node: Node, context: Context) -> str | Invalid:
        """The name, where it is defined."""
        if not isinstance(node, Scalar):
            context.stop(shape_slip(node, wanted="a name"), node.place)
            return INVALID
        name = tidy(node.text)
        if not name:
            context.stop(empty_slip(), node.place)
            return INVALID
        return name if context.refer(name, node.place, kind=self.kind) else INVALID

    def write(self, value: str) -> Plain:
        """The name."""
        return value

    def schema(self) -> Schema:
        """Any name; a schema can't look it up."""
        return {
            "type": ["string", "number", "boolean"],
            "description": f"{DEFINED_UNDER}{self.kind}",
        }


@dataclass(frozen=True, slots=True, kw_only=True)
class ListOf(Generic[T]):
    """A list; a single value is not taken for a list of one."""

    of: Codec[T]

    def read(self, node: Node, context: Context) -> tuple[T, ...] | Invalid:
        """All items, or INVALID if any is."""
        if not isinstance(node, Items):
            context.stop(shape_slip(node, wanted="a list", example="[a, b]"), node.place)
            return INVALID
        read = [self.of.read(item, context) for item in node.nodes]
        good = tuple(value for value in read if not isinstance(value, Invalid))
        return good if len(good) == len(read) else INVALID

    def write(self, value: tuple[T, ...]) -> Plain:
        """The items in order."""
        return [self.of.write(item) for item in value]

    def schema(self) -> Schema:
        """An array."""
        return {"type": "array", "items": self.of.schema()}


@dataclass(frozen=True, slots=True, kw_only=True)
class MappingOf(Generic[K, V]):
    """A mapping of keys that `key` reads to values that `value` reads."""

    key: Codec[K]
    value: Codec[V]

    def read(self, node: Node, context: Context) -> Mapping[K, V] | Invalid:
        """All entries; two keys that mean the same are a stop."""
        if not isinstance(node, Fields):
            context.stop(shape_slip(node, wanted="a mapping", example="{a: b}"), node.place)
            return INVALID
        found: dict[K, V] = {}
        whole = True
        for text, child in node.nodes.items():
            key = self.key.read(node.keys[text], context)
            value = self.value.read(child, context)
            if isinstance(key, Invalid) or isinstance(value, Invalid):
                whole = False
            elif key in found:
                context.stop(same_key_slip(text), node.keys[text].place)
                whole = False
            else:
                found[key] = value
        return found if whole else INVALID

    def write(self, value: Mapping[K, V]) -> Plain:
        """The entries in order."""
        return {str(self.key.write(key)): self.value.write(item) for key, item in value.items()}

    def schema(self) -> Schema:
        """An object whose keys are free, or names of one kind."""
        key: object = self.key
        keys = keys_schema(key.kind) if isinstance(key, NameOf) else {}
        return {"type": "object", **keys, "additionalProperties": self.value.schema()}


def same_key_slip(text: str) -> Slip:
    """The slip for two ways of writing one key, such as `1` and `01`."""
    return Slip(
        code="key-twice",
        message=f"'{text}' is there twice, written in two ways.",
        hint="Keep one of them.",
    )


def one_of(words: Mapping[str, T]) -> Text[T]:
    """A word of a closed list."""
    by_value = {value: word for word, value in words.items()}

    def parse(text: str) -> T | Slip:
        if text in words:
            return words[text]
        return Slip(
            code="unknown-word",
            message=f"'{text}' isn't known here.",
            hint=nearest_hint(text, words),
        )

    untyped = [text == "yes" for text in words if text in {"yes", "no"}]  # for some YAML readers
    described: Schema = {"enum": [*words, *untyped]}
    return Text(parse=parse, show=lambda value: by_value[value], described=described)
