"""Two versions of a list: what is lost and gained, and which entries the best forces hold."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.certainty import NotComputed
from paradestate.core.game import Purchase
from paradestate.core.support.comparison import ListComparison, ListForces
from paradestate.core.support.force_map import LevelForces, ValuedForce
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.support_terms import EVENING

TERMS = Terms(
    game=EVENING,
    offers={name: Offer(name=name, cost={1: 2}) for name in ("gun", "horse")},
    absent={},
)


def force(*names: str) -> ValuedForce:
    purchases = tuple(Purchase(entry=name, number=1) for name in names)
    return ValuedForce(purchases=purchases, points=2 * len(names), worth=Fraction(len(names)))


OLD = ListForces(
    terms=TERMS,
    allowance=None,
    at=4,
    levels=(
        LevelForces(points=2, legal=3, spending_all=2),
        LevelForces(points=4, legal=4, spending_all=1),
    ),
    best=(force("gun"), force("gun", "horse")),
    first=(force("gun", "horse"), force("gun"), force("horse")),
    is_cut=False,
)
NEW = replace(
    OLD,
    levels=(
        LevelForces(points=2, legal=0, spending_all=0),
        LevelForces(points=4, legal=5, spending_all=1),
    ),
    first=(force("horse"),),
)


def test_lost_and_gained_are_what_isn_t_in_both() -> None:
    found = ListComparison(old=OLD, new=NEW, both=(0, 3))
    assert [(each.lost, each.gained) for each in found.levels] == [(3, 0), (1, 2)]
    assert found.level.share_lost == Fraction(1, 4)
    assert OLD.points == (2, 4)


def test_of_no_forces_no_share_is_lost() -> None:
    found = ListComparison(old=NEW, new=OLD, both=(0, 3))
    assert found.levels[0].share_lost is None


def test_entries_of_which_the_best_forces_hold_more_or_fewer() -> None:
    found = ListComparison(old=OLD, new=NEW, both=(0, 3))
    assert found.among_first == {"gun": (2, 0), "horse": (2, 1)}


def test_what_wasn_t_computed_is_left_open() -> None:
    found = ListComparison(old=OLD, new=NEW, both=NotComputed(reason="too large"))
    assert [(each.lost, each.gained, each.both) for each in found.levels] == [(None,) * 3] * 2
