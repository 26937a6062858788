"""Text that a terminal shows and doesn't obey, whoever typed what it quotes."""

import unicodedata

TURNS = frozenset({"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"})
"""Letters that turn the direction of writing (Unicode Standard Annex 9): what follows one may seem
to say something else."""


def harmless(text: str) -> str:
    """The text with a sign in place of each letter at which a terminal does something."""
    if text.isascii() and text.isprintable():
        return text
    return "".join("\N{REPLACEMENT CHARACTER}" if _speaks(each) else each for each in text)


def _speaks(letter: str) -> bool:
    if letter in "\n\t":
        return False
    return unicodedata.category(letter) == "Cc" or unicodedata.bidirectional(letter) in TURNS
