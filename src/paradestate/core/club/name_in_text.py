"""Where a name stands in texts, as a word of its own in letters of either case.

A letter with its accent is the same as the two written one after the other (Unicode, annex 15).
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from unicodedata import normalize


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Where a name begins; both count from 1."""

    line: int
    column: int


def spots_of(name: str, text: str) -> Iterator[Spot]:
    """Each place in a text at which the name stands."""
    spelt = (normalize(form, name).split() for form in ("NFC", "NFD"))
    forms = "|".join(r"\s+".join(map(re.escape, words)) for words in spelt)
    word = re.compile(rf"(?<!\w)(?:{forms})(?!\w)", re.IGNORECASE)
    for number, line in enumerate(text.splitlines(), 1):
        for found in word.finditer(line):
            yield Spot(line=number, column=found.start() + 1)


def is_name(value: str, name: str) -> bool:
    """Whether a value is the name and nothing else, whatever blanks there are."""
    return _plain(value) == _plain(name)


def _plain(text: str) -> str:
    return " ".join(normalize("NFC", text).casefold().split())
