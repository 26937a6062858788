"""Whose mark it is: what was read on a stand, in words, and the units that it may be.

A mark is read in parts: "yellow, three bars", or "sky blue, no bars, ring". A colour may be named
by one of its words; parts that aren't named are left open. Where the sign that was read isn't the
one that is due, one part was misread, and every unit is told that would differ in that part alone.
"""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from paradestate.core.mark.code import Mark, Sign
from paradestate.core.mark.marking import Marking
from paradestate.core.mark.unit import Unit
from paradestate.core.sentence.wording import SMALL

LONGEST = 200
"""Letters of what is typed that are looked at."""

PLAIN = "plain"
"""How the plate without a colour is called."""

_WORD = re.compile(r"[^\W_]+(?:[-'][^\W_]+)*")
_NUMBERS: Mapping[str, int] = {
    **{word: number for number, word in enumerate(SMALL)},
    **{str(number): number for number in range(len(SMALL))},
    "without": 0,
    "a": 1,
    "single": 1,
}
_BARS = {"bar", "bars", "stripe", "stripes"}
_IDLE = {"and", "with", "a", "the"}


class Doubt(StrEnum):
    """Why a mark that was read doesn't lead to one unit."""

    NONE = "none"
    NOTHING_READ = "nothing read"
    UNKNOWN_WORD = "unknown word"
    SEVERAL = "several"
    """More than one bears what was read."""
    MISREAD = "misread"
    """Nobody bears it: one part was misread."""
    NOBODY = "nobody"


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkRead:
    """What was read; what wasn't is left open."""

    colours: tuple[str, ...] = ()
    """Names that it may be; empty where no colour was read, an empty name for the plain plate."""
    bars: int | None = None
    sign: Sign | None = None
    unknown: tuple[str, ...] = ()
    """Words that mean nothing here."""

    @property
    def is_empty(self) -> bool:
        """Whether no part was read."""
        return not self.colours and self.bars is None and self.sign is None


@dataclass(frozen=True, slots=True, kw_only=True)
class Bearer:
    """A unit with its mark."""

    unit: Unit
    mark: Mark


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """Whose mark it is."""

    read: MarkRead
    doubt: Doubt
    bearers: tuple[Bearer, ...]
    """The unit that it is, or those that it may be."""


def mark_read(text: str, colours: Iterable[str]) -> MarkRead:
    """The parts that words name, of a force with these colours."""
    words = [word.casefold() for word in _WORD.findall(text[:LONGEST])]
    names = {name: [word.casefold() for word in _WORD.findall(name)] for name in colours}
    signs = [Sign(word) for word in words if word in set(Sign)]
    used = {str(sign) for sign in signs} | _BARS | _IDLE
    bars, numbers = _bars(words)
    of_colours = [word for word in words if word not in used | numbers]
    found, known = _colours(of_colours, names)
    return MarkRead(
        colours=found,
        bars=bars,
        sign=signs[-1] if signs else None,
        unknown=tuple(word for word in of_colours if word not in known),
    )


def _bars(words: Sequence[str]) -> tuple[int | None, set[str]]:
    """The number of bars, and the words that say it: the last number right before `bars`."""
    for at in range(len(words) - 1, 0, -1):
        if words[at] in _BARS and words[at - 1] in _NUMBERS:
            return _NUMBERS[words[at - 1]], {words[at - 1]}
    return (1, set()) if "bar" in words else (None, set())


def _colours(
    words: Sequence[str], names: Mapping[str, Sequence[str]]
) -> tuple[tuple[str, ...], set[str]]:
    """The colours that hold most of the words, and the words that some colour has."""
    known = {word for word in words if any(word in parts for parts in names.values())}
    plain = {PLAIN} & set(words)
    if not known:
        return ("",) * bool(plain), plain
    held = {name: len(known & set(parts)) for name, parts in names.items()}
    most = max(held.values())
    return tuple(name for name, number in held.items() if number == most), known | plain


def reading(read: MarkRead, marks: Marking) -> Reading:
    """The units that bear what was read; where none does, those one misread part away."""
    every = [
        Bearer(unit=unit, mark=mark) for mark, units in marks.by_mark.items() for unit in units
    ]
    if read.unknown or read.is_empty:
        doubt = Doubt.UNKNOWN_WORD if read.unknown else Doubt.NOTHING_READ
        return Reading(read=read, doubt=doubt, bearers=())
    fit = tuple(each for each in every if _parts_wrong(each.mark, read) == 0)
    if fit:
        doubt = Doubt.NONE if len(fit) == 1 else Doubt.SEVERAL
        return Reading(read=read, doubt=doubt, bearers=fit)
    near = tuple(each for each in every if _parts_wrong(each.mark, read) == 1)
    is_whole = bool(read.colours) and read.bars is not None and read.sign is not None
    if near and is_whole:
        return Reading(read=read, doubt=Doubt.MISREAD, bearers=near)
    return Reading(read=read, doubt=Doubt.NOBODY, bearers=())


def _parts_wrong(mark: Mark, read: MarkRead) -> int:
    """How many of the parts that were read aren't those of a mark."""
    return sum(
        (
            bool(read.colours) and mark.colour not in read.colours,
            read.bars is not None and mark.bars != read.bars,
            read.sign is not None and mark.sign is not read.sign,
        )
    )
