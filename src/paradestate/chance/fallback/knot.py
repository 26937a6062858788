"""Knots: entries that hang together, since what becomes of one changes what another may come to.

They are those that are rolled for or may be bought early, and are bound by a condition, a group or
a roll. An evening goes on in one knot at a time and leaves all others as they are; so each is gone
through by itself, and where an evening stands is where it stands in each of them.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.chance.fallback.prospect import Prospect, needed_by


@dataclass(frozen=True, slots=True, kw_only=True)
class Knot:
    """Entries that hang together, and all that belongs to them, by place."""

    rolled: tuple[int, ...]
    """Places among those that are rolled for."""
    early: tuple[int, ...]
    """Places among those that may be bought early."""
    rooms: tuple[int, ...]
    """Places among the groups."""
    shared: tuple[int, ...]
    """Places among the rolls that decide more than one entry."""


def knots_of(prospect: Prospect) -> tuple[Knot, ...]:
    """All knots, by the places of their entries; one that is bound to no other is one by itself."""
    place = {rolled.offer.name: index for index, rolled in enumerate(prospect.rolled)}
    every = (*place, *prospect.early)
    found: list[set[str]] = [{name} for name in every]
    for bound in _bound(prospect):
        met = [names for names in found if names & bound]
        apart = [names for names in found if not names & bound]
        found = [*apart, set().union(*met)] if met else apart
    return tuple(
        Knot(
            rolled=tuple(index for name, index in place.items() if name in names),
            early=tuple(at for at, name in enumerate(prospect.early) if name in names),
            rooms=tuple(at for at, room in enumerate(prospect.rooms) if room.members & names),
            shared=tuple(
                at
                for at, roll in enumerate(prospect.shared)
                if prospect.rolled[prospect.rolls[roll].members[0]].offer.name in names
            ),
        )
        for names in sorted(found, key=lambda names: min(map(every.index, names)))
    )


def _bound(prospect: Prospect) -> Iterator[set[str]]:
    """Entries that have directly to do with each other; what is only bought at the end binds none.

    Its conditions are judged there, when nothing is asked for any more.
    """
    for name in (*(rolled.offer.name for rolled in prospect.rolled), *prospect.early):
        offer = prospect.offers[name]
        yield {name, *needed_by(offer), *offer.bars}
    for roll in prospect.rolls:
        yield {prospect.rolled[member].offer.name for member in roll.members}
    for room in prospect.rooms:
        yield set(room.members)
