"""Where a name stands in texts, as a word of its own in letters of either case."""

import re
from collections.abc import Iterator
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Where a name begins; both count from 1."""

    line: int
    column: int


def spots_of(name: str, text: str) -> Iterator[Spot]:
    """Each place in a text at which the name stands."""
    word = re.compile(rf"(?<!\w){re.escape(name)}(?!\w)", re.IGNORECASE)
    for number, line in enumerate(text.splitlines(), 1):
        for found in word.finditer(line):
            yield Spot(line=number, column=found.start() + 1)


def is_name(value: str, name: str) -> bool:
    """Whether a value is the name and nothing else."""
    return value.strip().casefold() == name.casefold()
