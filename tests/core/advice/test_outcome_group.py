"""What may come of the dice, all that comes to the same forces in one line."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.advice.advice import OutcomeRow
from paradestate.core.advice.outcome_group import outcome_groups
from paradestate.core.game import Purchase
from paradestate.core.support.force_map import ValuedForce

GUNS = ValuedForce(purchases=(Purchase(entry="guns", number=1),), points=4, worth=Fraction(7))
ROW = OutcomeRow(
    game="evening",
    points=13,
    chance=Fraction(1, 6),
    allowed=({"tanks": 0},),
    now=None,
    then=GUNS,
)


def test_outcomes_of_a_game_that_end_in_the_same_forces_stand_together() -> None:
    more = replace(ROW, points=15, chance=Fraction(1, 3), allowed=({"tanks": 0, "cars": 2},))
    other = replace(ROW, now=GUNS)
    elsewhere = replace(ROW, game="day")
    found = outcome_groups([ROW, more, other, elsewhere])
    assert [(each.game, each.least_points, each.most_points) for each in found] == [
        ("evening", 13, 15),
        ("evening", 13, 13),
        ("day", 13, 13),
    ]
    assert found[0].chance == Fraction(1, 2)
    assert found[0].are_told_apart


def test_only_what_the_rolls_allow_in_all_of_them_is_said() -> None:
    either = replace(ROW, allowed=({"tanks": 0, "cars": 2}, {"tanks": 0, "cars": 0}))
    (one,) = outcome_groups([ROW, either])
    assert one.allowed == {"tanks": 0}


def test_rolls_that_are_not_told_apart_say_nothing() -> None:
    (one,) = outcome_groups([replace(ROW, allowed=())])
    assert (one.allowed, one.are_told_apart) == ({}, False)
