"""Values as pieces of YAML text, on one line or on lines of their own, for a file that is there."""

from collections.abc import Iterator

import yaml

from paradestate.text.codec import Plain
from paradestate.text.extent import BREAK
from paradestate.text.writing import MERGE, PlainDumper

WIDTH = 100
"""Columns that a list or mapping may take on one line, if it may have lines of its own."""

STEP = 2
"""Spaces of one more level."""

QUOTED = ("", MERGE)
"""Texts that mean something else without quotes."""

ENDLESS = 1_000_000_000
TEXT = "tag:yaml.org,2002:str"
LIST = "tag:yaml.org,2002:seq"
MAPPING = "tag:yaml.org,2002:map"


def flow_text(value: Plain, *, quote: str = "") -> str:
    """A value on one line, as it may stand inside braces; a text in `quote` where it can be."""
    listed = yaml.SequenceNode(LIST, [_node(value, quote=quote)], flow_style=True)
    return _serialized(listed).removeprefix("[").removesuffix("]")


def line_text(value: Plain, *, quote: str = "") -> str:
    """A value on one line, as it may stand behind its key on a line of its own."""
    pairs = [(_node("k"), _node(value, quote=quote))]
    return _serialized(yaml.MappingNode(MAPPING, pairs, flow_style=False)).removeprefix("k: ")


def behind_colon(value: Plain, *, column: int, taken: int, line_break: str) -> str:
    """A value behind the colon of a key in column `column`, of which the line holds `taken`.

    A list or mapping that is too long for the line stands below, one line an entry.
    """
    text = line_text(value)
    if isinstance(value, str) or not value or taken + 1 + len(text) <= WIDTH:
        return f" {text}"
    return line_break + lines_text(value, column=column + STEP, line_break=line_break)


def lines_text(value: Plain, *, column: int, line_break: str) -> str:
    """A list or mapping on lines of its own, without the last line break."""
    return line_break.join(_lines(value, column=column, line_break=line_break))


def _lines(value: Plain, *, column: int, line_break: str) -> Iterator[str]:
    indent = " " * column
    if isinstance(value, dict):
        for name, child in value.items():
            key = f"{indent}{flow_text(name)}:"
            yield key + behind_colon(child, column=column, taken=len(key), line_break=line_break)
    else:
        yield from (f"{indent}- {line_text(item)}" for item in value)


def _node(value: Plain, *, quote: str = "") -> yaml.Node:
    match value:
        case str():
            usual = quote or ("'" if value in QUOTED else None)
            return yaml.ScalarNode(TEXT, value, style='"' if BREAK.search(value) else usual)
        case list():
            return yaml.SequenceNode(LIST, [_node(item) for item in value], flow_style=True)
        case dict():
            pairs = [(_node(name), _node(child)) for name, child in value.items()]
            return yaml.MappingNode(MAPPING, pairs, flow_style=True)


def _serialized(node: yaml.Node) -> str:
    written: str = yaml.serialize(node, Dumper=PlainDumper, allow_unicode=True, width=ENDLESS)
    return written.removesuffix("\n")
