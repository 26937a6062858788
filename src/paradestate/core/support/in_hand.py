"""What is owned of the stands that supporting troops put down, once the must layer is served.

force, establishment, stands wanted beside -> how many of each are whole, by stage

Each pattern wanted together with the others, as if nothing else were taken; wished items don't
compete. Figures that may stand in do.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.number import NONE
from paradestate.core.strength import strength
from paradestate.core.unfolding import Stand

BESIDE = "supporting troops"
"""The wished item that the stands are counted under: served after every must."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InHand:
    """How much of what one pattern wants is there."""

    pattern: str
    wanted: int
    printed: bool
    """A marker of card suffices, so that nothing is lacking."""
    stages: Mapping[str, int]
    """Stage to stands that have all their figures, the least advanced at that stage; the last
    stage first."""

    @property
    def there(self) -> int:
        """Stands that have all their figures, at whatever stage."""
        return self.wanted if self.printed else sum(self.stages.values())


def in_hand(force: Force, made: Establishment, *, stands: Mapping[str, int]) -> tuple[InHand, ...]:
    """How far stands that are wanted beside the must layer are there, by pattern."""
    beside = [
        _stand(force, pattern, name=f"{BESIDE}, {pattern} {number}")
        for pattern, wanted in stands.items()
        for number in range(1, wanted + 1)
    ]
    stages = _stages(force, made, beside=beside)
    return tuple(
        InHand(
            pattern=pattern,
            wanted=wanted,
            printed=not force.stands[pattern].figures,
            stages=_counted(stages.get(pattern, []), order=force.bench.stages[::-1]),
        )
        for pattern, wanted in stands.items()
    )


def _stages(
    force: Force, made: Establishment, *, beside: list[Stand]
) -> Mapping[str, list[str | None]]:
    """Pattern to the stage of each stand that is wanted beside."""
    kinds = {kind for stand in beside for kind in stand.figures}
    serving = {
        name
        for name, figure in force.figures.items()
        if name in kinds or kinds & figure.may_stand_for.keys()
    }
    if not serving & _held(force):
        return {}
    must = tuple(stand for stand in made.stands if stand.layer is Need.MUST)
    found: dict[str, list[str | None]] = {}
    for state in strength(force, replace(made, stands=(*must, *beside))).stands:
        if state.stand.wishes:
            found.setdefault(state.stand.pattern, []).append(state.stage)
    return found


def _held(force: Force) -> set[str]:
    """Kinds of which a figure is owned, loose or on a stand."""
    on_stands = (
        kind
        for pattern, stages in force.stock_stands.items()
        if any(stages.values()) and pattern in force.stands
        for kind in force.stands[pattern].modelled
    )
    loose = (kind for kind, stages in force.stock.items() if any(stages.values()))
    return {*loose, *on_stands}


def _counted(stages: list[str | None], *, order: tuple[str, ...]) -> Mapping[str, int]:
    return {stage: stages.count(stage) for stage in order if stage in stages}


def _stand(force: Force, pattern: str, *, name: str) -> Stand:
    return Stand(
        name=name,
        pattern=pattern,
        wishes=(BESIDE,),
        is_wanted=True,
        figures=force.stands[pattern].figures,
        men=NONE,
        printed=force.stands[pattern].printed,
        company="",
        level=None,
        within=0,
    )
