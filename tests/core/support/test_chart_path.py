"""The way through a fall-back chart."""

from fractions import Fraction

from paradestate.core.game import Purchase
from paradestate.core.support.chart_path import chart_path
from paradestate.core.support.policy import Ask, Granted, Take

THIRD = Fraction(1, 3)
TANKS, GUNS = Purchase(entry="tanks", number=2), Purchase(entry="guns", number=2)
ONE_GUN = Purchase(entry="guns", number=1)


def end(worth: int, *purchases: Purchase) -> Take:
    return Take(purchases=purchases, points=3, worth=Fraction(worth))


def granted(allowed: int, *, takes: Purchase | None, then: Ask | Take) -> Granted:
    return Granted(allowed=allowed, chance=THIRD, takes=takes, then=then)


LAST, ONE, NONE = end(9), end(7), end(4)
GUNS_ASKED = Ask(
    purchase=GUNS,
    points=9,
    worth=Fraction(7),
    outcomes=(
        granted(2, takes=ONE_GUN, then=LAST),
        granted(1, takes=ONE_GUN, then=ONE),
        granted(0, takes=None, then=NONE),
    ),
)
CHART = Ask(
    purchase=TANKS,
    points=18,
    worth=Fraction(12),
    outcomes=(granted(2, takes=TANKS, then=GUNS_ASKED), granted(0, takes=None, then=ONE)),
)
SURE = Ask(
    purchase=TANKS, points=18, worth=Fraction(12), outcomes=(granted(1, takes=None, then=ONE),)
)


def test_before_any_roll_one_stands_at_the_beginning() -> None:
    path = chart_path(CHART, allowed={"guns": 2})
    assert (path.step, path.passed, path.taken) == (CHART, (), ())


def test_each_answer_leads_to_the_next_step() -> None:
    path = chart_path(CHART, allowed={"tanks": 3})
    assert path.step == GUNS_ASKED
    assert [each.ask.purchase for each in path.passed] == [TANKS]
    assert path.taken == (TANKS,)


def test_what_is_allowed_between_two_numbers_counts_as_the_smaller() -> None:
    assert chart_path(CHART, allowed={"tanks": 1}).step == ONE
    assert chart_path(CHART, allowed={"tanks": 2, "guns": 1}).step == ONE


def test_more_than_is_taken_may_be_allowed() -> None:
    path = chart_path(CHART, allowed={"tanks": 2, "guns": 2})
    assert path.step == LAST
    assert path.taken == (TANKS, ONE_GUN)


def test_an_answer_that_cannot_come_ends_the_way_before_it() -> None:
    assert chart_path(SURE, allowed={"tanks": 0}).step == SURE
