"""How many fire missions are fired."""

from fractions import Fraction
from itertools import product
from math import comb

import icepool
import pytest

from paradestate.chance.missions import MOST_MISSIONS, mission_odds, missions_fired
from paradestate.core.dice import Dice, SignedTerm, Throw, Totals
from paradestate.core.game import Purchase
from paradestate.core.support.entry import Entry
from paradestate.core.support.mission import Missions, RollOn


def roll(least: int, most: int | None = None, *, sides: int = 6, number: int = 1) -> RollOn:
    """A roll of plain dice, and the totals on which it happens."""
    dice = Dice(terms=(SignedTerm(term=Throw(number=number, sides=sides)),))
    return RollOn(roll=dice, on=Totals(least=least, most=most))


ON_THREE = Missions(arrives=roll(3))
SILENT_ON_ONE = Missions(falls_silent=roll(1, 1))


def test_five_missions_that_each_arrive_on_three_or_more() -> None:
    """1, 10, 40, 80, 80 and 32 of 243 (worked by hand)."""
    fired = missions_fired(ON_THREE, 5)
    assert fired.ways == 243
    assert dict(fired.counts) == {0: 1, 1: 10, 2: 40, 3: 80, 4: 80, 5: 32}


def test_four_missions_of_a_battery_that_may_fall_silent() -> None:
    """6 (1 - (5/6)^4), 3.11 in the mean (worked by hand)."""
    fired = missions_fired(SILENT_ON_ONE, 4)
    assert fired.mean == 6 * (1 - Fraction(5, 6) ** 4)
    assert round(float(fired.mean), 2) == 3.11
    assert fired.of(1) == Fraction(1, 6)


@pytest.mark.parametrize("number", [1, 2, 7, 20])
def test_without_silence_it_is_a_binomial_distribution(number: int) -> None:
    fired = missions_fired(ON_THREE, number)
    for each in range(number + 1):
        assert fired.of(each) == comb(number, each) * Fraction(2**each, 3**number)


@pytest.mark.parametrize("number", [1, 3, 6])
def test_it_is_what_another_library_says(number: int) -> None:
    """Icepool adds up so many dice that each show whether a mission arrives."""
    other = number @ (icepool.d6 >= 3)
    fired = missions_fired(ON_THREE, number)
    assert {each: fired.of(each) for each in fired.counts} == {
        int(each): other.probability(each) for each in other.outcomes()
    }


@pytest.mark.parametrize(
    "missions",
    [
        Missions(),
        ON_THREE,
        SILENT_ON_ONE,
        Missions(arrives=roll(3), falls_silent=roll(1, 1)),
        Missions(arrives=roll(2, 2, sides=2), falls_silent=roll(2, 3, sides=3)),
        Missions(arrives=roll(1), falls_silent=roll(1)),
    ],
)
@pytest.mark.parametrize("number", [0, 1, 2, 3])
def test_it_is_what_every_roll_one_after_the_other_comes_to(
    missions: Missions, number: int
) -> None:
    counted: dict[int, int] = {}
    for rolls in product(product(range(1, 7), repeat=2), repeat=number):
        fired = played(missions, rolls)
        counted[fired] = counted.get(fired, 0) + 1
    every = sum(counted.values())
    found = missions_fired(missions, number)
    assert {each: Fraction(ways, every) for each, ways in sorted(counted.items())} == {
        each: found.of(each) for each in found.counts
    }


def played(missions: Missions, rolls: tuple[tuple[int, ...], ...]) -> int:
    """How many are fired with these rolls for arrival and for silence, as at a table."""
    fired = 0
    for arriving, silent in rolls:
        if missions.arrives is None or hits(missions.arrives, arriving):
            fired += 1
            if missions.falls_silent is not None and hits(missions.falls_silent, silent):
                break
    return fired


def hits(rolled: RollOn, face: int) -> bool:
    """Whether a six-sided face, taken for a die of fewer sides, is among the totals."""
    term = rolled.roll.terms[0].term
    assert isinstance(term, Throw)
    return rolled.on.holds((face - 1) % term.sides + 1)


def test_the_missions_of_a_plan() -> None:
    entries = {
        "battery": Entry(name="battery", cost={2: 5}, missions=ON_THREE),
        "tanks": Entry(name="tanks", cost={2: 9}),
    }
    battery, tanks = Purchase(entry="battery", number=2), Purchase(entry="tanks", number=2)
    (odds,) = mission_odds((tanks, battery), entries=entries)
    assert (odds.purchase, odds.fired.mean) == (battery, Fraction(4, 3))
    endless = Purchase(entry="battery", number=MOST_MISSIONS + 1)
    assert list(mission_odds((endless,), entries=entries)) == []
