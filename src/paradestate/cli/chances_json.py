"""Chances of numbers for programs, and how many fire missions are fired."""

from collections.abc import Iterable

from paradestate.cli.count_json import fraction_json
from paradestate.core.support.chances import Chances
from paradestate.core.support.mission import MissionOdds


def missions_json(missions: Iterable[MissionOdds]) -> list[dict[str, object]]:
    """Each purchase that has missions, with the chance of every number that are fired."""
    return [
        {
            "entry": each.purchase.entry,
            "missions": each.purchase.number,
            "fired": chances_json(each.fired),
            "mean_fired": fraction_json(each.fired.mean),
        }
        for each in missions
    ]


def chances_json(chances: Chances) -> dict[str, str]:
    """Number to its chance."""
    return {str(number): fraction_json(chances.of(number)) for number in chances.counts}
