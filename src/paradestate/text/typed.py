"""What is typed beside a command: numbers by name, dates, and lists of wants."""

import re

from paradestate.core.span import DateSpan
from paradestate.text.date import read_date
from paradestate.text.number import read_whole
from paradestate.text.slip import Slip

_NAME = r"""\s*(?:"(?P<double>[^"]*)"|'(?P<single>[^']*)'|(?P<plain>[^,="']+))\s*"""
_PAIR = re.compile(rf"{_NAME}=\s*(?P<number>[^,]*)(?:,|$)")
_ONE = re.compile(rf"{_NAME}(?:,|$)")


def read_numbers(text: str) -> dict[str, int] | Slip:
    """Names with whole numbers: `rifleman=50, officer=4`; odd names in quotes as in YAML."""
    found: dict[str, int] = {}
    position = 0
    while position < len(text.rstrip()):
        match = _PAIR.match(text, position)
        if match is None:
            return _not_pairs(text)
        number = read_whole(match["number"].strip(), least=0)
        if isinstance(number, Slip):
            return number
        name = _name(match)
        found[name] = found.get(name, 0) + number
        position = match.end()
    return found or _not_pairs(text)


def read_names(text: str) -> tuple[str, ...] | Slip:
    """Names with commas between: `North, South`."""
    found: list[str] = []
    position = 0
    while position < len(text.rstrip()):
        match = _ONE.match(text, position)
        if match is None:
            return _not_pairs(text)
        found.append(_name(match))
        position = match.end()
    return tuple(found)


def _name(match: re.Match[str]) -> str:
    quoted = match["double"] if match["double"] is not None else match["single"]
    return match["plain"].strip() if quoted is None else quoted


def _not_pairs(text: str) -> Slip:
    return Slip(
        code="not-names-and-numbers",
        message=f"'{text}' isn't names and numbers.",
        hint="Write name=number with commas between; names with commas or = go in quotes.",
    )


def read_typed_date(text: str) -> DateSpan | Slip:
    """A date as it stands in files."""
    return read_date(text.strip())
