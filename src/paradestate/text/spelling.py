"""Nearest words, and letters that look like others. Imports nothing of the project."""

import unicodedata
from collections.abc import Iterable
from difflib import get_close_matches

ODD_SPACES = frozenset("\u00a0\u2007\u202f\u200b\u200c\u200d\u2060\ufeff\u3000")
"""No-break, zero-width and other spaces that look like a usual one, or like nothing."""

MOST_LISTED = 12
"""Known words that a hint lists."""

LOOK_ALIKE_ALPHABETS = frozenset({"LATIN", "CYRILLIC", "GREEK"})
"""Alphabets that share the shapes of many letters."""


def tidy(text: str) -> str:
    """The text as names are matched: Unicode NFC, without spaces at the ends."""
    return text.strip() if text.isascii() else unicodedata.normalize("NFC", text).strip()


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word most like `word`, or None where none is near."""
    by_folded = {candidate.casefold(): candidate for candidate in known}
    found = get_close_matches(word.casefold(), by_folded, n=1, cutoff=0.6)
    return by_folded[found[0]] if found else None


def nearest_hint(word: str, known: Iterable[str]) -> str:
    """A sentence that offers the nearest known word, or lists the first of them."""
    names = list(known)
    close = nearest(word, names)
    if close is not None:
        return f"Did you mean '{close}'?"
    if not names:
        return "None is known here yet."
    listed = ", ".join(f"'{name}'" for name in names[:MOST_LISTED])
    more = f" and {len(names) - MOST_LISTED} more" if len(names) > MOST_LISTED else ""
    return f"Known here: {listed}{more}."


def alphabets(word: str) -> dict[str, list[str]]:
    """The alphabets of a word's letters, each with those letters."""
    found: dict[str, list[str]] = {}
    for letter in word:
        if letter.isalpha():
            name = unicodedata.name(letter, "UNKNOWN").split(" ", 1)[0]
            found.setdefault(name, []).append(letter)
    return found


def strange_letters(text: str) -> tuple[str, str, list[str]] | None:
    """The first word that mixes look-alike alphabets: the word, the minor alphabet, its letters."""
    if text.isascii():
        return None
    for word in text.split():
        mixed = {
            name: letters
            for name, letters in alphabets(word).items()
            if name in LOOK_ALIKE_ALPHABETS
        }
        if len(mixed) > 1:
            minor = min(mixed, key=lambda name: len(mixed[name]))
            return word, minor.capitalize(), mixed[minor]
    return None


def odd_spaces(text: str) -> list[str]:
    """The names of the odd spaces in a text, in order."""
    if text.isascii():
        return []
    return [unicodedata.name(letter).lower() for letter in text if letter in ODD_SPACES]
