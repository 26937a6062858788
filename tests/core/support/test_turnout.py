"""The odds of a plan as a value."""

from fractions import Fraction

from paradestate.core.game import Purchase
from paradestate.core.support.chances import chances
from paradestate.core.support.turnout import PlanOdds, Turnout

PLAN = (Purchase(entry="guns", number=1),)


def odds(*turnouts: Turnout) -> PlanOdds:
    """A plan of 6 points that comes on 5 or more of one die."""
    return PlanOdds(
        plan=PLAN,
        cost=6,
        allowance=chances({6: 1}),
        paid_by=(6,),
        affordable=Fraction(1),
        available=Fraction(1, 3),
        together=Fraction(1, 3),
        rolls=(),
        turnouts=turnouts,
        asking_order=("guns",),
    )


def test_the_mean_of_the_points_lost() -> None:
    comes = Turnout(chance=Fraction(1, 3), purchases=PLAN, points_free=0, points_lost=0)
    refused = Turnout(chance=Fraction(2, 3), purchases=(), points_free=0, points_lost=6)
    assert odds(refused, comes).mean_lost == 4
    assert odds().mean_lost == 0
