"""A QR code (ISO/IEC 18004) as a drawing of ours, dark on light in any scheme."""

from collections.abc import Iterator
from itertools import groupby

import segno

from paradestate.sheet.svg import Drawing, drawing, element

QUIET = 4
"""Modules of white around it, as the standard asks."""


def qr_code(text: str, *, words: str) -> Drawing:
    """The code of a text; one module is one unit.

    White and black are fixed: a code in light on dark isn't read by every phone.
    """
    matrix = segno.make_qr(text, error="m").matrix
    side = len(matrix) + 2 * QUIET
    return drawing(
        [
            element("rect", width=side, height=side, fill="#fff"),
            element("path", d="".join(_runs(matrix)), fill="#000"),
        ],
        size=(side, side),
        words=words,
        class_="drawing qr",
    )


def _runs(matrix: tuple[bytearray, ...]) -> Iterator[str]:
    """A bar for each run of dark modules in a row."""
    for down, row in enumerate(matrix):
        across = 0
        for is_dark, run in groupby(row):
            length = len(list(run))
            if is_dark:
                yield f"M{across + QUIET} {down + QUIET}h{length}v1h-{length}z"
            across += length
