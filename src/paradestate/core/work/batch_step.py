"""What brings the stands of a batch on by one stage: the same step for all that are alike.

Figures that are lacking take no part: a stand that has only some of its own brings these on.
"""

from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.next_step import next_step
from paradestate.core.number import summed
from paradestate.core.work.ladder import Rung


@dataclass(frozen=True, slots=True, kw_only=True)
class StandStep:
    """One stand with the figures of it that are brought on."""

    stand: str
    figures: Mapping[str, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchStep:
    """Stands of a batch that stand at one stage, and the stage that comes next."""

    batch: int
    pattern: str
    from_stage: str
    to_stage: str
    parts: tuple[StandStep, ...]
    is_whole: bool
    """Whether they move under their names: each has all its figures, at this stage, as itself."""

    @property
    def number(self) -> int:
        """How many stands it is about."""
        return len(self.parts)

    def stands(self, number: int) -> tuple[str, ...]:
        """The first so many of them by name; none where they don't move as stands."""
        return tuple(part.stand for part in self.parts[:number]) if self.is_whole else ()

    def figures(self, number: int) -> Mapping[str, int]:
        """The figures on the first so many."""
        return summed(part.figures for part in self.parts[:number])


def batch_steps(
    rung: Rung, *, stages: Sequence[str], raised: Container[str]
) -> tuple[BatchStep, ...]:
    """The steps of a batch, the least advanced first; none where nothing of it is owned.

    A stand that isn't among those `raised` has no name in the journal, so that its figures are
    brought on without it.
    """
    alike: dict[tuple[str, str, bool], list[StandStep]] = {}
    for work in rung.works:
        step = next_step(work, stages=stages)
        if step is not None:
            is_whole = step.is_whole and work.stand.name in raised
            key = (step.from_stage, step.to_stage, is_whole)
            part = StandStep(stand=work.stand.name, figures=step.figures)
            alike.setdefault(key, []).append(part)
    made = [
        BatchStep(
            batch=rung.number,
            pattern=rung.pattern,
            from_stage=from_stage,
            to_stage=to_stage,
            parts=tuple(parts),
            is_whole=is_whole,
        )
        for (from_stage, to_stage, is_whole), parts in alike.items()
    ]
    return tuple(sorted(made, key=lambda step: (stages.index(step.from_stage), not step.is_whole)))
