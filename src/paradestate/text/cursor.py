"""Where in a YAML text a cursor stands, by its indentation and braces, while it is being written.

A text that is being written often doesn't read, so this looks only at what stands before the
cursor, and takes it as it is meant in nearly every case. Nothing but offers of words rests on it.
"""

import re
from dataclasses import dataclass, replace

from paradestate.core.place import KeyPath
from paradestate.text.spelling import tidy

MOST_LINES = 20_000
"""Before the cursor; beyond them nothing is offered."""

_KEY = re.compile(r"""(?P<key>"[^"]*"|'[^']*'|[^\s{}\[\],"'#&*!|>%@`][^#]*?)\s*:(?:\s+|$)""")
_ITEM = re.compile(r"-(?:\s+|$)")
OPENING, CLOSING, QUOTES = frozenset("{["), frozenset("}]"), frozenset("\"'")


@dataclass(frozen=True, slots=True, kw_only=True)
class Cursor:
    """What is being written at a cursor."""

    path: KeyPath
    """Of the mapping, where a key is being written; else of the value."""
    is_key: bool
    word: str
    """What stands before the cursor already of that key or value."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Step:
    """One open level: an entry or an item, by the column that it begins in."""

    column: int
    step: str
    is_item: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class _Brace:
    """One open brace or bracket."""

    sign: str
    key: str | None = None
    number: int = 1

    @property
    def steps(self) -> KeyPath:
        """The steps to the value that is being written in it."""
        if self.sign == "[":
            return (str(self.number),)
        return () if self.key is None else (self.key,)


@dataclass(frozen=True, slots=True, kw_only=True)
class _State:
    """What is open at the end of a piece of text."""

    steps: tuple[_Step, ...] = ()
    braces: tuple[_Brace, ...] = ()
    is_value: bool = False
    """Whether a value follows, outside of all braces."""
    word: str = ""


def cursor_in(text: str, *, line: int, column: int) -> Cursor | None:
    """What is being written before a line and column, both from 1; None where that isn't known."""
    lines = text.split("\n")[: min(line, MOST_LINES + 1)]
    if not 0 < line <= len(lines) or line > MOST_LINES:
        return None
    state = _State()
    for before in lines[:-1]:
        if state.braces or before.strip():
            state = _after_line(state, before.rstrip("\r"))
    written = lines[-1][: max(column - 1, 0)]
    if not written.strip() and not state.braces:
        return Cursor(path=_path(_closed(state.steps, len(written))), is_key=True, word="")
    return _cursor(_after_line(state, written))


def _cursor(state: _State) -> Cursor:
    path = _path(state.steps)
    for brace in state.braces:
        path = (*path, *brace.steps)
    innermost = state.braces[-1] if state.braces else None
    in_mapping = innermost is not None and innermost.sign == "{" and innermost.key is None
    is_key = in_mapping or (innermost is None and not state.is_value)
    return Cursor(path=path, is_key=is_key, word=tidy(state.word.lstrip("\"'")))


def _path(steps: tuple[_Step, ...]) -> KeyPath:
    return tuple(each.step for each in steps)


def _closed(steps: tuple[_Step, ...], column: int, *, is_item: bool = False) -> tuple[_Step, ...]:
    """The levels that are still open where a line begins in that column."""
    while steps and (
        steps[-1].column > column
        or (steps[-1].column == column and (steps[-1].is_item or not is_item))
    ):
        steps = steps[:-1]
    return steps


def _after_line(state: _State, line: str) -> _State:
    """What is open after a line, or after what is written of it."""
    if state.braces:
        return _after_braces(state, line)
    rest = line.lstrip(" ")
    column = len(line) - len(rest)
    if rest.startswith("#"):
        return state
    steps = state.steps
    while match := _ITEM.match(rest):
        steps = _with_item(steps, column)
        column += match.end()
        rest = rest[match.end() :]
    key = _KEY.match(rest)
    if key is None:
        if not _is_in_item(steps, column):
            steps = _closed(steps, column)
        return _after_value(replace(state, steps=steps, is_value=False), rest)
    named = _Step(column=column, step=tidy(key["key"].strip("\"'")))
    steps = (*_closed(steps, column), named)
    return _after_value(replace(state, steps=steps, is_value=True), rest[key.end() :])


def _is_in_item(steps: tuple[_Step, ...], column: int) -> bool:
    """Whether what begins in a column is the item of a list itself."""
    return bool(steps) and steps[-1].is_item and steps[-1].column < column


def _with_item(steps: tuple[_Step, ...], column: int) -> tuple[_Step, ...]:
    """The levels with a new item of the list whose hyphens stand in that column."""
    number = next((each.step for each in steps if each.is_item and each.column == column), "0")
    item = _Step(column=column, step=str(int(number) + 1), is_item=True)
    return (*_closed(steps, column, is_item=True), item)


def _after_value(state: _State, rest: str) -> _State:
    """What is open after what stands behind a key or a hyphen."""
    if rest[:1] in OPENING:
        return _after_braces(replace(state, word=""), rest)
    return replace(state, word=rest)


def _after_braces(state: _State, text: str) -> _State:
    """What is open after a piece of text that begins inside braces, or with one."""
    braces, word, quote = state.braces, state.word, ""
    for place, letter in enumerate(text):
        following = text[place + 1 : place + 2]
        if quote:
            quote = "" if letter == quote else quote
            word += letter
        elif letter in QUOTES and not word.strip():
            quote, word = letter, letter
        elif letter == "#" and (not place or text[place - 1] == " "):
            break
        elif letter in OPENING:
            braces, word = (*braces, _Brace(sign=letter)), ""
        elif letter in CLOSING:
            braces, word = braces[:-1], ""
        elif letter == "," and braces:
            braces, word = (*braces[:-1], _next(braces[-1])), ""
        elif letter == ":" and following in {"", " "} and braces and braces[-1].key is None:
            key = tidy(word.strip().strip("\"'"))
            braces, word = (*braces[:-1], replace(braces[-1], key=key)), ""
        else:
            word += letter
    return replace(state, braces=braces, word=word, is_value=bool(braces) or state.is_value)


def _next(brace: _Brace) -> _Brace:
    return replace(brace, key=None, number=brace.number + 1)
