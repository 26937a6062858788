"""Exact chances of how many fire missions are fired.

Without falling silent it is a binomial distribution; where every mission arrives, a truncated
geometric one. Sample space: all rolls for arrival and for silence that could be made.
"""

from collections.abc import Iterator, Mapping

from paradestate.chance.dice import dice_chances
from paradestate.core.game import Purchase
from paradestate.core.support.chances import Chances, chances
from paradestate.core.support.entry import Entry
from paradestate.core.support.mission import MissionOdds, Missions, RollOn

MOST_MISSIONS = 100
"""Missions of one purchase of which the chances are worked out."""


def mission_odds(
    plan: tuple[Purchase, ...], *, entries: Mapping[str, Entry]
) -> Iterator[MissionOdds]:
    """The missions of each purchase that has some; those of too many are left out.

    Every purchase is of a known entry.
    """
    for purchase in plan:
        missions = entries[purchase.entry].missions
        if missions is not None and purchase.number <= MOST_MISSIONS:
            yield MissionOdds(purchase=purchase, fired=missions_fired(missions, purchase.number))


def missions_fired(missions: Missions, number: int) -> Chances:
    """How many of so many missions are fired, if one after the other is asked for."""
    arriving, of_arriving = _ways(missions.arrives, unsaid=1)
    silent, of_silent = _ways(missions.falls_silent, unsaid=0)
    firing, over = {0: 1}, dict[int, int]()  # fired so far to ways, while it fires and after
    for _ in range(number):
        still: dict[int, int] = {}
        over = {fired: ways * of_arriving * of_silent for fired, ways in over.items()}
        for fired, ways in firing.items():
            missed, came = ways * (of_arriving - arriving), ways * arriving
            _add(still, fired, ways=missed * of_silent)
            _add(still, fired + 1, ways=came * (of_silent - silent))
            _add(over, fired + 1, ways=came * silent)
        firing = still
    for fired, ways in firing.items():
        _add(over, fired, ways=ways)
    return chances(over)


def _add(counted: dict[int, int], fired: int, *, ways: int) -> None:
    counted[fired] = counted.get(fired, 0) + ways


def _ways(rolled: RollOn | None, *, unsaid: int) -> tuple[int, int]:
    """Ways in which it happens, and all ways."""
    if rolled is None:
        return unsaid, 1
    totals = dice_chances(rolled.roll)
    return sum(ways for total, ways in totals.counts.items() if rolled.on.holds(total)), totals.ways
