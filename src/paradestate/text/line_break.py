"""Text that went through a form, back to the line breaks of the file that it came from.

A form sends every line break as CR LF, and never the mark at the beginning of a file.
"""

import re

from paradestate.text.editing import BYTE_ORDER_MARK

USUAL = "\n"
_BREAK = re.compile("\r\n|\r|\n")


def line_breaks(text: str) -> tuple[str, ...]:
    """The sorts of line break in a text, the most frequent first."""
    found = _BREAK.findall(text)
    return tuple(sorted(set(found), key=lambda each: (-found.count(each), each)))


def as_in_form(text: str) -> str:
    """The text as a form shows it: every line break is one sign."""
    return _BREAK.sub(USUAL, text)


def bytes_from_form(text: str, *, before: bytes) -> bytes:
    """The bytes to write for a text out of a form, in the manner of the file that was there.

    A file that has several sorts of line break gets the most frequent one throughout; where the
    text says what the file said, its bytes are left as they are.
    """
    old = before.decode("utf-8-sig", errors="replace")
    if as_in_form(text) == as_in_form(old):
        return before
    usual = (*line_breaks(old), USUAL)[0]
    mark = BYTE_ORDER_MARK if before.startswith(BYTE_ORDER_MARK) else b""
    return mark + as_in_form(text).replace(USUAL, usual).encode("utf-8", errors="replace")
