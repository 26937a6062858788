"""The odds of plans: check values, plain counting, and a million rolls."""

from dataclasses import replace
from fractions import Fraction

import numpy
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from paradestate.chance.dice import allowance_chances
from paradestate.chance.plan.plan_odds import plan_odds
from paradestate.core.certainty import Exact, NotComputed
from paradestate.core.game import Purchase
from paradestate.core.support.chances import Chances, chances
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from paradestate.core.support.turnout import PlanOdds, Turnout
from tests.chance import plans
from tests.chance.plans import bought, rolled, terms_with
from tests.support_terms import Plan, attack, plain_points, plans_of, small_terms

TANKS = Purchase(entry="light tanks", number=2)
PLAN = (
    TANKS,
    Purchase(entry="tank squadron commander", number=1),
    Purchase(entry="machine-gun platoon", number=2),
)


def left(terms: Terms) -> Chances:
    return allowance_chances(terms.game.allowance).moved(-terms.taken_off)


def odds(terms: Terms, plan: Plan) -> PlanOdds:
    return plan_odds(terms, plan, allowance=left(terms))


def test_tanks_their_commander_and_machine_guns() -> None:
    """Section 3.10 of the computations, example 2."""
    answer = odds(attack(), PLAN)
    assert answer.cost == 17
    assert (answer.affordable, answer.available) == (Fraction(13, 18), Fraction(2, 3))
    assert answer.together == Fraction(13, 27)
    assert answer.turnouts == (
        Turnout(chance=Fraction(2, 3), purchases=PLAN, points_free=0, points_lost=0),
        Turnout(chance=Fraction(1, 3), purchases=PLAN[2:], points_free=12, points_lost=0),
    )
    assert answer.asking_order == ("light tanks",)
    assert answer.order_certainty == Exact()


def test_two_guns_of_which_one_may_come() -> None:
    """Section 3.10 of the computations, example 3."""
    answer = odds(attack(), (Purchase(entry="anti-tank guns", number=2),))
    assert answer.available == Fraction(1, 3)
    assert answer.rolls[0].allowed.at_least(1) == Fraction(5, 6)
    assert [each.points_free for each in answer.turnouts] == [3, 0, 7]


def test_one_entry_on_three_or_more_with_eight_and_a_die() -> None:
    """Section 3.10 of the computations, example 1."""
    terms = terms_with(Offer(name="guns", cost={1: 11}, availability=rolled(3)))
    answer = plan_odds(
        terms, bought(guns=1), allowance=chances({8 + face: 1 for face in range(1, 7)})
    )
    assert answer.together == Fraction(4, 6) * Fraction(2, 3) == Fraction(4, 9)


def test_a_plan_of_nothing_is_always_there() -> None:
    answer = odds(attack(), ())
    assert answer.cost == 0
    assert answer.affordable == answer.available == answer.together == 1
    assert answer.turnouts == (
        Turnout(chance=Fraction(1), purchases=(), points_free=0, points_lost=0),
    )


@pytest.mark.parametrize(
    ("limit", "affordable"),
    [
        (GroupLimit(group="armour"), 1),
        (GroupLimit(group="armour", most_points=Fraction(1, 2)), Fraction(3, 4)),
        (GroupLimit(group="armour", least_points=Fraction(1, 2)), Fraction(1, 2)),
        (GroupLimit(group="foot", least_points=Fraction(1, 100)), 0),
    ],
)
def test_points_of_which_a_group_takes_a_wrong_share_do_not_suffice(
    limit: GroupLimit, affordable: Fraction
) -> None:
    """3 of 5, 6, 7 or 8 points."""
    tanks = Offer(name="tanks", cost={1: 3}, group="armour")
    terms = replace(terms_with(tanks), groups=(limit,))
    assert odds(terms, bought(tanks=1)).affordable == affordable


def test_refunds_of_a_group_are_never_too_small_a_share() -> None:
    weak = Offer(name="weak", cost={1: -2}, group="armour")
    terms = replace(terms_with(weak), groups=(GroupLimit(group="armour", most=1),))
    assert odds(terms, bought(weak=1)).affordable == 1


def test_too_many_ways_leave_the_turnouts_out_and_nothing_else() -> None:
    guns = Offer(name="guns", cost={1: 1}, most=None, availability=rolled(4))
    lost = Offer(
        name="cars",
        cost={1: 1},
        most=None,
        availability=rolled(4, shared="armour"),
        loses_points=True,
    )
    plan = bought(guns=1) * 15 + bought(cars=1) * 2
    answer = odds(terms_with(guns, lost), plan)
    assert answer.turnouts == ()
    assert answer.available == Fraction(1, 2**16)
    assert len(answer.asking_order) == 17
    assert isinstance(answer.order_certainty, NotComputed)


@st.composite
def any_plans(draw: st.DrawFn) -> tuple[Terms, Plan]:
    terms = draw(small_terms(most_entries=3))
    plan = draw(plans_of(terms, most_purchases=3))
    assume(plans.is_whole(terms, plan))
    return terms, plan


@given(any_plans())
@settings(max_examples=30)
def test_odds_are_those_of_every_throw_counted(case: tuple[Terms, Plan]) -> None:
    terms, plan = case
    answer = odds(replace(terms, groups=()), plan)
    throws = list(plans.every_throw(terms, plan))
    comes = sum(
        all(
            plans.got(terms, purchase, face=throw[place]) == purchase.number
            for place, purchase in enumerate(plan)
            if place in throw
        )
        for throw in throws
    )
    points = [4 + face - terms.taken_off for face in range(1, 5)]
    paid = sum(plain_points(terms, plan) <= each for each in points)
    assert answer.available == Fraction(comes, len(throws))
    assert answer.affordable == Fraction(paid, len(points))
    assert answer.together == Fraction(comes * paid, len(throws) * len(points))
    assert sum(each.chance for each in answer.turnouts) == 1
    for each in answer.turnouts:
        spent = plain_points(terms, each.purchases) + each.points_free + each.points_lost
        assert spent == answer.cost


def test_a_million_rolls_come_near() -> None:
    """Within four and a half standard deviations, with this seed."""
    draw = numpy.random.default_rng(1943)
    many = 1_000_000
    points = 11 + draw.integers(1, 7, size=(2, many)).sum(axis=0)
    tanks = draw.integers(1, 13, size=many) >= 5
    answer = odds(attack(), PLAN)
    for chance, seen in (
        (answer.affordable, (points >= 17).mean()),
        (answer.available, tanks.mean()),
        (answer.together, ((points >= 17) & tanks).mean()),
    ):
        spread = float(chance * (1 - chance) / many) ** 0.5
        assert abs(seen - float(chance)) < 4.5 * spread
