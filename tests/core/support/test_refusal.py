"""What the dice leave of a plan."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.finding import Finding
from paradestate.core.game import Purchase
from paradestate.core.support.breach import bill_of, breaches
from paradestate.core.support.entry import Asking, Availability, Band
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.offer import Offer
from paradestate.core.support.refusal import (
    after_the_dice,
    roll_findings,
    rolls_by_entry,
)
from paradestate.core.support.terms import Terms
from tests.core.support.test_breach import GUNS, take, terms
from tests.support_terms import Plan, dice, plain_points, plans_of, small_terms

ROLL = Availability(
    roll=dice(1, sides=12),
    allows=(Band(least=1, most=4, allows=0), Band(least=5, most=12, allows=None)),
)
TANKS = Offer(name="tanks", cost={2: 9, 3: 13}, most=2, availability=ROLL)
COMMANDER = Offer(name="commander", cost={1: 3}, needs={"tanks": 1}, most=2)
ADJUTANT = Offer(name="adjutant", cost={1: 1}, needs_for_each={"commander": 1})
KNOWN = terms(GUNS, TANKS, COMMANDER, ADJUTANT)
TWO_TANKS = Purchase(entry="tanks", number=2)
PLAN = (TWO_TANKS, *take("commander", "guns"))


def test_what_needs_the_refused_goes_with_it() -> None:
    """The tanks (9) and their commander (3) of `computations`: 12 points come free."""
    after = after_the_dice(bill_of(KNOWN, PLAN, points=18), {"tanks": (0,)})
    assert after.left == take("guns")
    assert after.cut == ((TWO_TANKS, 0),)
    assert after.gone == take("commander")
    assert (after.points_free, after.points_lost) == (12, 0)


def test_needs_are_lost_one_after_the_other() -> None:
    plan = (*PLAN, *take("adjutant"))
    after = after_the_dice(bill_of(KNOWN, plan, points=18), {"tanks": (0,)})
    assert after.gone == take("commander", "adjutant")
    assert after.points_free == 13


def test_points_that_are_lost_do_not_come_free() -> None:
    known = terms(replace(TANKS, loses_points=True), COMMANDER, GUNS)
    after = after_the_dice(bill_of(known, PLAN, points=18), {"tanks": (0,)})
    assert (after.points_free, after.points_lost) == (3, 9)
    three = (Purchase(entry="tanks", number=3),)
    after = after_the_dice(bill_of(known, three, points=18), {"tanks": (2,)})
    assert (after.left, after.points_free, after.points_lost) == ((TWO_TANKS,), 0, 4)


def test_what_a_second_purchase_costs_more_is_lost_with_it() -> None:
    known = terms(replace(TANKS, loses_points=True, repeats_cost_more=(2,)))
    after = after_the_dice(bill_of(known, (TWO_TANKS, TWO_TANKS), points=20), {"tanks": (0, 2)})
    assert (after.points_free, after.points_lost) == (0, 11)


def test_what_was_named_beforehand_is_paid_though_it_goes_with_its_need() -> None:
    scouts = Offer(
        name="scouts", cost={1: 2}, needs={"tanks": 1}, loses_points=True, availability=ROLL
    )
    plan = (TWO_TANKS, *take("scouts"))
    for asking, lost in ((Asking.ONE_AT_A_TIME, 0), (Asking.ALL_DECLARED_FIRST, 2)):
        known = replace(terms(TANKS, scouts), asking=asking)
        after = after_the_dice(bill_of(known, plan, points=18), {"tanks": (0,), "scouts": (1,)})
        assert after.gone == take("scouts")
        assert (after.points_free, after.points_lost) == (11 - lost, lost)


def test_of_what_is_partly_allowed_the_most_comes() -> None:
    three = Purchase(entry="tanks", number=3)
    bill = bill_of(KNOWN, (three, *take("commander")), points=18)
    after = after_the_dice(bill, {"tanks": (2,)})
    assert after.left == (TWO_TANKS, *take("commander"))
    assert (after.cut, after.points_free) == (((three, 2),), 4)
    assert after_the_dice(bill, {"tanks": (1,)}).left == ()


def test_each_purchase_has_the_roll_of_its_turn() -> None:
    twice = (TWO_TANKS, TWO_TANKS)
    bill = bill_of(KNOWN, twice, points=18)
    assert after_the_dice(bill, {"tanks": (0,)}).left == (TWO_TANKS,)
    assert after_the_dice(bill, {"tanks": (3, 0)}).cut == ((TWO_TANKS, 0),)


def test_a_shared_roll_decides_all_purchases_of_an_entry() -> None:
    convoy = replace(TANKS, availability=replace(ROLL, shared_roll="convoy"))
    twice = (TWO_TANKS, TWO_TANKS)
    bill = bill_of(terms(convoy), twice, points=18)
    assert after_the_dice(bill, {"tanks": (0,)}).left == ()
    assert after_the_dice(bill, {"tanks": (2,)}).left == twice
    (finding,) = said((("tanks", 2), ("tanks", 2)), plan=twice, offer=convoy)
    assert finding.code == "rolled-twice"
    asking = Asking.ALL_DECLARED_FIRST
    assert said((("tanks", 2),), plan=twice, offer=convoy, asking=asking) == []


def test_a_need_that_was_missing_before_is_not_lost_by_the_dice() -> None:
    after = after_the_dice(bill_of(KNOWN, take("commander"), points=18), {"tanks": (0,)})
    assert (after.left, after.gone) == (take("commander"), ())


def said(
    results: tuple[tuple[str, int], ...],
    *,
    plan: Plan = PLAN,
    asking: Asking = Asking.ONE_AT_A_TIME,
    offer: Offer = TANKS,
) -> list[Finding]:
    known = replace(terms(GUNS, offer, COMMANDER), asking=asking)
    bill = bill_of(known, plan, points=18)
    return list(roll_findings(bill, rolls_by_entry(results), known=Known()))


def test_the_loss_is_said_with_the_points_to_spend_again() -> None:
    (finding,) = said((("tanks", 0),))
    assert finding.code == "refused"
    assert finding.message == (
        "2 x tanks were refused, so 1 x commander (3) goes too: 12 points to spend again."
    )
    assert finding.effect == "What is left: 1 x guns."


def test_lost_points_and_partial_grants_are_said() -> None:
    three = (Purchase(entry="tanks", number=3),)
    lossy = replace(TANKS, loses_points=True)
    (finding,) = said((("tanks", 2),), plan=three, offer=lossy)
    assert finding.message == ("Of 3 x tanks only 2 may come: 0 points to spend again, and 4 lost.")
    one = replace(TANKS, cost={1: 5}, loses_points=True)
    (finding,) = said((("tanks", 0),), plan=take("tanks", "commander", "commander"), offer=one)
    assert finding.message == (
        "1 x tanks was refused, so 1 x commander (3) and 1 x commander (3) go too: "
        "6 points to spend again, and 5 lost."
    )
    assert finding.effect == "Nothing is left of the plan."


def test_all_that_came_needs_no_word() -> None:
    assert said((("tanks", 2),)) == []


def test_a_thing_rolled_twice() -> None:
    finding, refused = said((("tanks", 0), ("tanks", 2)))
    assert finding.code == "rolled-twice"
    assert finding.message == "tanks was rolled twice (refused and 2), and has 1 roll."
    assert finding.effect == "The first result counted."
    assert refused.code == "refused"
    three = (("tanks", 2), ("tanks", 2), ("tanks", 2))
    (twice,) = said(three, plan=(TWO_TANKS, TWO_TANKS))
    assert twice.effect == "The first two results counted."
    assert said((("tanks", 2), ("tanks", 2)), plan=(TWO_TANKS, TWO_TANKS)) == []


@pytest.mark.parametrize(
    ("entry", "why"), [("guns", "it needs no roll"), ("mules", "it isn't on offer in this game")]
)
def test_a_result_for_what_needs_none(entry: str, why: str) -> None:
    (finding,) = said(((entry, 0),))
    assert finding.message == f"A result is given for {entry}, and {why}."


def test_asking_after_seeing_is_outside_a_rule_that_declares_first() -> None:
    plan = (TWO_TANKS, TWO_TANKS)
    results = (("tanks", 2),)
    (finding,) = said(results, plan=plan, asking=Asking.ALL_DECLARED_FIRST)
    assert finding.code == "asked-after-declaring"
    assert finding.message == (
        "This file rolls after all is declared. Adding tanks now is outside the rule."
    )
    assert said((*results, *results), plan=plan, asking=Asking.ALL_DECLARED_FIRST) == []
    assert said((), plan=plan, asking=Asking.ALL_DECLARED_FIRST) == []


def needs_that_fail(known: Terms, plan: Iterable[Purchase]) -> set[tuple[str, ...]]:
    return {each.about for each in breaches(bill_of(known, plan, points=9)) if "need" in each.code}


@settings(max_examples=15, deadline=None)
@given(drawn=st.data())
def test_as_much_stays_as_can_without_a_need_that_the_dice_take(drawn: st.DataObject) -> None:
    """Of all parts of what came that lose no need, one has the most of every entry: that stays."""
    known = drawn.draw(small_terms(most_entries=3))
    plan = drawn.draw(plans_of(known))
    refused = {name: (0,) * len(plan) for name, offer in known.offers.items() if offer.availability}
    came = [each for each in plan if each.entry not in refused]
    failed = needs_that_fail(known, plan)
    fullest: Counter[str] = Counter()
    for number in range(len(came) + 1):
        for part in combinations(came, number):
            if needs_that_fail(known, part) <= failed:
                fullest |= Counter(each.entry for each in part)
    after = after_the_dice(bill_of(known, plan, points=9), refused)
    assert Counter(each.entry for each in after.left) == fullest
    assert Counter((*after.left, *after.gone)) == Counter(came)
    spent = plain_points(known, plan)
    assert after.points_free + after.points_lost == spent - plain_points(known, after.left)
