"""What may turn up of a plan, beside every throw of its dice told step by step."""

from collections import defaultdict
from collections.abc import Collection
from dataclasses import replace
from fractions import Fraction

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from paradestate.chance.availability import plan_rolls
from paradestate.chance.plan.asking_order import asking_order
from paradestate.chance.plan.turnout import (
    Asked,
    Fall,
    asked_of,
    falls,
    mean_lost,
    number_of_ways,
    points_lost,
    turnouts,
)
from paradestate.core.support.breach import bill_of
from paradestate.core.support.entry import Asking
from paradestate.core.support.offer import Offer
from paradestate.core.support.refusal import after_the_dice
from paradestate.core.support.remainder import needed_before
from paradestate.core.support.terms import Terms
from paradestate.core.support.turnout import Turnout
from tests.chance import plans
from tests.chance.plans import bought, rolled, terms_with
from tests.support_terms import Plan, plans_of, small_terms

SURE = Offer(name="guns", cost={1: 3, 2: 5})
TANKS = Offer(name="tanks", cost={1: 4, 2: 9}, availability=rolled(5, partly=3))
TOW = Offer(name="tow", cost={1: 2}, most=None, availability=rolled(4), loses_points=True)


def asked_with(terms: Terms, plan: Plan) -> Asked:
    rolls = plan_rolls(terms.offers, plan)
    return asked_of(terms.offers, plan, rolls=rolls, asking=terms.asking)


def come(terms: Terms, plan: Plan) -> dict[plans.Told, Fraction]:
    """What comes with its chance, by the best order."""
    asked = asked_with(terms, plan)
    every = falls(asked)
    order, _ = asking_order(asked, every)
    return {
        (each.purchases, each.points_free, each.points_lost): each.chance
        for each in turnouts(asked, every, order=order)
    }


@st.composite
def asked_plans(draw: st.DrawFn) -> tuple[Terms, Plan]:
    """Small terms and a plan of which everything may come, without circles of needs."""
    terms = draw(small_terms(most_entries=3))
    plan = draw(plans_of(terms, most_purchases=3))
    assume(plans.is_whole(terms, plan))
    before = needed_before(terms.offers, plan)
    assume(not any(entry in before[entry] for entry in before))
    return terms, plan


@given(asked_plans())
@settings(max_examples=12)
def test_it_is_what_every_throw_comes_to(case: tuple[Terms, Plan]) -> None:
    terms, plan = case
    order, _ = asking_order(asked := asked_with(terms, plan), falls(asked))
    told: dict[plans.Told, int] = defaultdict(int)
    for throw in plans.every_throw(terms, plan):
        told[plans.told(terms, plan, throw=throw, order=order)] += 1
    throws = sum(told.values())
    assert come(terms, plan) == {each: Fraction(n, throws) for each, n in told.items()}


@given(asked_plans())
@settings(max_examples=12)
def test_no_order_that_asks_first_for_what_is_needed_loses_less(case: tuple[Terms, Plan]) -> None:
    terms, plan = case
    asked = asked_with(terms, plan)
    every = falls(asked)
    order, _ = asking_order(asked, every)
    assert order in set(plans.every_order(terms, plan))
    least = min(plans.mean_lost(terms, plan, order=o) for o in plans.every_order(terms, plan))
    assert mean_lost(asked, every, order=order) == least


@given(asked_plans(), st.sampled_from(Asking))
@settings(max_examples=10)
def test_the_judge_says_the_same_of_each_throw(case: tuple[Terms, Plan], asking: Asking) -> None:
    """Of an entry of which only a part is asked the judge can't be told which part it was."""
    terms, plan = replace(case[0], asking=asking), case[1]
    asked = asked_with(terms, plan)
    every = falls(asked)
    order, _ = asking_order(asked, every)
    bill = bill_of(terms, plan, points=9)
    for fall in every[:12]:
        unasked = {plan[place].entry for place in fall.taken.keys() - fall.left.asked}
        partly = unasked & {plan[place].entry for place in fall.left.asked}
        sharing = {name for name, offer in terms.offers.items() if _shares_roll(offer)}
        if partly or (asking is Asking.ONE_AT_A_TIME and sharing):
            continue
        after = after_the_dice(bill, results_of(fall, plan, sharing=sharing))
        come = tuple(
            replace(plan[place], number=fall.taken.get(place, plan[place].number))
            for place in sorted(fall.left.stays)
        )
        assert after.left == come
        assert after.points_lost == points_lost(asked, fall, order=order)


def _shares_roll(offer: Offer) -> bool:
    return offer.availability is not None and offer.availability.shared_roll != ""


def results_of(fall: Fall, plan: Plan, *, sharing: Collection[str]) -> dict[str, tuple[int, ...]]:
    """What is said to the judge: a result for each request, or one for all where they share it."""
    said: dict[str, tuple[int, ...]] = {}
    for place in sorted(fall.left.asked):
        entry = plan[place].entry
        before = said.get(entry, ())
        now = (*before, fall.taken[place])
        said[entry] = (max(now),) if entry in sharing else now
    return said


def test_a_plan_without_rolls_comes_as_it_is() -> None:
    plan = bought(guns=2)
    assert come(terms_with(SURE), plan) == {(plan, 0, 0): 1}
    assert come(terms_with(SURE), ()) == {((), 0, 0): 1}


