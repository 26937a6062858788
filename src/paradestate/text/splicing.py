"""Which pieces of a YAML text are written anew for one change; every other character stays.

What is put in takes the style and the indentation of what stands around it.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.place import KeyPath
from paradestate.text.codec import Plain
from paradestate.text.error import EditError
from paradestate.text.extent import (
    BLOCK_STYLES,
    BREAK,
    COMMENT,
    Written,
    WrittenEntry,
    WrittenFields,
    WrittenList,
    WrittenText,
    line_end,
    line_start,
    next_line,
)
from paradestate.text.rendering import STEP, behind_colon, flow_text, line_text, lines_text
from paradestate.text.spelling import tidy


@dataclass(frozen=True, slots=True, kw_only=True)
class Splice:
    """What is written in place of the characters from `start` to `end`."""

    start: int
    end: int
    text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Spot:
    """A value that a key path leads to, with what is around it."""

    node: Written
    entry: WrittenEntry | None = None
    """The entry whose value it is; None for an item of a list and for the whole text."""
    around: WrittenFields | None = None
    """The mapping of that entry."""
    in_flow: bool = False
    """Whether it stands inside braces or brackets."""


def spliced(text: str, splices: Sequence[Splice]) -> str:
    """The text with all splices made; of two at one spot the first stands first."""
    in_order = sorted(splices, key=lambda one: one.start)
    for splice in in_order[::-1]:
        text = text[: splice.start] + splice.text + text[splice.end :]
    return text


def putting(text: str, root: Written | None, *, path: KeyPath, value: Plain) -> tuple[Splice, ...]:
    """The splices that put a value at a key path, with the keys that aren't there yet."""
    if root is None:
        return (_begun(text, _nested(path, value)),)
    spot = _Spot(node=root)
    for depth, step in enumerate(path):
        if isinstance(spot.node, WrittenText) and spot.node.is_nothing:
            return tuple(_replacing(text, spot, value=_nested(path[depth:], value)))
        below = _below(spot, step)
        if below is None and isinstance(spot.node, WrittenFields):
            return tuple(_adding(text, spot, path=path[depth:], value=value))
        if below is None:
            raise EditError(f"'{step}' can't be put into what isn't a mapping.")
        spot = below
    return tuple(_replacing(text, spot, value=value))


def taking_out(text: str, root: Written | None, *, path: KeyPath) -> tuple[Splice, ...]:
    """The splices that take the entry at a key path out."""
    spot = None if root is None else _Spot(node=root)
    for step in path[:-1]:
        spot = None if spot is None else _below(spot, step)
    if spot is None or not isinstance(spot.node, WrittenFields):
        raise EditError(f"'{path[-1]}' can't be taken out of what isn't a mapping.")
    fields = spot.node
    place = next((n for n, entry in enumerate(fields.entries) if entry.name == path[-1]), None)
    if place is None:
        raise EditError(f"'{path[-1]}' isn't there to be taken out.")
    if len(fields.entries) == 1 and len(path) == 1 and not fields.flow:
        return (Splice(start=line_start(text, fields.start), end=next_line(text, fields.end)),)
    if len(fields.entries) == 1:
        return tuple(_replacing(text, spot, value={}))
    take_out = _taken_from_braces if fields.flow else _taken_from_lines
    return tuple(take_out(text, fields, place=place))


def _nested(path: KeyPath, value: Plain) -> Plain:
    """The value under keys of its own."""
    for step in reversed(path):
        value = {step: value}
    return value


def _begun(text: str, value: Plain) -> Splice:
    """The first entry of a file that holds nothing but comments."""
    line_break, end = _line_break(text, 0), len(text)
    before = "" if line_start(text, end) == end else line_break
    lines = lines_text(value, column=0, line_break=line_break)
    return Splice(start=end, end=end, text=f"{before}{lines}{line_break}")


def _below(spot: _Spot, step: str) -> _Spot | None:
    match spot.node:
        case WrittenFields() as fields:
            entry = fields.entry(step)
            if entry is None:
                return None
            in_flow = spot.in_flow or fields.flow
            return _Spot(node=entry.value, entry=entry, around=fields, in_flow=in_flow)
        case WrittenList() as items if step.isdecimal() and 0 < int(step) <= len(items.items):
            return _Spot(node=items.items[int(step) - 1], in_flow=spot.in_flow or items.flow)
        case _:
            return None


def _line_break(text: str, index: int) -> str:
    """The line break that is used there, else the first of the file."""
    found = BREAK.search(text, index) or BREAK.search(text)
    return found.group() if found and found.group() in {"\r\n", "\r"} else "\n"


def _replacing(text: str, spot: _Spot, *, value: Plain) -> Iterator[Splice]:
    node = spot.node
    if isinstance(node, WrittenText):
        yield _in_place_of_text(text, node, value=value, in_flow=spot.in_flow)
    elif node.flow or spot.entry is None or text[line_start(text, node.start) : node.start].strip():
        yield Splice(start=node.start, end=node.end, text=_one_line(value, in_flow=spot.in_flow))
    else:
        yield from _in_place_of_lines(text, spot, value=value)


def _one_line(value: Plain, *, in_flow: bool, quote: str = "") -> str:
    return flow_text(value, quote=quote) if in_flow else line_text(value, quote=quote)


def _in_place_of_text(text: str, node: WrittenText, *, value: Plain, in_flow: bool) -> Splice:
    """A value for a text, in its quotes; a comment behind the sign of a block text stays."""
    if node.is_nothing:
        rest = _one_line(value, in_flow=in_flow)
        space = " " if text[node.end : node.end + 1].isalnum() else ""
        return Splice(start=node.start, end=node.end, text=f" {rest}{space}")
    quote = "" if node.style in BLOCK_STYLES else node.style
    written = _one_line(value, in_flow=in_flow, quote=quote)
    if node.style in BLOCK_STYLES:
        first = text[node.start : line_end(text, node.start)]
        note = COMMENT.search(first)
        written += f" {note.group()}" if note else ""
    return Splice(start=node.start, end=node.end, text=written)


