"""Bases for the stands that still have to be based: by shape and size, with their area."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from paradestate.core.bench import Bench
from paradestate.core.fit import area
from paradestate.core.outline import Outline
from paradestate.core.stand import StandPattern
from paradestate.core.supplies import SquareMillimetres
from paradestate.core.work.cutting import SheetCount, cut_count, sheet_count
from paradestate.core.work.paint import figures_to
from paradestate.core.work.stand_work import StandWork

BASED = "based"
"""The stage that wants a base; where the owner has no such stage, the last one does."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Base:
    """Bases of one shape and size."""

    outline: Outline
    number: int
    with_spare: int
    from_sheet: int
    """Pieces as large as one that are cut from one sheet; 0 where it is larger than the sheet."""

    @property
    def area(self) -> SquareMillimetres:
        """Of all that are needed."""
        return SquareMillimetres(area(self.outline) * self.number)


@dataclass(frozen=True, slots=True, kw_only=True)
class Basing:
    """All bases."""

    bases: tuple[Base, ...]
    """In the order of the work."""
    area: SquareMillimetres
    """To be covered with ground."""
    with_spare: SquareMillimetres
    sheets: SheetCount
    """Magnetic or steel sheet for the bases with their spares."""


def basing(
    works: Iterable[StandWork], bench: Bench, *, patterns: Mapping[str, StandPattern]
) -> Basing:
    """The bases that stands still take; none of stands without a base, or by fixed ratio."""
    supplies = bench.supplies
    numbers: dict[Outline, int] = {}
    for work in works:
        pattern = patterns.get(work.stand.pattern)
        base = None if pattern is None else pattern.base
        if base is not None and figures_to(BASED, work, bench=bench):
            numbers[base] = numbers.get(base, 0) + 1
    bases = tuple(
        Base(
            outline=outline,
            number=number,
            with_spare=ceil(number * (1 + supplies.spare_taken)),
            from_sheet=cut_count(supplies.sheet_taken, outline),
        )
        for outline, number in numbers.items()
    )
    whole = sum((base.area for base in bases), Fraction(0))
    return Basing(
        bases=bases,
        area=SquareMillimetres(whole),
        with_spare=SquareMillimetres(whole * (1 + supplies.spare_taken)),
        sheets=sheet_count(supplies.sheet_taken, {base.outline: base.with_spare for base in bases}),
    )
