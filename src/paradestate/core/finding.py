"""What is wrong or doubtful in the owner's files, as a value.

There is one class of finding for the whole program, so that every door (command line, page,
JSON) shows the same things. Imports places only.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from paradestate.core.place import Place


class Level(StrEnum):
    """How much a finding matters."""

    STOP = "stop"
    """No sum is possible until it is put right."""
    WARN = "warn"
    """The sum was made, and is doubtful."""
    REMARK = "remark"
    """Good to know."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One mistake or doubt: what, where, what it does to the result, what would put it right."""

    level: Level
    code: str
    """Stable name for programs and for the page of findings, such as `unknown-word`."""
    message: str
    effect: str
    hint: str
    place: Place
    related: tuple[Place, ...] = ()


def in_reading_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The findings sorted by file, line and column, each only once."""
    unique = dict.fromkeys(findings)
    return tuple(sorted(unique, key=lambda found: (found.place, found.level, found.code)))


def stops(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Those findings that prevent an answer."""
    return tuple(found for found in findings if found.level is Level.STOP)
