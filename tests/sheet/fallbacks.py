"""Fall-backs built by hand, to draw."""

from fractions import Fraction

from paradestate.core.game import Purchase
from paradestate.core.support.policy import Ask, Fallback, FirstChoice, Granted, Step, Take

TANKS = Purchase(entry="light tanks", number=2)
GUNS = Purchase(entry="anti-tank guns", number=2)
ONE_GUN = Purchase(entry="anti-tank guns", number=1)
CARS = Purchase(entry="armoured cars", number=2)
BICYCLES = Purchase(entry="bicycle troop", number=2)
MACHINE_GUNS = Purchase(entry="machine-gun platoon", number=2)

WORTHS = {TANKS: 10, GUNS: 8, ONE_GUN: 4, CARS: 6}

SIXTH, HALF, THIRD = Fraction(1, 6), Fraction(1, 2), Fraction(1, 3)


def bought(*purchases: Purchase, points: int, worth: int) -> Take:
    """The end of a chart."""
    return Take(purchases=purchases, points=points, worth=Fraction(worth))


def granted(allowed: int, chance: Fraction, *, takes: Purchase | None, then: Step) -> Granted:
    """What follows when so many are allowed."""
    worth = then.worth + (WORTHS.get(takes, 1) if takes else 0)
    return Granted(allowed=allowed, chance=chance, takes=takes, then=then, worth=worth)


def ask(purchase: Purchase, *outcomes: Granted, points: int, worth: Fraction) -> Ask:
    """A request."""
    return Ask(purchase=purchase, points=points, worth=worth, outcomes=outcomes)


def cars(points: int) -> Ask:
    """Ask for armoured cars: machine guns with them, machine guns and bicycles else."""
    return ask(
        CARS,
        granted(2, THIRD, takes=CARS, then=bought(MACHINE_GUNS, points=points - 6, worth=5)),
        granted(
            0, 2 * THIRD, takes=None, then=bought(MACHINE_GUNS, BICYCLES, points=points, worth=8)
        ),
        points=points,
        worth=Fraction(9),
    )


def marenz() -> Fallback:
    """The example at 18 points: 154/9 in all, 53/6 after the tanks, 41/3 without them."""
    after_tanks = ask(
        GUNS,
        granted(2, THIRD, takes=ONE_GUN, then=bought(MACHINE_GUNS, points=5, worth=5)),
        granted(1, HALF, takes=ONE_GUN, then=bought(MACHINE_GUNS, points=5, worth=5)),
        granted(0, SIXTH, takes=None, then=bought(MACHINE_GUNS, BICYCLES, points=9, worth=8)),
        points=9,
        worth=Fraction(53, 6),
    )
    without = ask(
        GUNS,
        granted(2, THIRD, takes=GUNS, then=cars(11)),
        granted(1, HALF, takes=ONE_GUN, then=cars(14)),
        granted(0, SIXTH, takes=None, then=cars(18)),
        points=18,
        worth=Fraction(41, 3),
    )
    chart = ask(
        TANKS,
        granted(2, 2 * THIRD, takes=TANKS, then=after_tanks),
        granted(0, THIRD, takes=None, then=without),
        points=18,
        worth=Fraction(154, 9),
    )
    return fallback(chart, points=18, worth=Fraction(154, 9))


def fallback(chart: Step, *, points: int, worth: Fraction) -> Fallback:
    """A fall-back that has this chart."""
    asked = chart.purchase if isinstance(chart, Ask) else None
    first = (FirstChoice(purchase=asked, worth=worth),)
    return Fallback(points=points, worth=worth, chart=chart, first_choices=first)


def long(depth: int) -> Fallback:
    """One request after the other, no two of their outcomes alike."""
    return fallback(_long(depth, worth=Fraction(0)), points=40, worth=Fraction(depth, 2))


def _long(depth: int, *, worth: Fraction) -> Step:
    if not depth:
        return Take(purchases=(MACHINE_GUNS,), points=3, worth=worth)
    purchase = Purchase(entry=f"battery {depth}", number=1)
    return ask(
        purchase,
        granted(1, Fraction(9, 10), takes=purchase, then=_long(depth - 1, worth=worth)),
        granted(0, Fraction(1, 10), takes=None, then=_long(depth - 1, worth=worth + 1)),
        points=3 * depth,
        worth=worth + Fraction(depth, 10),
    )
