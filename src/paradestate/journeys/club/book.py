"""Whether all booked games can be played.

folder -> checked -> what is owned and here -> sound stock -> needs by kind -> spells -> remedies
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from paradestate.core.club.booking import Club, Lent
from paradestate.core.club.booking_finding import boxes_too_full, club_doubts
from paradestate.core.club.enough import Remedy, Spell, Stock, remedies, spells
from paradestate.core.club.game_needs import Needs
from paradestate.core.club.loan import late, with_late_away
from paradestate.core.club.sound import club_stock
from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.holdings import together
from paradestate.core.number import summed
from paradestate.core.place import nearest_place
from paradestate.core.sentence.club import booked_twice
from paradestate.journeys.check import checked
from paradestate.journeys.club.book_needs import Where, resolved
from paradestate.journeys.holdings import holdings, with_holdings
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
    club: Club = Club()
    """As the files say it."""
    needs: Mapping[str, Needs] = field(default_factory=dict)
    """Booking to what it needs, stands and games of forces worked out."""
    late: tuple[Lent, ...] = ()
    """Loans whose last day is over."""

    @property
    def uncounted(self) -> tuple[str, ...]:
        """Bookings of which nobody knows what they need; they are in no spell."""
        return tuple(name for name in self.club.bookings if name not in self.needs)


def bookings(
    folder: Path,
    *,
    today: datetime.date,
    since: datetime.date | None = None,
    until: datetime.date = datetime.date.max,
    memory: Memory = NOTHING,
) -> Bookings:
    """The bookings from a day on, weighed against what is sound and here now.

    Only up to `until` are they weighed, for that takes time; the club has all of them.
    Raises StoreError, and FileError.
    """
    read = checked(folder, today=today, memory=memory)
    stocked = with_holdings(read, folder, today=today, memory=memory)
    known = holdings(folder, today=today, memory=memory)
    if stocked.is_stopped or known.state is None:
        return Bookings(findings=stocked.findings, texts=stocked.texts)
    force, state = stocked.force, known.state
    forces = (force, *(each.force for each in known.forces.values()))  # its own words come first
    where = Where(folder=folder, collection=known.collection, today=today, memory=memory)
    booked = resolved(force, where)
    stock = club_stock(state.held, forces)
    all_of_it = club_stock(together(state.held, state.lent), forces)
    owned = summed((all_of_it.sound, all_of_it.in_repair))
    club = with_late_away(booked.club, today)
    found = _spells(club, stock, since=since or today, until=until)
    return Bookings(
        findings=(
            *stocked.findings,
            *booked.findings,
            *club_doubts(force.club, places=force.places, today=today),
            *boxes_too_full(force.club, owned, places=force.places),
            *_short(found, force),
        ),
        texts=stocked.texts,
        stock=stock,
        spells=found,
        club=force.club,
        needs=booked.needs,
        late=late(force.club, today),
    )


def _spells(
    club: Club, stock: Stock, *, since: datetime.date, until: datetime.date
) -> tuple[BookedSpell, ...]:
    meant = {name: each for name, each in club.bookings.items() if since <= each.hours.on <= until}
    return tuple(
        BookedSpell(spell=each, remedies=remedies(club, stock, spell=each) if each.short else ())
        for each in spells(replace(club, bookings=meant), stock)
    )


def _short(found: tuple[BookedSpell, ...], force: Force) -> tuple[Finding, ...]:
    return tuple(
        booked_twice(
            each.spell,
            each.remedies,
            place=nearest_place(force.places, ("club", "bookings", each.spell.games[0])),
        )
        for each in found
        if each.spell.short
    )
