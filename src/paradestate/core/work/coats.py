"""Which colours a batch needs, and which are mixed once for all later batches.

A part of `colours` that bears the name of a figure kind, of a sort or of a pattern is painted on
that alone; any other, such as a tunic, is worn by all foot and mounted figures.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from paradestate.core.bench import Bench, Coat
from paradestate.core.figure import FigureKind, Sort
from paradestate.core.work.stand_work import StandWork

PAINTED = "painted"
"""The stage to which colours bring a figure; where the owner has no such stage, any work does."""
WORN_BY = (Sort.FOOT, Sort.MOUNTED)


@dataclass(frozen=True, slots=True, kw_only=True)
class Mixed:
    """A colour that several batches need: mixed for the first, and kept for the others."""

    colour: str
    batches: tuple[int, ...]
    """Their numbers in the ladder, from 1."""


def colours_of(
    works: Iterable[StandWork],
    bench: Bench,
    *,
    figures: Mapping[str, FigureKind],
    patterns: frozenset[str],
) -> tuple[str, ...]:
    """The colours that stands still need, in the order of the files."""
    to_paint = [work for work in works if _is_to_be_painted(work, bench)]
    names: set[str] = set()
    sorts: set[Sort] = set()
    for work in to_paint:
        names |= {work.stand.pattern, *work.stand.figures}
        sorts |= {figures[kind].sort for kind in work.stand.figures if kind in figures}
    names |= {sort.value for sort in sorts}
    is_worn = not sorts.isdisjoint(WORN_BY)
    known = {*figures, *(sort.value for sort in Sort), *patterns}
    return tuple(
        dict.fromkeys(
            coat.colour
            for part, coats in bench.colours.items()
            if (part in names if part in known else is_worn)
            for coat in coats
        )
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A part of the uniform with its colours, as it is painted on one kind of figure."""

    name: str
    coats: tuple[Coat, ...]


def parts_of(
    kind: str,
    bench: Bench,
    *,
    pattern: str,
    figures: Mapping[str, FigureKind],
    patterns: frozenset[str],
) -> tuple[Part, ...]:
    """What is painted on a figure of a kind that stands on a pattern, in the order of the files."""
    sort = figures[kind].sort
    names = {kind, pattern, sort.value}
    known = {*figures, *(each.value for each in Sort), *patterns}
    return tuple(
        Part(name=name, coats=coats)
        for name, coats in bench.colours.items()
        if (name in names if name in known else sort in WORN_BY)
    )


def _is_to_be_painted(work: StandWork, bench: Bench) -> bool:
    return PAINTED in work.by_stage if PAINTED in bench.stages else bool(work.by_stage)


def mixed(colours: Iterable[tuple[str, ...]]) -> tuple[Mixed, ...]:
    """The colours that more than one batch needs, from the colours of each."""
    return tuple(
        Mixed(colour=colour, batches=tuple(batches))
        for colour, batches in _batches_of(colours).items()
        if len(batches) > 1
    )


def _batches_of(colours: Iterable[tuple[str, ...]]) -> Mapping[str, list[int]]:
    found: dict[str, list[int]] = {}
    for number, needed in enumerate(colours, start=1):
        for colour in needed:
            found.setdefault(colour, []).append(number)
    return found
