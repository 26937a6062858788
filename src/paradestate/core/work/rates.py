"""How many minutes figures and stands take at the bench, stage by stage.

Minutes are those that the owner gives: of a kind before those of its sort; `minutes per stand`
before both, split over the stages as those of its figures are, else in equal parts.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Protocol

from paradestate.core.bench import Bench
from paradestate.core.figure import FigureKind


class Made(Protocol):
    """A pattern as the bench sees it: its name and the figures on one stand of it."""

    @property
    def name(self) -> str:
        """Of the pattern."""

    @property
    def figures(self) -> Mapping[str, int]:
        """Kind to number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rates:
    """Minutes of work by what is worked on."""

    bench: Bench
    figures: Mapping[str, FigureKind]

    def by_stage(self, kind: str) -> Mapping[str, Fraction] | None:
        """Minutes to reach each stage for a figure; None where nothing is said of it."""
        known = self.figures.get(kind)
        minutes = self.bench.minutes
        sort = known.sort.value if known else ""
        return minutes.get(kind, minutes.get(sort))

    def unknown(self, pattern: Made) -> tuple[str, ...]:
        """The kinds of a pattern for which minutes would have to be given."""
        if pattern.name in self.bench.minutes_per_stand:
            return ()
        return tuple(kind for kind in pattern.figures if self.by_stage(kind) is None)

    def left(self, pattern: Made, kind: str, *, stage: str) -> Fraction:
        """Minutes that a figure on a stand of a pattern still takes from a stage on."""
        return sum(self.left_by_stage(pattern, kind, stage=stage).values(), Fraction(0))

    def left_by_stage(self, pattern: Made, kind: str, *, stage: str) -> Mapping[str, Fraction]:
        """The same by the stages that it still has to reach, in their order."""
        to_come = self._stages[self._stages.index(stage) + 1 :]
        whole = self.bench.minutes_per_stand.get(pattern.name)
        if whole is None or not to_come:
            table = self.by_stage(kind) or {}
            return {each: table.get(each, Fraction(0)) for each in to_come}
        return {each: whole * self.share(pattern, stage=each) for each in to_come}

    def share(self, pattern: Made, *, stage: str) -> Fraction:
        """The part of a whole stand's minutes that bringing one of its figures to a stage takes."""
        parts = self._parts(pattern)
        whole = sum(parts.values(), Fraction(0)) * sum(pattern.figures.values())
        return parts[stage] / whole if whole else Fraction(0)

    @property
    def _stages(self) -> Sequence[str]:
        return self.bench.stages

    def _parts(self, pattern: Made) -> Mapping[str, Fraction]:
        """How the minutes of a whole stand are split over the stages after the first."""
        parts = dict.fromkeys(self._stages[1:], Fraction(0))
        for kind, number in pattern.figures.items():
            for stage, minutes in (self.by_stage(kind) or {}).items():
                if stage in parts:
                    parts[stage] += minutes * number
        return parts if any(parts.values()) else dict.fromkeys(parts, Fraction(1))
