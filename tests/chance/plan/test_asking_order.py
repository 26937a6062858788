"""In which order to ask. That no other loses less is tried in `test_turnout.py`."""

from dataclasses import replace

from paradestate.chance.availability import plan_rolls
from paradestate.chance.plan.asking_order import asking_order
from paradestate.chance.plan.turnout import asked_of, falls
from paradestate.core.certainty import Certainty, Exact, NotComputed
from paradestate.core.support.entry import Asking
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.chance.plans import bought, rolled, terms_with
from tests.support_terms import Plan

TANKS = Offer(name="tanks", cost={2: 9}, availability=rolled(3))
GUNS = Offer(name="guns", cost={1: 4}, availability=rolled(5))
LOST = Offer(name="lost", cost={1: 2}, availability=rolled(6), loses_points=True)
STAFF = Offer(name="staff", cost={1: 1}, availability=rolled(6), needs={"tanks": 1})


def ordered(terms: Terms, plan: Plan) -> tuple[list[str], Certainty]:
    rolls = plan_rolls(terms.offers, plan)
    asked = asked_of(terms.offers, plan, rolls=rolls, asking=terms.asking)
    order, certainty = asking_order(asked, falls(asked))
    return [plan[place].entry for place in order], certainty


def test_likeliest_refused_first_but_what_loses_points_last() -> None:
    terms = terms_with(TANKS, GUNS, LOST)
    assert ordered(terms, bought(lost=1, tanks=2, guns=1)) == (["guns", "tanks", "lost"], Exact())


def test_what_is_needed_comes_first() -> None:
    assert ordered(terms_with(TANKS, STAFF), bought(staff=1, tanks=2))[0] == ["tanks", "staff"]


def test_through_something_that_is_not_rolled_for_as_well() -> None:
    sure = Offer(name="commander", cost={1: 3}, needs={"tanks": 1})
    staff = replace(STAFF, needs={"commander": 1})
    plan = bought(staff=1, commander=1, tanks=2)
    assert ordered(terms_with(TANKS, sure, staff), plan)[0] == ["tanks", "staff"]


def sharing(name: str, *, cost: int, on: int = 4) -> Offer:
    availability = rolled(on, shared="armour")
    return Offer(name=name, cost={1: cost}, availability=availability, loses_points=True)


def test_of_those_that_share_a_roll_the_cheapest_refusal_makes_it() -> None:
    terms = terms_with(sharing("tanks", cost=9), sharing("cars", cost=3), sharing("horse", cost=5))
    plan = bought(tanks=1, cars=1, horse=1)
    assert ordered(terms, plan) == (["cars", "tanks", "horse"], Exact())
    declared = replace(terms, asking=Asking.ALL_DECLARED_FIRST)
    assert ordered(declared, plan) == (["tanks", "cars", "horse"], Exact())


def test_what_keeps_its_points_makes_a_shared_roll_for_nothing() -> None:
    kept = replace(sharing("cars", cost=9), loses_points=False)
    assert ordered(terms_with(sharing("tanks", cost=3), kept), bought(tanks=1, cars=1))[0] == [
        "cars",
        "tanks",
    ]


def test_what_is_needed_makes_a_shared_roll_even_where_it_is_dearer() -> None:
    needing = replace(sharing("commander", cost=3), needs={"tanks": 1})
    terms = terms_with(needing, sharing("tanks", cost=9))
    assert ordered(terms, bought(commander=1, tanks=1)) == (["tanks", "commander"], Exact())


def test_too_many_orders_are_not_tried_and_it_says_so() -> None:
    eight = [sharing(f"troop {number}", cost=number + 1, on=3) for number in range(8)]
    plan = bought(**{offer.name: 1 for offer in eight})
    order, certainty = ordered(terms_with(*eight), plan)
    assert order == [offer.name for offer in eight]
    assert isinstance(certainty, NotComputed)
