"""Findings as compilers print them, and as JSON."""

import os
import shutil
import sys
import textwrap
import unicodedata
from collections import Counter
from collections.abc import Mapping, Sequence

import click

from paradestate.cli.harmless import harmless
from paradestate.core.finding import Finding, Level
from paradestate.core.place import Place

COLOURS = {Level.STOP: "red", Level.WARN: "yellow", Level.REMARK: "cyan"}
INDENT = "    "
LEAST_ROOM = 30
"""Columns of the narrowest terminal for which lines are broken, the indent left out."""
PLURALS = {Level.STOP: "stop", Level.WARN: "warning", Level.REMARK: "remark"}


def print_findings(findings: Sequence[Finding], texts: Mapping[str, str]) -> None:
    """All findings with their source lines to standard error, and how many there are."""
    for finding in findings:
        _say(_headline(finding))
        _say_source(finding.place, texts)
        for sentence in (finding.effect, finding.hint):
            for line in _lines(sentence):
                _say(f"{INDENT}{line}")
    if findings:
        _say(summary(findings))


def _lines(sentence: str) -> list[str]:
    """The sentence as it fits into a terminal; whole where it goes into a file or a program."""
    sentence = harmless(sentence)
    if not sys.stderr.isatty():
        return [sentence]
    room = max(shutil.get_terminal_size().columns - len(INDENT), LEAST_ROOM)
    return textwrap.wrap(sentence, room, break_long_words=False, break_on_hyphens=False) or [""]


def _say(text: str) -> None:
    plain = "NO_COLOR" in os.environ or not sys.stderr.isatty()
    click.echo(click.unstyle(text) if plain else text, err=True)


def _headline(finding: Finding) -> str:
    level = click.style(f"{finding.level}:", fg=COLOURS[finding.level], bold=True)
    message = harmless(finding.message.replace("\n", "\\n"))
    return f"{finding.place}: {level} {message} [{finding.code}]"


def _say_source(place: Place, texts: Mapping[str, str]) -> None:
    """The line of a place, with a caret under its column."""
    lines = texts.get(place.file, "").split("\n")
    if place.cell:
        _say(f"    {place.cell}")
    elif place.line <= len(lines) and lines[place.line - 1].strip():
        line = lines[place.line - 1].rstrip("\r")
        before = line[: place.column - 1].expandtabs(4)
        _say(f"    {line.expandtabs(4)}")
        _say(f"    {' ' * width(before)}^")


def width(text: str) -> int:
    """How many columns of a terminal a text takes."""
    wide = sum(unicodedata.east_asian_width(letter) in "WF" for letter in text)
    nothing = sum(unicodedata.combining(letter) > 0 for letter in text)
    return len(text) + wide - nothing


def summary(findings: Sequence[Finding]) -> str:
    """How many findings of each level: `2 stops, 1 warning`."""
    counted = Counter(finding.level for finding in findings)
    words = [
        f"{counted[level]} {PLURALS[level]}{'' if counted[level] == 1 else 's'}"
        for level in Level
        if counted[level]
    ]
    return ", ".join(words)
