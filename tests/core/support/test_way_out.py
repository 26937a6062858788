"""The ways out: each is judged again, and none is left out."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.game import Purchase
from paradestate.core.support import way_out as module
from paradestate.core.support.breach import Bill, Breach, bill_of, breaches
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from paradestate.core.support.way_out import (
    Change,
    WayOut,
    changed,
    single_changes,
    ways_out,
)
from tests.core.support.test_breach import GUNS, TANKS, take, terms
from tests.support_terms import Plan, plainly_legal, plans_of, small_terms


def ways(known: Terms, plan: Plan, *, points: int = 20) -> dict[str, tuple[WayOut, ...]]:
    bill = bill_of(known, plan, points=points)
    return {each.code: found for each, found in ways_out(bill, breaches(bill)).of.items()}


def plans(found: tuple[WayOut, ...]) -> list[Plan]:
    return [way.plan for way in found]


def test_a_legal_plan_needs_no_way_out() -> None:
    assert ways(terms(GUNS), take("guns")) == {}


def test_over_the_points_the_cheapest_thing_goes_first() -> None:
    found = ways(terms(GUNS, TANKS), take("guns", "tanks"), points=8)["over-points"]
    assert plans(found) == [take("tanks"), take("guns")]
    assert [way.points for way in found] == [-4, -6]


def test_a_smaller_number_is_a_way_out() -> None:
    sections = Offer(name="sections", cost={1: 3, 2: 5})
    found = ways(terms(sections), (Purchase(entry="sections", number=2),), points=4)
    assert plans(found["over-points"]) == [take("sections"), ()]


def test_what_is_needed_may_come_or_what_needs_it_may_go() -> None:
    tow = Offer(name="tow", cost={1: 3}, needs={"tanks": 1})
    tanks = replace(TANKS, cost={1: 6, 2: 9})
    found = ways(terms(tanks, tow), take("tow"))["need-missing"]
    assert plans(found) == [(), take("tow", "tanks")]
    poor = ways(terms(tanks, tow), take("tow"), points=5)["need-missing"]
    assert plans(poor) == [()]


def test_of_additions_of_one_entry_only_the_cheapest_is_told() -> None:
    horse = Offer(name="horse", cost={2: 5, 1: 2}, least=1)
    assert plans(ways(terms(horse), ())["below-least"]) == [take("horse")]


def test_a_choice_may_be_exchanged() -> None:
    pioneers = Offer(name="pioneers", cost={1: 3}, choices={"flame": 2, "bridging": 0})
    found = ways(terms(pioneers), take("pioneers/smoke"))["choice-unknown"]
    assert plans(found) == [take("pioneers/bridging"), take("pioneers/flame"), ()]


def test_a_number_and_a_choice_that_are_both_wrong_are_put_right_together() -> None:
    pioneers = Offer(name="pioneers", cost={2: 3}, choices={"flame": 2, "bridging": 0})
    plan = (Purchase(entry="pioneers", number=5, choice="smoke"),)
    found = ways(terms(pioneers), plan)
    right = [(Purchase(entry="pioneers", number=2, choice=each),) for each in pioneers.choices]
    assert plans(found["choice-unknown"]) == plans(found["number-not-priced"]) == [*right[::-1], ()]


def test_where_one_change_is_not_enough_two_are_found() -> None:
    tow = Offer(name="tow", cost={1: 3}, needs={"guns": 2}, least=1)
    (found,) = ways(terms(GUNS, tow), take("tow"))["need-missing"]
    assert found.plan == take("tow", "guns", "guns")
    assert found.changes == (Change(comes=take("guns")[0]),) * 2


def test_of_two_rules_that_each_want_two_changes_each_gets_its_own() -> None:
    tow = Offer(name="tow", cost={1: 3}, needs={"guns": 2}, least=1)
    squadron = Offer(name="squadron", cost={1: 1}, needs={"tanks": 2}, least=1)
    bill = bill_of(terms(GUNS, TANKS, tow, squadron), take("tow", "squadron"), points=20)
    found = ways_out(bill, breaches(bill)).of
    assert {breach.about: plans(way) for breach, way in found.items()} == {
        ("tow", "guns"): [take("tow", "squadron", "guns", "guns")],
        ("squadron", "tanks"): [take("tow", "squadron", "tanks", "tanks")],
    }


def test_where_two_are_not_enough_as_little_as_can_be_is_dropped() -> None:
    known = terms(replace(TANKS, cost={1: 2}), replace(GUNS, least=1))
    (found,) = ways(known, take(*["tanks"] * 5, "guns"), points=7)["over-points"]
    assert sorted(found.plan, key=lambda each: each.entry) == list(take("guns", "tanks"))
    assert len(found.changes) == 4


def test_the_dearest_go_so_that_few_have_to() -> None:
    known = terms(replace(TANKS, cost={1: 2}), replace(GUNS, cost={1: 7}, most=4))
    plan = take("tanks", "tanks", "guns", "tanks", "guns", "guns", "tanks")
    (found,) = ways(known, plan, points=8)["over-points"]
    assert found.plan == take("tanks", "tanks", "tanks", "tanks")


def test_those_that_need_each_other_go_together() -> None:
    ring = [
        Offer(name=name, cost={1: 3}, needs={other: 1})
        for name, other in (("a", "b"), ("b", "c"), ("c", "a"))
    ]
    (found,) = ways(terms(*ring), take("a", "b", "c"), points=8)["over-points"]
    assert found.plan == ()


def test_what_cannot_be_had_at_all_has_no_way_out() -> None:
    must = Offer(name="must", cost={1: 9}, least=1)
    assert ways(terms(must), (), points=8) == {"below-least": ()}


def test_an_unpriced_purchase_may_have_to_go_among_many() -> None:
    known = terms(replace(TANKS, cost={1: 3}))
    plan = (*take(*["tanks"] * 3), Purchase(entry="tanks", number=4))
    found = ways(known, plan, points=0)
    assert found["over-points"][0].plan == plan[3:]
    assert plans(found["number-not-priced"]) == [plan[:3]]


def test_of_pairs_that_do_it_the_one_that_gives_up_least_is_named() -> None:
    offers = [Offer(name=name, cost={1: cost}) for name, cost in (("c", 5), ("b", 4), ("a", 3))]
    found = ways(terms(*offers), take("c", "b", "a"), points=5)
    assert plans(found["over-points"]) == [take("c")]


def test_of_a_long_plan_as_little_goes_as_can_be() -> None:
    number, points = 40, 10
    names = [f"e{n}" for n in range(number)]
    known = terms(*(Offer(name=name, cost={1: 1}, most=2) for name in names))
    (found,) = ways(known, take(*names, names[0]), points=points)["over-points"]
    assert len(found.changes) == number + 1 - points
    assert len(found.plan) == found.points + number + 1 == points


def test_every_single_change_comes_once() -> None:
    pioneers = Offer(name="p", cost={1: 3, 2: 6}, choices={"x": 0, "y": 0}, most=9)
    plan = (*take("p/x", "p/x"), Purchase(entry="lancers", number=1))
    changes = list(single_changes(terms(pioneers), plan))
    assert len(changes) == len(set(changes)) == 2 + 2 + 4
    assert changed(plan, changes[0]) == plan[1:]
    assert changed(plan, Change()) == plan


@settings(max_examples=40, deadline=None)
@given(drawn=st.data(), points=st.integers(0, 9))
def test_every_way_out_cures_its_breach_and_breaks_nothing_more(
    drawn: st.DataObject, points: int
) -> None:
    known = drawn.draw(small_terms(most_entries=3))
    plan = drawn.draw(plans_of(known, most_purchases=3))
    bill = bill_of(known, plan, points=points)
    before = breaches(bill)
    for breach, found in ways_out(bill, before).of.items():
        for way in found:
            after = bill_of(known, way.plan, points=points)
            assert after.spent - bill.spent == way.points
            _holds(before, breaches(after), cured=breach)
            if len(before) == 1:
                assert plainly_legal(known, way.plan, points=points)


def _holds(before: tuple[Breach, ...], after: tuple[Breach, ...], *, cured: Breach) -> None:
    far = {(each.code, each.about): each.by for each in before}
    for each in after:
        assert (each.code, each.about) != (cured.code, cured.about)
        assert each.by <= far[each.code, each.about]


@settings(max_examples=40, deadline=None)
@given(drawn=st.data(), points=st.integers(0, 9))
def test_no_single_change_that_makes_a_plan_legal_is_left_out(
    drawn: st.DataObject, points: int
) -> None:
    known = drawn.draw(small_terms(most_entries=3))
    plan = drawn.draw(plans_of(known, most_purchases=3))
    bill = bill_of(known, plan, points=points)
    before = breaches(bill)
    legal = [
        changed(plan, change)
        for change in single_changes(known, plan)
        if plainly_legal(known, changed(plan, change), points=points)
    ]
    for found in ways_out(bill, before).of.values():
        assert bool(legal) <= bool(found)
        assert len(before) != 1 or not legal or {way.plan for way in found} <= set(legal)


@pytest.mark.parametrize(("dropped", "found_ways"), [(0, 0), (1, 1), (5, 1), (999, 1)])
def test_of_a_plan_too_long_not_all_is_tried_and_it_says_so(
    dropped: int, found_ways: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    known = terms(*(Offer(name=f"e{n}", cost={1: 1}) for n in range(9)))
    plan = take(*(f"e{n}" for n in range(9)))
    bill = bill_of(known, plan, points=2)
    judgement = 1 + len(plan) + len(known.offers)
    tries = {"single": 3, "pair": 3, "dropped": dropped}
    most = {sort: number * judgement for sort, number in tries.items()}
    monkeypatch.setattr(module, "MOST_READ", most)
    found = ways_out(bill, breaches(bill))
    (ways_found,) = found.of.values()
    assert not found.all_tried
    assert len(ways_found) == found_ways
    for way in ways_found:
        assert not breaches(bill_of(known, way.plan, points=2))


@pytest.mark.parametrize("dropped", [1, 2, 3, 9])
def test_where_not_all_can_go_the_bound_holds_too(
    dropped: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    known = terms(*(Offer(name=f"e{n}", cost={1: 2}) for n in range(6)), replace(GUNS, least=1))
    plan = take(*(f"e{n}" for n in range(6)), "guns")
    bill = bill_of(known, plan, points=5)
    judgement = 1 + len(plan) + len(known.offers)
    most = {**module.MOST_READ, "dropped": dropped * judgement}
    monkeypatch.setattr(module, "MOST_READ", most)
    found = ways_out(bill, breaches(bill))
    assert not found.all_tried
    for way in next(iter(found.of.values())):
        assert not breaches(bill_of(known, way.plan, points=5))


def test_of_a_plan_of_usual_length_everything_is_tried() -> None:
    bill = bill_of(terms(GUNS, TANKS), take("guns", "tanks"), points=8)
    assert ways_out(bill, breaches(bill)).all_tried
    assert ways_out(bill, ()).all_tried


def test_no_plan_is_judged_more_often_than_it_may_be(monkeypatch: pytest.MonkeyPatch) -> None:
    known = terms(*(Offer(name=f"e{n}", cost={1: 1, 2: 2}, most=None) for n in range(30)))
    plan = take(*(f"e{n}" for n in range(30)))
    bill = bill_of(known, plan, points=3)
    most = dict.fromkeys(module.MOST_READ, 50 * (1 + 30 + 30))
    monkeypatch.setattr(module, "MOST_READ", most)
    tried: list[int] = []

    def counted(bill: Bill) -> tuple[Breach, ...]:
        tried.append(len(bill.plan))
        return breaches(bill)

    monkeypatch.setattr(module, "breaches", counted)
    ((way,),) = ways_out(bill, breaches(bill)).of.values()
    assert 50 < len(tried) <= 3 * 50
    assert not breaches(bill_of(known, way.plan, points=3))


def test_of_too_many_pairs_it_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    tow = Offer(name="tow", cost={1: 3}, needs={"guns": 2}, least=1)
    bill = bill_of(terms(GUNS, tow), take("tow"), points=20)
    assert ways_out(bill, breaches(bill)).all_tried
    for bound, number in (("MOST_LOOKED_AT", 1), ("MOST_PAIRS", 1)):
        with monkeypatch.context() as few:
            few.setattr(module, bound, number)
            assert not ways_out(bill, breaches(bill)).all_tried


def test_single_ways_are_all_told_however_many_pairs_another_rule_has(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    tow = Offer(name="tow", cost={1: 3}, needs={"guns": 2}, least=1)
    bill = bill_of(terms(GUNS, tow), take("tow", "mules"), points=20)
    monkeypatch.setattr(module, "MOST_PAIRS", 1)
    found = ways_out(bill, breaches(bill))
    assert {each.code for each in found.partly} == {"need-missing"}
    assert {each.code for each in found.of} == {"need-missing", "not-in-force"}
