"""What a YAML reader's complaint means to the person who wrote the file."""

import re

import yaml

from paradestate.core.place import Place
from paradestate.text.slip import NOT_USED, Slip
from paradestate.text.tree import Node, Scalar

REST_UNREAD = "What follows in this file isn't read."


def syntax_slip(error: yaml.YAMLError, lines: list[str]) -> tuple[Slip, int, int]:
    """The slip for a syntax error, with its line and column (from 1)."""
    mark = getattr(error, "problem_mark", None)
    problem = str(getattr(error, "problem", None) or getattr(error, "reason", None) or error)
    if mark is None:  # a character that YAML doesn't allow: it says where in another way
        return _bad_character(lines)
    line, column = mark.line + 1, mark.column + 1
    here = lines[line - 1] if line <= len(lines) else ""
    if "\t" in here[: len(here) - len(here.lstrip())] or "'\\t'" in problem:
        return _TAB, line, here.find("\t") + 1
    if _at_end(lines, line):
        return _half_written(error, line=line), line, column
    if "mapping values are not allowed" in problem:
        return _colon_in_text(here), line, column
    return _plain_slip(problem), line, column


_TAB = Slip(
    code="tab",
    message="A tab stands where spaces belong.",
    hint="Indent with spaces; most editors can turn tabs into spaces.",
    effect=REST_UNREAD,
)


def _bad_character(lines: list[str]) -> tuple[Slip, int, int]:
    for number, text in enumerate(lines, start=1):
        found = re.search(
            r"[^\t\n\r\x20-\x7e\x85\u00a0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]", text
        )
        if found:
            slip = Slip(
                code="control-character",
                message=f"A control character (U+{ord(found.group()):04X}) stands here.",
                hint="Delete it; it can't be seen in most editors.",
                effect=REST_UNREAD,
            )
            return slip, number, found.start() + 1
    return _plain_slip("unreadable"), 1, 1


def _at_end(lines: list[str], line: int) -> bool:
    return not any(text.strip() for text in lines[line - 1 :]) or (
        line >= len(lines) and not lines[-1].strip()
    )


def _half_written(error: yaml.YAMLError, *, line: int) -> Slip:
    begun = getattr(error, "context_mark", None)
    first = line if begun is None else begun.line + 1
    since = f" It began on line {first}." if first < line else ""
    return Slip(
        code="half-written",
        message=f"The file ends in the middle of an entry.{since}",
        hint="Close the quote or bracket, or go back to a copy that is whole.",
        effect="The unfinished entry isn't used.",
    )


def _colon_in_text(line: str) -> Slip:
    key, _, value = line.strip().partition(": ")
    quoted = value.replace('"', '\\"')
    return Slip(
        code="colon-in-text",
        message="Text that holds ': ' needs quotes.",
        hint=f'Write {key}: "{quoted}"',
        effect=REST_UNREAD,
    )


def _plain_slip(problem: str) -> Slip:
    return Slip(
        code="not-yaml",
        message=f"The file can't be read as YAML from here on: {problem}.",
        hint="Look for a bracket, quote or indentation that doesn't match; "
        "text that begins with a sign such as @, %, * or & goes in quotes.",
        effect=REST_UNREAD,
    )


def key_without_value(key: Scalar, *, before: Node | None) -> tuple[Slip, Scalar]:
    """The slip for `{price: 3,50}` and `{a:1}`, and the text it is about.

    `before` is the value that ends where the key begins, apart from the comma.
    """
    if isinstance(before, Scalar) and before.text[-1:].isdigit() and key.text[:1].isdigit():
        slip = Slip(
            code="comma-decimal",
            message=f"`{before.text},{key.text}` in braces is two entries.",
            hint=f"Write {before.text}.{key.text}.",
        )
        return slip, before
    left, colon, right = key.text.partition(":")
    if colon and left and right:
        slip = Slip(
            code="key-without-value",
            message=f"'{key.text}' has no value: a colon needs a space after it.",
            hint=f"Write {left}: {right}",
        )
        return slip, key
    slip = Slip(
        code="key-without-value",
        message=f"'{key.text}' has no value.",
        hint="In braces a comma always separates: write `key: value`, or put text with a comma "
        "in quotes.",
    )
    return slip, key


def key_twice(key: Scalar, *, first: Place) -> Slip:
    """The slip for a key that is there already."""
    return Slip(
        code="key-twice",
        message=f"'{key.text}' is there twice (lines {first.line} and {key.place.line}).",
        hint="Rename one, or keep only one.",
        effect="Only the first is looked at until this is settled.",
    )


KEY_NOT_TEXT = Slip(
    code="key-not-text",
    message="a list or mapping stands where a key belongs.",
    hint="Keys are words or names. Text that holds ': ' or begins with a bracket goes in quotes.",
)

KEY_EMPTY = Slip(
    code="key-not-text",
    message="nothing stands where a key belongs.",
    hint="Write a word or a name before the colon.",
)

SECOND_DOCUMENT = Slip(
    code="second-document",
    message="A second document begins here ('---').",
    hint="Take the line '---' out, or put what follows into a file of its own.",
    effect="What follows isn't used.",
)


def not_here(what: str, text: str, *, code: str) -> Slip:
    """The slip for a part of YAML that force folders do without."""
    return Slip(
        code=code,
        message=f"'{text}' is {what}, which force folders don't use.",
        hint="Write the values out in full; text that begins with such a sign goes in quotes.",
        effect=NOT_USED,
    )


def bound_slip(what: str) -> Slip:
    """The slip for a text that has more of something than is read."""
    return Slip(
        code="too-large",
        message=f"there are {what}.",
        hint="Split the file, or take out what isn't force data.",
        effect=REST_UNREAD,
    )
