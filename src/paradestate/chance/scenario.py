"""Exact chances of what a scenario rolls: when something is there, and how strong it is."""

from collections.abc import Iterator
from fractions import Fraction

from paradestate.chance.dice import dice_chances
from paradestate.core.dice import LookUp
from paradestate.core.money import half_up
from paradestate.core.scenario import Arrival
from paradestate.core.support.chances import Chances

SURE_ENOUGH = Fraction(19, 20)
"""From this chance on no further turn is listed."""
MOST_TURNS = 12
"""Turns that are listed at most."""


def arrived_by(arrival: Arrival, *, turn: int) -> Fraction:
    """The chance that one of them is there by the end of a turn.

    Every turn from the first to the last that is rolled in has the same chance p, so it is
    1 - (1 - p)^turns; a truncated geometric distribution.
    """
    if arrival.roll is None or arrival.on is None:
        return Fraction(turn >= arrival.from_turn)
    last = turn if arrival.until_turn is None else min(turn, arrival.until_turn)
    tries = max(last - arrival.from_turn + 1, 0)
    rolled = dice_chances(arrival.roll)
    hits = sum(ways for total, ways in rolled.counts.items() if arrival.on.holds(total))
    return 1 - (1 - Fraction(hits, rolled.ways)) ** tries


def turns_of(arrival: Arrival) -> Iterator[tuple[int, Fraction]]:
    """Turn to the chance to be there by its end, from the first turn on.

    Goes on until nineteen in twenty, the last turn that is rolled in, or MOST_TURNS.
    """
    for turn in range(arrival.from_turn, arrival.from_turn + MOST_TURNS):
        chance = arrived_by(arrival, turn=turn)
        yield turn, chance
        if chance >= SURE_ENOUGH or turn == arrival.until_turn:
            return


def stands_there(strength: LookUp[Fraction], *, stands: int) -> Chances:
    """How many of so many stands take the field; each share is rounded half up."""
    return dice_chances(strength.roll).become(lambda total: half_up(stands * strength.given(total)))
