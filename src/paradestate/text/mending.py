"""Offers that a finding makes, made in the text: a word that isn't known becomes the nearest one.

Only what stands at the finding's place is replaced, and only where it is the word in question.
"""

import re

from paradestate.core.finding import Finding
from paradestate.text.extent import BREAK
from paradestate.text.rendering import flow_text

OFFERED = frozenset({"unknown-word", "unknown-name"})
"""Findings whose offer is a word that can stand in the place of the one that is there."""

_OFFER = re.compile(r"Did you mean '(?P<word>.+)'\?", re.DOTALL)
_FOUND = re.compile(r"(?:^|: )'(?P<word>.+)' (?:isn't|is neither) ", re.DOTALL)
_ENDS = frozenset(" \t\r\n:,]}#")
"""What may follow a word in YAML."""


def offered_word(found: Finding) -> str | None:
    """The word that a finding offers instead of what stands there; None where it offers none."""
    match = _OFFER.fullmatch(found.hint) if found.code in OFFERED else None
    return None if match is None else match["word"]


def mended(text: str, found: Finding) -> str | None:
    """The text with a finding's offer taken; None where that can't be done without a doubt."""
    offer, said = offered_word(found), _FOUND.search(found.message)
    start = index_of(text, line=found.place.line, column=found.place.column)
    if offer is None or said is None or start is None:
        return None
    there = _written_at(text, start, word=said["word"])
    if there is None:
        return None
    return text[:start] + flow_text(offer) + text[start + len(there) :]


def _written_at(text: str, start: int, *, word: str) -> str | None:
    """The word as it stands there, in quotes or without."""
    for written in (word, f"'{word}'", f'"{word}"'):
        behind = start + len(written)
        if text.startswith(written, start) and text[behind : behind + 1] in {"", *_ENDS}:
            return written
    return None


def index_of(text: str, *, line: int, column: int) -> int | None:
    """Where in a text a line and column are, both counted from 1; None where there is no such."""
    start = 0
    for _ in range(line - 1):
        ends = BREAK.search(text, start)
        if ends is None:
            return None
        start = ends.end()
    index = start + column - 1
    return index if start <= index <= len(text) else None
