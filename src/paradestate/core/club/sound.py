"""What a club has to give out of what a force owns: finished and here, or not finished yet."""

from collections.abc import Mapping

from paradestate.core.club.enough import Stock
from paradestate.core.force import Force
from paradestate.core.number import summed


def sound_stock(force: Force) -> Stock:
    """Figures at the last stage, loose or on stands; what went back to an earlier one is in repair.

    What is lent is no part of the stock of a force that is counted without it.
    """
    stages = force.bench.stages
    return Stock(
        sound=_at(force, stages[-1:]), in_repair=_at(force, stages[:-1]), figures=force.figures
    )


def _at(force: Force, stages: tuple[str, ...]) -> Mapping[str, int]:
    loose = (
        {kind: by_stage[stage]}
        for kind, by_stage in force.stock.items()
        for stage in by_stage
        if stage in stages
    )
    on_stands = (
        {kind: each * by_stage[stage] for kind, each in force.stands[pattern].modelled.items()}
        for pattern, by_stage in force.stock_stands.items()
        for stage in by_stage
        if stage in stages and pattern in force.stands
    )
    return {kind: number for kind, number in summed((*loose, *on_stands)).items() if number}
