"""Whether things lie as they may: sides, gaps, heights, each at its edge."""

import pytest

from paradestate.core.tray.clearance import Rule, are_clear, breaches, is_inside
from paradestate.core.tray.thing import Lying
from tests.tray_things import case, lies, thing

SQUARE, DISC = thing("square", 10, 10), thing("disc", 10)


def test_what_touches_a_side_is_inside_and_a_tenth_beyond_is_not() -> None:
    assert is_inside(case(), lies(SQUARE, across=290, deep=190))
    assert not is_inside(case(), lies(SQUARE, across=290.1, deep=0))
    assert not is_inside(case(), lies(SQUARE, across=0, deep=190.1))
    assert not is_inside(case(), lies(SQUARE, across=-0.1, deep=0))
    assert not is_inside(case(), lies(SQUARE, across=0, deep=-0.1))


@pytest.mark.parametrize(
    ("one", "other", "is_clear"),
    [
        (lies(SQUARE, across=0, deep=0), lies(SQUARE, across=12, deep=0), True),
        (lies(SQUARE, across=0, deep=0), lies(SQUARE, across=11.99, deep=0), False),
        (lies(SQUARE, across=0, deep=0), lies(SQUARE, across=0, deep=12), True),
        (lies(DISC, across=0, deep=0), lies(DISC, across=12, deep=0), True),
        # centres 7.2 and 9.6 apart each way: 12 exactly
        (lies(DISC, across=0, deep=0), lies(DISC, across=7.2, deep=9.6), True),
        (lies(DISC, across=0, deep=0), lies(DISC, across=7.2, deep=9.59), False),
        (lies(SQUARE, across=0, deep=0), lies(DISC, across=12, deep=0), True),
        (lies(SQUARE, across=0, deep=0), lies(DISC, across=11.99, deep=0), False),
        # a disc of radius 5 with half the gap, past the square corner at 11, 11: 3.6, 4.8 is 6
        (lies(SQUARE, across=0, deep=0), lies(DISC, across=9.6, deep=10.8), True),
        (lies(SQUARE, across=0, deep=0), lies(DISC, across=9.6, deep=10.79), False),
    ],
)
def test_two_are_clear_up_to_the_gap_exactly(one: Lying, other: Lying, *, is_clear: bool) -> None:
    assert are_clear(one, other, gap=case().gap) is is_clear
    assert are_clear(other, one, gap=case().gap) is is_clear


def test_every_breach_is_told_with_its_rule() -> None:
    standard = lies(thing("standard", 30, height="44"), across=280, deep=0)
    near = lies(SQUARE, across=275, deep=0)
    told = list(breaches(case(height=38), [standard, near]))
    assert [(each.rule, each.lying, each.other) for each in told] == [
        (Rule.TOO_HIGH, standard, None),
        (Rule.OUTSIDE, standard, None),
        (Rule.TOO_NEAR, standard, near),
    ]
    assert not list(breaches(case(), [near]))
