"""Bytes to text: UTF-8 only, with a clear word for anything else."""

from paradestate.core.finding import Finding, Level
from paradestate.core.place import Place

MOST_BYTES = 8 * 1024 * 1024
"""A larger file isn't force data."""

_SIGNATURES = (
    (b"\x89PNG", "a picture (PNG)"),
    (b"\xff\xd8\xff", "a picture (JPEG)"),
    (b"GIF8", "a picture (GIF)"),
    (b"%PDF", "a PDF document"),
    (b"PK\x03\x04", "a zipped file or spreadsheet"),
    (b"\xd0\xcf\x11\xe0", "an old office document"),
    (b"SQLite format 3", "a database"),
    (b"\x1f\x8b", "a compressed file"),
)
_WIDE = ((b"\xff\xfe", "UTF-16"), (b"\xfe\xff", "UTF-16"))


def decoded(data: bytes, *, file: str) -> tuple[str | None, tuple[Finding, ...]]:
    """The text of a file, or None with the finding that says what the file is instead."""
    for signature, what in _SIGNATURES:
        if data.startswith(signature):
            return None, (
                _stop(code="not-text", message=f"This is {what}, not force data.", file=file),
            )
    if len(data) > MOST_BYTES:
        size = f"{len(data) / 1024 / 1024:.1f} MB"
        return None, (
            _stop(
                code="too-large", message=f"The file has {size}; 8 MB is the most read.", file=file
            ),
        )
    for signature, name in _WIDE:
        if data.startswith(signature):
            return None, (
                _stop(code="not-utf-8", message=f"The file is written in {name}.", file=file),
            )
    try:
        return data.decode("utf-8-sig"), ()
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8", errors="replace")
        line = before.count("\n") + 1
        column = len(before) - (before.rfind("\n") + 1) + 1
        message = f"The byte {data[error.start]:02X} here isn't UTF-8."
        return None, (
            _stop(code="not-utf-8", message=message, file=file, line=line, column=column),
        )


def _stop(*, code: str, message: str, file: str, line: int = 1, column: int = 1) -> Finding:
    hints = {
        "not-text": "Take it out of the folder, or give it another ending.",
        "too-large": "Split the file, or take out what isn't force data.",
        "not-utf-8": "Save the file with the encoding UTF-8.",
    }
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect="Nothing of this file is read.",
        hint=hints[code],
        place=Place(file=file, line=line, column=column),
    )
