"""What it would cost to buy again all that is owned.

folder -> holdings, here and lent -> figures by kind -> those that are sold -> cheapest order
"""

import datetime
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.holdings import Holdings, piles, together
from paradestate.core.source import sold_kinds
from paradestate.journeys.check import Checked
from paradestate.journeys.holdings import HeldCollection, holdings
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.order import OrderJourney, Request, Search, order


@dataclass(frozen=True, slots=True, kw_only=True)
class Replacement:
    """The cheapest order of everything that is owned, as far as anybody sells it."""

    wanted: Mapping[str, int]
    """Kind to figures owned that are sold."""
    unsold: Mapping[str, int]
    """Kind to figures owned that no source of this force sells."""
    journey: OrderJourney | None
    """None where nothing that is owned is sold, or the holdings aren't known."""
    findings: tuple[Finding, ...]


def replacement(
    folder: Path, *, today: datetime.date, search: Search, memory: Memory = NOTHING
) -> Replacement:
    """The cheapest order of all that is owned, new from the sources of this force.

    What is lent counts: it would have to be replaced too. Nothing stands in for another kind.
    Raises StoreError and FileError.
    """
    known = holdings(folder, today=today, memory=memory)
    if known.state is None or known.is_stopped:
        return Replacement(wanted={}, unsold={}, journey=None, findings=known.findings)
    force = _own(known, folder).force
    owned = figures_of(
        together(known.state.held, known.state.lent),
        (force, *(read.force for read in known.forces.values())),
    )
    sold = sold_kinds(force.sources)
    wanted = {kind: number for kind, number in owned.items() if kind in sold}
    unsold = {kind: number for kind, number in owned.items() if kind not in sold}
    if not wanted:
        return Replacement(wanted={}, unsold=unsold, journey=None, findings=known.findings)
    journey = order(
        folder,
        today=today,
        choice=Choice(),
        request=Request(want=wanted),
        search=search,
        memory=memory,
    )
    return Replacement(
        wanted=wanted, unsold=unsold, journey=journey, findings=journey.checked.findings
    )


def _own(known: HeldCollection, folder: Path) -> Checked:
    return known.forces[known.collection.force_of(folder) or ""]


def figures_of(owned: Holdings, forces: Iterable[Force]) -> Mapping[str, int]:
    """Kind to figures, those on whole stands included, by the first force that has the stand."""
    every = tuple(forces)
    total: dict[str, int] = {}
    for pile in piles(owned):
        patterns = (force.stands[pile.name] for force in every if pile.name in force.stands)
        stand = next(patterns, None) if pile.is_stand else None
        figures = {pile.name: 1} if not pile.is_stand else stand.modelled if stand else {}
        for kind, each in figures.items():
            total[kind] = total.get(kind, 0) + each * pile.number
    return {kind: number for kind, number in total.items() if number > 0}
