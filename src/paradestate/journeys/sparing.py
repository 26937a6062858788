"""What could be sold or swapped: owned, serving no force, and promised to nobody.

collection -> each force counted -> what serves -> what is left -> what it costs new
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding, stops
from paradestate.core.money import Currency
from paradestate.core.source import force_currency
from paradestate.core.spare import Spare, spares, use_of
from paradestate.core.unit_price import UnitPrice, unit_prices
from paradestate.journeys.count import Count, count
from paradestate.journeys.desk import cupboard_of
from paradestate.journeys.holdings import holdings
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Sparing:
    """What is to spare; None where a force of the collection can't be counted."""

    findings: tuple[Finding, ...]
    spare: tuple[Spare, ...] | None
    prices: Mapping[str, UnitPrice]
    """Kind to the pack by which one figure costs least new, from the sources of this force."""
    figures_on: Mapping[str, Mapping[str, int]]
    """Pattern of a stand to spare, to its figures."""
    forces: tuple[str, ...]
    """Titles of the forces that were asked."""


def sparing(folder: Path, *, today: datetime.date, memory: Memory = NOTHING) -> Sparing:
    """What no force of the collection needs. Raises StoreError and FileError."""
    known = holdings(folder, today=today, memory=memory)
    answers = {
        name: count(path, today=today, choice=Choice(), memory=memory)
        for name, path in known.collection.forces.items()
    }
    stopped = [found for answer in answers.values() for found in stops(answer.checked.findings)]
    counts = {name: answer.count for name, answer in answers.items() if answer.count is not None}
    if known.state is None or len(counts) < len(answers):
        return Sparing(
            findings=(*known.findings, *stopped), spare=None, prices={}, figures_on={}, forces=()
        )
    uses = {name: use_of(each.force, each.strength) for name, each in counts.items()}
    found = spares(
        uses.values(),
        promises=[each for each in known.state.promises if each.day >= today],
        cupboard=cupboard_of(known.forces, known.state.held, parts={}),
    )
    figures_on = {name: use.figures_on[name] for use in uses.values() for name in use.figures_on}
    own = counts[known.collection.force_of(folder) or ""]
    return Sparing(
        findings=known.findings,
        spare=found,
        prices=_prices(own, found, figures_on=figures_on),
        figures_on=figures_on,
        forces=tuple(each.force.title for each in counts.values()),
    )


def _prices(
    own: Count, found: tuple[Spare, ...], *, figures_on: Mapping[str, Mapping[str, int]]
) -> Mapping[str, UnitPrice]:
    kinds: dict[str, int] = {}
    for each in found:
        kinds |= figures_on[each.name] if each.is_stand else {each.name: each.number}
    sources = own.force.sources
    return unit_prices(kinds, sources, currency=force_currency(sources) or Currency("GBP"))
