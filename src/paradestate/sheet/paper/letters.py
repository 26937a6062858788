"""The letters that papers can print: those of the faces that they are set in."""

from functools import lru_cache

from paradestate.sheet.paper.plain_value import Plain, plain
from paradestate.sheet.paper.typesetting import FACES

SPACING = frozenset("\u00a0\u00ad\u200b\u2060\t\n ")
"""Stand for room or a break, and need no letter."""


@lru_cache(maxsize=1)
def printable() -> frozenset[str]:
    """Every letter that the faces have."""
    listed = (FACES / "letters.txt").read_text(encoding="ascii").split()
    return frozenset(chr(int(letter, 16)) for letter in listed) | SPACING


def unprintable(value: object) -> tuple[str, ...]:
    """The texts of a record in which a letter is none that papers can print, each once."""
    texts = dict.fromkeys(_texts(plain(value)))
    return tuple(text for text in texts if not printable().issuperset(text))


def _texts(value: Plain) -> list[str]:
    match value:
        case str():
            return [value]
        case list():
            return [text for each in value for text in _texts(each)]
        case dict():
            return [text for each in value.values() for text in _texts(each)]
        case _:
            return []
