"""Small forces in which one section is tried."""

from paradestate.core.force import Force
from paradestate.text.folder import read_files
from paradestate.text.writing import force_text

BASE = """\
format: 1
title: T
figures: {rifleman: {}, officer: {}}
stands: {rifle: {base: none, figures: {rifleman: 4, officer: 1}}, gun: {base: none}}
formations: {top: {parts: {rifle: 2, gun: 1}}}
raise: {formation: top}
"""


def slips(text: str) -> list[tuple[str, tuple[str, ...]]]:
    """Code and key path of every finding, remarks left out."""
    reading = read_files({"a.yaml": BASE.encode(), "b.yaml": text.encode()})
    return [(found.code, found.place.path) for found in reading.findings if found.level != "remark"]


def codes(text: str) -> list[str]:
    """The codes of all findings, remarks left out."""
    return [code for code, _ in slips(text)]


def messages(text: str, *, part: str = "message") -> list[str]:
    """The messages of all findings, or another part of them; remarks left out."""
    reading = read_files({"a.yaml": BASE.encode(), "b.yaml": text.encode()})
    return [getattr(found, part) for found in reading.findings if found.level != "remark"]


def force(text: str) -> Force:
    """The force that reads without a stop, and the same again when it is written and read."""
    reading = read_files({"a.yaml": BASE.encode(), "b.yaml": text.encode()})
    assert not [found for found in reading.findings if found.level == "stop"]
    again = read_files({"a.yaml": force_text(reading.force).encode()})
    assert again.force == reading.force
    return reading.force
