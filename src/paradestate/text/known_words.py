"""The words that may be written at a key path: of the format, and names that the files define.

They come from the same definitions that read the files, by way of their JSON Schema.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from paradestate.core.place import KeyPath
from paradestate.text.codec import DEFINED_UNDER, Schema
from paradestate.text.cursor import Cursor
from paradestate.text.format.force import force_schema

Names = Mapping[str, Iterable[str]]
"""Kind of name to the names of that kind."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownWord:
    """A word that may be written, and what is said of it; nothing is said of a name."""

    word: str
    about: str = ""


def known_words(cursor: Cursor, *, names: Names) -> tuple[KnownWord, ...]:
    """The words that may stand at a cursor, those first that go on from what stands there."""
    schemas = tuple(_schemas_at(cursor.path))
    keys = [word for schema in schemas for word in _keys(schema, names) if cursor.is_key]
    values = [word for schema in schemas for word in _values(schema, names)]
    found = {known.word: known for known in (*values, *keys)}
    start = cursor.word.casefold()
    fitting = [known for known in found.values() if start in known.word.casefold()]
    others = [known for known in fitting if known.word != cursor.word]
    return tuple(sorted(others, key=lambda known: not known.word.casefold().startswith(start)))


_whole = cache(force_schema)
"""The schema of all files, which is long and stays as it is."""


def _schemas_at(path: KeyPath) -> Iterator[Schema]:
    """Every schema that a value at a key path may follow."""
    schemas = list(_alternatives(_whole()))
    for step in path:
        schemas = [
            each
            for schema in schemas
            for below in _below(schema, step)
            for each in _alternatives(below)
        ]
    yield from schemas


def _alternatives(schema: Schema) -> Iterator[Schema]:
    yield schema
    choices = schema.get("anyOf")
    if isinstance(choices, list):
        for each in choices:
            yield from _alternatives(each)


def _below(schema: Schema, step: str) -> Iterator[Schema]:
    properties = schema.get("properties")
    if isinstance(properties, dict) and step in properties:
        yield properties[step]
    for more in ("additionalProperties", "items"):
        below = schema.get(more)
        if isinstance(below, dict) and (more != "items" or step.isdecimal()):
            yield below


def _keys(schema: Schema, names: Names) -> Iterator[KnownWord]:
    properties = schema.get("properties")
    if isinstance(properties, dict):
        for word, below in properties.items():
            yield KnownWord(word=word, about=_about(below))
    keys = schema.get("propertyNames")
    if isinstance(keys, dict):
        yield from _names(keys, names)


def _about(schema: Schema) -> str:
    """What a schema says of a word, with an example."""
    every = tuple(_alternatives(schema))
    described = str(schema.get("description", ""))
    said = [] if not described or described.startswith(DEFINED_UNDER) else [described]
    shown = [each["examples"] for each in every if isinstance(each.get("examples"), list)]
    examples = [
        str(example) for several in shown if isinstance(several, list) for example in several
    ]
    return "; ".join([*said, *(f"such as {example}" for example in examples[:1])])


def _values(schema: Schema, names: Names) -> Iterator[KnownWord]:
    words = schema.get("enum")
    if isinstance(words, list):
        yield from (KnownWord(word=word) for word in words if isinstance(word, str))
    yield from _names(schema, names)


def _names(schema: Schema, names: Names) -> Iterator[KnownWord]:
    described = schema.get("description")
    if isinstance(described, str) and described.startswith(DEFINED_UNDER):
        for name in names.get(described.removeprefix(DEFINED_UNDER), ()):
            yield KnownWord(word=name)
