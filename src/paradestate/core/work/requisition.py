"""The requisition: what the work uses up, paint and bases, and what nobody could reckon."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import nearest_place
from paradestate.core.sentence.wording import counted, listed
from paradestate.core.work.basing import Basing, basing
from paradestate.core.work.ladder import Rung
from paradestate.core.work.paint import PaintTable, paint_table


@dataclass(frozen=True, slots=True, kw_only=True)
class Requisition:
    """What the batches take."""

    batches: int
    stands: int
    paint: PaintTable
    basing: Basing


def requisition(rungs: Sequence[Rung], force: Force) -> Requisition:
    """What these batches of a force use up."""
    works = [work for rung in rungs for work in rung.works]
    return Requisition(
        batches=len(rungs),
        stands=len(works),
        paint=paint_table(
            works, force.bench, figures=force.figures, patterns=frozenset(force.stands)
        ),
        basing=basing(works, force.bench, patterns=force.stands),
    )


def requisition_findings(made: Requisition, force: Force) -> Iterator[Finding]:
    """What was left out of it, and how to have it in."""
    if made.paint.unknown:
        yield _unknown(made.paint.unknown, force)


def _unknown(kinds: Mapping[str, int], force: Force) -> Finding:
    first = next(iter(kinds))
    return Finding(
        level=Level.WARN,
        code="painted-surface-unknown",
        message=f"No size is given for {listed(kinds)}: {counted(kinds)}.",
        effect="Paint for them isn't counted.",
        hint=f"Give them a height (and a footprint, where they aren't on foot or mounted), or "
        f"say under 'bench' what paint covers: supplies: {{area: {{{first}: 3 cm2}}}}.",
        place=nearest_place(force.places, ("figures", first)),
    )
