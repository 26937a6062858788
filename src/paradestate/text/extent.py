"""Where in a YAML text each value is written: from which character to which, and in what style.

For texts that read without a finding; `editing` sees to that.
"""

import re
from dataclasses import dataclass
from typing import TypeAlias

import yaml

from paradestate.text.spelling import tidy

BREAK = re.compile("\r\n|[\n\r\x85\u2028\u2029]")
"""What ends a line of YAML."""

LAST_BREAK = re.compile(rf"(?:{BREAK.pattern})\Z")
COMMENT = re.compile("#[^\n\r\x85\u2028\u2029]*")
BLANK = " \t\r\n\x85\u2028\u2029"
KEEPS_BLANK_LINES = "+"
BLOCK_STYLES = frozenset({"|", ">"})


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenText:
    """A piece of text with its quotes; in block style without the empty lines below it."""

    start: int
    end: int
    style: str
    """The quote, `|` or `>`; empty for plain text."""
    text: str

    @property
    def is_nothing(self) -> bool:
        """Whether nothing at all is written there."""
        return self.start == self.end


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenList:
    """A list; `column` is that of its first character, from 0."""

    start: int
    end: int
    flow: bool
    column: int
    items: tuple["Written", ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenEntry:
    """A key and its value."""

    name: str
    """The key as it is matched."""
    key: WrittenText
    value: "Written"


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenFields:
    """A mapping; `column` is that of its first character, from 0."""

    start: int
    end: int
    flow: bool
    column: int
    entries: tuple[WrittenEntry, ...]

    def entry(self, name: str) -> WrittenEntry | None:
        """The entry of that name."""
        return next((entry for entry in self.entries if entry.name == name), None)


Written: TypeAlias = WrittenText | WrittenList | WrittenFields


def extents_of(text: str) -> Written | None:
    """The values of a text with their extents; None where it holds nothing."""
    node = yaml.compose(text, Loader=yaml.CBaseLoader)
    return None if node is None else _written(node, text)


def _written(node: yaml.Node, text: str) -> Written:
    start, end = node.start_mark, node.end_mark
    assert start is not None  # noqa: S101 - LibYAML gives every node its marks
    assert end is not None  # noqa: S101 - the same
    match node:
        case yaml.SequenceNode():
            items = tuple(_written(item, text) for item in node.value)
            return WrittenList(
                start=start.index,
                end=end.index if node.flow_style else items[-1].end,
                flow=bool(node.flow_style),
                column=start.column,
                items=items,
            )
        case yaml.MappingNode():
            entries = tuple(_entry(key, value, text=text) for key, value in node.value)
            return WrittenFields(
                start=start.index,
                end=end.index if node.flow_style else entries[-1].value.end,
                flow=bool(node.flow_style),
                column=start.column,
                entries=entries,
            )
        case _:
            assert isinstance(node, yaml.ScalarNode)  # noqa: S101 - there are no others
            style = node.style or ""
            return WrittenText(
                start=start.index,
                end=_end_of_text(text, start.index, end=end.index, style=style),
                style=style,
                text=node.value,
            )


def _entry(key: yaml.Node, value: yaml.Node, *, text: str) -> WrittenEntry:
    """An entry; a value of which nothing is written stands behind the colon."""
    written_key, written = _written(key, text), _written(value, text)
    assert isinstance(written_key, WrittenText)  # noqa: S101 - another key is a finding
    if isinstance(written, WrittenText) and written.is_nothing:
        colon = text.find(":", written_key.end, written.end)
        behind = colon + 1 if colon >= 0 else written_key.end
        written = WrittenText(start=behind, end=behind, style="", text="")
    return WrittenEntry(name=tidy(written_key.text), key=written_key, value=written)


def _end_of_text(text: str, start: int, *, end: int, style: str) -> int:
    """Where a text ends: in block style LibYAML's mark stands below the empty lines after it."""
    if style not in BLOCK_STYLES:
        return end
    written = text[start:end]
    if KEEPS_BLANK_LINES in written[: line_end(written, 0)].partition("#")[0]:
        last = LAST_BREAK.search(written)
        return start + last.start() if last else end
    return start + len(written.rstrip(BLANK))


def line_start(text: str, index: int) -> int:
    """Where the line of a character begins."""
    while index and not BREAK.fullmatch(text[index - 1]):
        index -= 1
    return index


def line_end(text: str, index: int) -> int:
    """Where the line of a character ends, before its line break."""
    found = BREAK.search(text, index)
    return found.start() if found else len(text)


def next_line(text: str, index: int) -> int:
    """Where the line after that of a character begins."""
    found = BREAK.search(text, index)
    return found.end() if found else len(text)


def comments_in(text: str) -> tuple[str, ...]:
    """The comments of a text in order, each from its # on."""
    found: list[str] = []
    behind = 0
    for token in yaml.scan(text, Loader=yaml.CBaseLoader):
        assert token.start_mark is not None  # noqa: S101 - LibYAML gives every token its marks
        assert token.end_mark is not None  # noqa: S101 - the same
        found.extend(COMMENT.findall(text, behind, token.start_mark.index))
        if isinstance(token, yaml.ScalarToken) and token.style in BLOCK_STYLES:
            start = token.start_mark.index
            found.extend(COMMENT.findall(text, start, line_end(text, start)))
        behind = max(behind, token.end_mark.index)
    return tuple(found)