def _in_place_of_lines(text: str, spot: _Spot, *, value: Plain) -> Iterator[Splice]:
    """A value for a list or mapping on lines of its own; what stands behind the key stays."""
    node, entry, around = spot.node, spot.entry, spot.around
    assert entry is not None  # noqa: S101 - `_replacing` has seen to it
    assert around is not None  # noqa: S101 - the same
    assert not isinstance(node, WrittenText)  # noqa: S101 - the same
    start, end = line_start(text, node.start), next_line(text, node.end)
    if isinstance(value, str) or not value:
        colon = text.index(":", entry.key.end) + 1
        yield Splice(start=colon, end=colon, text=f" {line_text(value)}")
        yield Splice(start=start, end=end)
        return
    column = max(node.column, around.column + STEP) if isinstance(value, dict) else node.column
    line_break = _line_break(text, node.start)
    lines = lines_text(value, column=column, line_break=line_break)
    yield Splice(start=start, end=line_end(text, node.end), text=lines)


def _adding(text: str, spot: _Spot, *, path: KeyPath, value: Plain) -> Iterator[Splice]:
    """A new entry behind the last, with the keys below it that its value needs."""
    fields = spot.node
    assert isinstance(fields, WrittenFields)  # noqa: S101 - `putting` has seen to it
    if fields.flow:
        entry = f"{flow_text(path[0])}: {flow_text(_nested(path[1:], value))}"
        yield from _added_in_braces(text, fields, entry=entry)
        return
    end = line_end(text, fields.end)
    line_break = _line_break(text, fields.end)
    lines = _entry_lines(path, value, column=fields.column, line_break=line_break)
    yield Splice(start=end, end=end, text="".join(f"{line_break}{line}" for line in lines))


def _entry_lines(path: KeyPath, value: Plain, *, column: int, line_break: str) -> Iterator[str]:
    """A new entry on lines of its own.

    The keys above a mapping have a line each: others will be put beside it, and a line that holds
    all of them grows until nobody can read it.
    """
    while len(path) > 1 and isinstance(value, dict) and value:
        yield f"{' ' * column}{flow_text(path[0])}:"
        path, column = path[1:], column + STEP
    key = f"{' ' * column}{flow_text(path[0])}:"
    rest = _nested(path[1:], value)
    yield key + behind_colon(rest, column=column, taken=len(key), line_break=line_break)


def _added_in_braces(text: str, fields: WrittenFields, *, entry: str) -> Iterator[Splice]:
    if not fields.entries:
        at = fields.start + 1
        space = " " if text[at] == "#" else ""
        yield Splice(start=at, end=at, text=f"{entry}{space}")
        return
    last = fields.entries[-1]
    end = last.value.end
    comma = _comma_behind(text, end)
    line = line_end(text, end if comma is None else comma)
    indent = text[line_start(text, last.key.start) : last.key.start]
    if indent.strip() or not _is_blank(text[end if comma is None else comma + 1 : line]):
        yield Splice(start=end, end=end, text=f", {entry}")
        return
    behind = "" if comma is None else ","
    if comma is None:
        yield Splice(start=end, end=end, text=",")
    yield Splice(start=line, end=line, text=f"{_line_break(text, end)}{indent}{entry}{behind}")


COMMA = re.compile(rf"(?:\s|{COMMENT.pattern}+)*+(,)")


def _comma_behind(text: str, index: int) -> int | None:
    """Where the comma stands that ends an entry in braces, comments passed over."""
    found = COMMA.match(text, index)
    return found.start(1) if found else None


def _is_blank(piece: str) -> bool:
    """Whether nothing but a comment stands there."""
    return not COMMENT.sub("", piece).strip()


def _taken_from_lines(text: str, fields: WrittenFields, *, place: int) -> Iterator[Splice]:
    entry = fields.entries[place]
    start = line_start(text, entry.key.start)
    if text[start : entry.key.start].strip() in {"", "?"}:
        yield Splice(start=start, end=next_line(text, entry.value.end))
    else:  # behind the dash of a list: the next takes its place
        yield Splice(start=entry.key.start, end=fields.entries[place + 1].key.start)


def _taken_from_braces(text: str, fields: WrittenFields, *, place: int) -> Iterator[Splice]:
    entry = fields.entries[place]
    start, end = entry.key.start, entry.value.end
    comma = _comma_behind(text, end)
    behind = end if comma is None else comma + 1
    line, below = line_start(text, start), next_line(text, behind)
    alone = _is_blank(text[line:start]) and _is_blank(text[behind:below]) and below < fields.end
    if alone and line > fields.start:
        yield Splice(start=line, end=below)
        return
    if place + 1 < len(fields.entries):
        following = fields.entries[place + 1].key.start
        yield Splice(
            start=start, end=behind if BREAK.search(text, behind, following) else following
        )
        return
    before = fields.entries[place - 1].value.end
    if BREAK.search(text, before, start):
        before_comma = _comma_behind(text, before)
        assert before_comma is not None  # noqa: S101 - one stands before every entry but the first
        yield Splice(start=before_comma, end=before_comma + 1)
        yield Splice(start=start, end=behind)
        return
    yield Splice(start=before, end=end)


def known_as(path: KeyPath) -> KeyPath:
    """A key path as its names are matched."""
    return tuple(tidy(step) for step in path)
