"""Ways out that findings name by the options of a command, in the words of a page."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from paradestate.core.finding import Finding


def in_words(findings: Iterable[Finding], words: Mapping[str, str]) -> tuple[Finding, ...]:
    """The findings with what their hints say of the command said as the page has it."""
    return tuple(replace(found, hint=_worded(found.hint, words)) for found in findings)


def _worded(hint: str, words: Mapping[str, str]) -> str:
    for option, said in words.items():
        hint = hint.replace(option, said)
    return hint
