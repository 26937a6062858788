"""What each booked game needs by kind: figures as they are, stands and whole games worked out.

folder -> counted with the game -> its stands and those of its plan -> figures
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.club.booking import Booking, Club
from paradestate.core.club.booking_finding import not_counted
from paradestate.core.club.game_needs import Needs, all_needs, game_needs, stands_needs
from paradestate.core.finding import Finding, stops
from paradestate.core.force import Force
from paradestate.core.sentence.wording import listed
from paradestate.journeys.collection import Collection
from paradestate.journeys.count import CountAnswer, count
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class ResolvedClub:
    """A club of which every booking that could be worked out needs figures alone."""

    club: Club
    """Without the bookings that couldn't."""
    needs: Mapping[str, Needs]
    """Booking to what it needs."""
    findings: tuple[Finding, ...] = ()
    """A warning for each booking that is left out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Where:
    """The folder whose club it is, and the collection in which its forces are found."""

    folder: Path
    collection: Collection
    today: datetime.date
    memory: Memory = NOTHING


def resolved(force: Force, where: Where) -> ResolvedClub:
    """The club of a force with the needs of each booking by kind. Raises StoreError, FileError."""
    needs: dict[str, Needs] = {}
    findings: list[Finding] = []
    for booking in force.club.bookings.values():
        found = _needs(booking, force, where=where)
        if isinstance(found, str):
            findings.append(not_counted(booking, why=found, places=force.places))
        else:
            needs[booking.name] = found
    bookings = {
        name: replace(each, needs=needs[name].figures)
        for name, each in force.club.bookings.items()
        if name in needs
    }
    return ResolvedClub(
        club=replace(force.club, bookings=bookings), needs=needs, findings=tuple(findings)
    )


def _needs(booking: Booking, force: Force, *, where: Where) -> Needs | str:
    """What it needs, or why nobody knows."""
    own = all_needs(Needs(figures=booking.needs), stands_needs(force, booking.stands))
    if not booking.game and not booking.force:
        return own
    forces = where.collection.forces
    folder = forces.get(booking.force) if booking.force else where.folder
    if folder is None:
        known = listed(name for name in forces if name) or "this one alone"
        return f"no force of the collection is called '{booking.force}'; there is {known}."
    answer = count(
        folder,
        today=where.today,
        choice=Choice(game=booking.game or None),
        memory=where.memory,
    )
    counted = answer.count
    if counted is None:
        return _why(answer)
    plan = counted.force.games[booking.game].plan if booking.game else ()
    return all_needs(own, game_needs(counted.force, counted.made, plan=plan))


def _why(answer: CountAnswer) -> str:
    first = stops(answer.checked.findings)[0]
    return f"what it needs can't be counted. {first.message}"
