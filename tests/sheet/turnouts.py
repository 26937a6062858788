"""Plans with all ways in which they may come out, to draw."""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from itertools import product

from paradestate.core.game import Purchase
from paradestate.core.support.chances import Chances, chances
from paradestate.core.support.turnout import PlanOdds, Turnout

TANKS = Purchase(entry="light tanks", number=2)
COMMANDER = Purchase(entry="tank squadron commander", number=1)
MACHINE_GUNS = Purchase(entry="machine-gun platoon", number=2)
# Whole-day attack of four companies: 11 + 2d6 points left.
LEFT = chances({11 + total: 6 - abs(7 - total) for total in range(2, 13)})


def odds(
    turnouts: Iterable[Turnout], *, cost: int, rolled: tuple[str, ...], allowance: Chances = LEFT
) -> PlanOdds:
    """The odds of a plan whose first way is that all of it comes."""
    every = tuple(turnouts)
    affordable = allowance.at_least(cost)
    return PlanOdds(
        plan=every[0].purchases,
        cost=cost,
        allowance=allowance,
        paid_by=tuple(points for points in allowance.counts if points >= cost),
        affordable=affordable,
        available=every[0].chance,
        together=affordable * every[0].chance,
        rolls=(),
        turnouts=tuple(sorted(every, key=lambda each: -each.chance)),
        asking_order=rolled,
    )


def turnout(
    chance: Fraction, *purchases: Purchase, points_free: int = 0, points_lost: int = 0
) -> Turnout:
    """One way that a plan may come out."""
    return Turnout(
        chance=chance, purchases=purchases, points_free=points_free, points_lost=points_lost
    )


def marenz() -> PlanOdds:
    """Tanks on 5 or more of 1d12, their commander who falls with them, and machine guns."""
    whole = turnout(Fraction(2, 3), TANKS, COMMANDER, MACHINE_GUNS)
    refused = turnout(Fraction(1, 3), MACHINE_GUNS, points_free=12)
    return odds((whole, refused), cost=17, rolled=("light tanks",))


def many(rolls: Mapping[str, Mapping[int, Fraction]], *, cost: int = 17) -> PlanOdds:
    """Every joint way of independent rolls: entry to how many come with which chance."""
    ways = []
    for joint in product(*(numbers.items() for numbers in rolls.values())):
        chance = Fraction(1)
        for _, each in joint:
            chance *= each
        comes = [
            Purchase(entry=entry, number=number)
            for entry, (number, _) in zip(rolls, joint, strict=True)
            if number
        ]
        ways.append(turnout(chance, *comes))
    return odds(ways, cost=cost, rolled=tuple(rolls))
