"""Whether all booked games can be played.

folder -> checked -> what is owned and here -> sound stock -> spells -> what is short -> remedies
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from paradestate.core.club.enough import Remedy, Spell, Stock, remedies, spells
from paradestate.core.club.sound import sound_stock
from paradestate.core.finding import Finding
from paradestate.core.place import nearest_place
from paradestate.core.sentence.club import booked_twice
from paradestate.journeys.check import checked
from paradestate.journeys.holdings import with_holdings
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class BookedSpell:
    """A spell, and each single change that would put its day right."""

    spell: Spell
    remedies: tuple[Remedy, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Bookings:
    """All spells from a day on, or none with the stops in the way."""

    findings: tuple[Finding, ...]
    texts: Mapping[str, str]
    stock: Stock | None = None
    """None where the folder can't be read."""
    spells: tuple[BookedSpell, ...] = ()


def bookings(
    folder: Path,
    *,
    today: datetime.date,
    since: datetime.date | None = None,
    memory: Memory = NOTHING,
) -> Bookings:
    """The bookings from a day on, weighed against what is sound and here now.

    Raises StoreError, and FileError.
    """
    read = checked(folder, today=today, memory=memory)
    stocked = with_holdings(read, folder, today=today, memory=memory)
    if stocked.is_stopped:
        return Bookings(findings=stocked.findings, texts=stocked.texts)
    force = stocked.force
    stock = sound_stock(force)
    first = since or today
    found = tuple(
        BookedSpell(
            spell=each,
            remedies=remedies(force.club, stock, spell=each) if each.short else (),
        )
        for each in spells(force.club, stock)
        if each.hours.on >= first
    )
    short = tuple(
        booked_twice(
            each.spell,
            each.remedies,
            place=nearest_place(force.places, ("club", "bookings", each.spell.games[0])),
        )
        for each in found
        if each.spell.short
    )
    return Bookings(
        findings=(*stocked.findings, *short), texts=stocked.texts, stock=stock, spells=found
    )
