"""What brings a stand on by one stage of completion."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

from paradestate.core.strength import Filling


class Held(Protocol):
    """A stand with what it has."""

    @property
    def lacking(self) -> Mapping[str, int]:
        """Kind to figures that it still wants."""

    @property
    def fillings(self) -> Sequence[Filling]:
        """What it has of the figures that it wants."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NextStep:
    """Figures of a stand that are brought from their stage to the one after it."""

    from_stage: str
    to_stage: str
    figures: Mapping[str, int]
    """Owned kind to number: the least advanced of the stand."""
    is_whole: bool
    """Whether that is all of the stand, each figure as itself, so that it moves as one piece."""


def next_step(state: Held, *, stages: Sequence[str]) -> NextStep | None:
    """The step of a stand's least advanced figures; None where it holds none or is finished."""
    unfinished = [each for each in state.fillings if each.stage != stages[-1]]
    if not unfinished:
        return None
    stage = min((each.stage for each in unfinished), key=stages.index)
    least = [each for each in state.fillings if each.stage == stage]
    figures: dict[str, int] = {}
    for each in least:
        figures[each.kind] = figures.get(each.kind, 0) + each.number
    return NextStep(
        from_stage=stage,
        to_stage=stages[stages.index(stage) + 1],
        figures=figures,
        is_whole=not state.lacking
        and len(least) == len(state.fillings)
        and all(each.kind == each.stands_for for each in least),
    )
