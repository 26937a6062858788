"""Text in whatever encoding the output has."""

import codecs
import io
import sys

PLAIN = {
    "£": "GBP ",
    "€": "EUR ",
    "█": "#",
    "░": ".",
    "│": "|",
    "├": "|",
    "┝": "+",
    "─": "-",
    "━": "=",
    "²": "2",
    "×": "x",
    "±": "+/-",
    "…": "...",
}
"""What is printed instead where the output's encoding lacks a letter."""


def _plainly(error: UnicodeError) -> tuple[str, int]:
    """Stand-ins for letters that can't be encoded; others as their number, so nothing is lost."""
    if not isinstance(error, UnicodeEncodeError):
        raise error
    letters = error.object[error.start : error.end]
    return "".join(PLAIN.get(letter, f"<U+{ord(letter):04X}>") for letter in letters), error.end


def speak_plainly() -> None:
    """Lets standard output and error print any text in whatever encoding they have."""
    codecs.register_error("plainly", _plainly)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="plainly")
