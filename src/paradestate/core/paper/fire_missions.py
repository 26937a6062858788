"""Tear-offs for fire missions: one for each that was bought, torn off when it is asked for."""

from dataclasses import dataclass

from paradestate.core.imposition.shelf import imposed
from paradestate.core.outline import Rectangle, millimetres
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.order_of_battle import missions_of
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.sentence.mission import mission_clauses
from paradestate.core.sentence.wording import capital

TEAR_OFF = Rectangle(width=millimetres(62), depth=millimetres(64))
"""Three side by side on a page, of A4 as of Letter (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FireMission:
    """One tear-off."""

    battery: str
    number: int
    """Which of its missions it is, from 1."""
    of: int
    rolls: tuple[str, ...]
    """What is rolled for it."""
    by_hand: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FireMissions:
    """All tear-offs on their pages."""

    pages: tuple[ImposedPage[FireMission], ...]


def fire_missions(ground: Ground) -> Draft[FireMissions]:
    """A tear-off for each mission that the plan buys."""
    missions = tuple(
        _mission(ground, purchase.entry, number=number, of=of)
        for purchase in ground.plan
        if (of := missions_of(ground, purchase))
        for number in range(1, of + 1)
    )
    pages = pages_of(imposed([TEAR_OFF] * len(missions), ground.layout, may_turn=False), missions)
    return Draft(shown=FireMissions(pages=pages) if pages else None)


def _mission(ground: Ground, name: str, *, number: int, of: int) -> FireMission:
    entry = ground.force.supporting_troops[name]
    rolls = tuple(map(capital, mission_clauses(entry.missions))) if entry.missions else ()
    return FireMission(
        battery=capital(name), number=number, of=of, rolls=rolls, by_hand=entry.by_hand
    )