def test_a_part_comes_at_the_greatest_number_that_has_a_price() -> None:
    threes = Offer(name="threes", cost={1: 2, 3: 6}, availability=rolled(6, partly=2))
    assert come(terms_with(threes), bought(threes=3)) == {
        (bought(threes=3), 0, 0): Fraction(1, 6),
        (bought(threes=1), 4, 0): Fraction(2, 3),
        ((), 6, 0): Fraction(1, 6),
    }
    only_three = replace(threes, cost={3: 6})
    assert come(terms_with(only_three), bought(threes=3)) == {
        (bought(threes=3), 0, 0): Fraction(1, 6),
        ((), 6, 0): Fraction(5, 6),
    }


def test_likeliest_first_and_of_equal_ones_the_fuller_first() -> None:
    even = replace(TANKS, cost={2: 9}, availability=rolled(4))
    asked = asked_with(terms_with(even), bought(tanks=2))
    assert turnouts(asked, falls(asked), order=(0,)) == (
        Turnout(chance=Fraction(1, 2), purchases=bought(tanks=2), points_free=0, points_lost=0),
        Turnout(chance=Fraction(1, 2), purchases=(), points_free=9, points_lost=0),
    )


def test_what_needs_something_refused_is_never_asked_one_at_a_time() -> None:
    """A gun needs its tow. Declared first, both are rolled for and paid."""
    gun = Offer(
        name="gun", cost={1: 5}, needs={"tow": 1}, availability=rolled(4), loses_points=True
    )
    plan = bought(gun=1, tow=1)
    one_by_one = come(terms_with(gun, TOW), plan)
    assert one_by_one == {
        (plan, 0, 0): Fraction(1, 4),
        (bought(tow=1), 0, 5): Fraction(1, 4),
        ((), 5, 2): Fraction(1, 2),
    }
    declared = come(terms_with(gun, TOW, asking=Asking.ALL_DECLARED_FIRST), plan)
    assert declared == {
        (plan, 0, 0): Fraction(1, 4),
        (bought(tow=1), 0, 5): Fraction(1, 4),
        ((), 0, 7): Fraction(1, 2),
    }


def test_of_two_that_need_one_each_the_second_is_asked_only_after_a_refusal() -> None:
    gun = Offer(
        name="gun",
        cost={1: 5},
        most=2,
        needs_for_each={"tow": 1},
        availability=rolled(4),
        loses_points=True,
    )
    plan = (*bought(tow=1), *bought(gun=1), *bought(tow=1), *bought(gun=1))
    terms = terms_with(gun, TOW)
    asked = asked_with(terms, plan)
    every = falls(asked)
    order, _ = asking_order(asked, every)
    assert order == (0, 2, 1, 3)
    told: dict[plans.Told, int] = defaultdict(int)
    for throw in plans.every_throw(terms, plan):
        told[plans.told(terms, plan, throw=throw, order=order)] += 1
    assert come(terms, plan) == {each: Fraction(n, 6**4) for each, n in told.items()}


def test_a_known_roll_is_asked_no_more() -> None:
    """Both come on 5 or more of one die: the cheaper is asked first, and then it is known."""
    tanks = Offer(name="tanks", cost={2: 9}, availability=rolled(5, shared="armour"))
    cars = Offer(name="cars", cost={1: 3}, availability=rolled(5, shared="armour"))
    lost = tuple(replace(offer, loses_points=True) for offer in (tanks, cars))
    plan = bought(tanks=2, cars=1)
    assert come(terms_with(*lost), plan) == {
        (plan, 0, 0): Fraction(1, 3),
        ((), 9, 3): Fraction(2, 3),
    }
    declared = terms_with(*lost, asking=Asking.ALL_DECLARED_FIRST)
    assert come(declared, plan)[(), 0, 12] == Fraction(2, 3)


def test_those_that_need_each_other_are_asked_together() -> None:
    guns = Offer(
        name="guns", cost={1: 4}, needs={"tow": 1}, availability=rolled(4), loses_points=True
    )
    tow = replace(TOW, needs={"guns": 1})
    plan = bought(guns=1, tow=1)
    assert come(terms_with(guns, tow), plan) == {
        (plan, 0, 0): Fraction(1, 4),
        ((), 0, 6): Fraction(3, 4),
    }


def test_a_shared_roll_is_not_known_to_those_that_need_each_other() -> None:
    """They are asked in one breath, so the refusal of the one doesn't save the other's points."""
    guns = Offer(
        name="guns",
        cost={1: 4},
        needs={"tow": 1},
        availability=rolled(4, shared="convoy"),
        loses_points=True,
    )
    tow = replace(TOW, needs={"guns": 1}, availability=rolled(4, shared="convoy"))
    plan = bought(guns=1, tow=1)
    assert come(terms_with(guns, tow), plan) == {
        (plan, 0, 0): Fraction(1, 2),
        ((), 0, 6): Fraction(1, 2),
    }
    apart = replace(guns, needs={}), replace(tow, needs={})
    assert come(terms_with(*apart), plan)[(), 4, 2] == Fraction(1, 2)


def test_ways_are_counted_before_they_are_gone_through() -> None:
    plan = (*bought(tanks=2), *bought(tanks=2), *bought(tanks=1))
    assert number_of_ways(asked_with(terms_with(TANKS), plan)) == 3 * 3 * 2
