"""Which rules a plan breaks: each rule kept, broken, and at its edge."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.game import Purchase
from paradestate.core.support.breach import Breach, bill_of, breaches, is_priced
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.support_terms import (
    EVENING,
    Plan,
    plain_points,
    plainly_legal,
    plans_of,
    small_terms,
)


def terms(*offers: Offer, groups: tuple[GroupLimit, ...] = ()) -> Terms:
    return Terms(
        game=EVENING,
        offers={offer.name: offer for offer in offers},
        absent={"mules": "not to be had in 1943"},
        groups=groups,
    )


def take(*names: str) -> Plan:
    """One of each: `guns`, or with a choice `pioneers/flame`."""
    pairs = (name.partition("/") for name in names)
    return tuple(Purchase(entry=entry, number=1, choice=choice) for entry, _, choice in pairs)


def found(known: Terms, *names: str, points: int = 20) -> list[Breach]:
    return list(breaches(bill_of(known, take(*names), points=points)))


def codes(known: Terms, *names: str, points: int = 20) -> list[str]:
    return [each.code for each in found(known, *names, points=points)]


GUNS = Offer(name="guns", cost={1: 4}, most=2)
TANKS = Offer(name="tanks", cost={1: 6}, most=None)


def test_the_empty_plan_is_legal() -> None:
    assert codes(terms(GUNS, TANKS)) == []


def test_points_to_the_last_one_may_be_spent() -> None:
    assert codes(terms(GUNS), "guns", points=4) == []
    (over,) = found(terms(GUNS), "guns", points=3)
    assert over == Breach(code="over-points", about=(), has=4, bound=3)
    assert over.by == 1


def test_with_less_than_no_points_only_nothing_is_legal() -> None:
    mud = Offer(name="mud", cost={1: -4})
    half = GroupLimit(group="", least_points=Fraction(1, 2), most_points=Fraction(1, 2))
    assert codes(terms(GUNS, mud), points=-1) == []
    assert codes(terms(GUNS, mud, groups=(half,)), points=-1) == []
    assert codes(terms(GUNS, mud), "mud", points=-1) == ["over-points"]
    assert codes(terms(GUNS, mud), "guns", points=-1) == ["over-points"]
    assert codes(terms(replace(GUNS, least=1)), points=-1) == ["below-least"]


@pytest.mark.parametrize(("times", "expected"), [(2, []), (3, ["over-limit"])])
def test_a_limit_counts_purchases(times: int, expected: list[str]) -> None:
    assert codes(terms(GUNS), *["guns"] * times) == expected
    assert codes(terms(TANKS), *["tanks"] * times) == []


def test_a_least_must_be_reached() -> None:
    must = replace(GUNS, least=1)
    assert codes(terms(must)) == ["below-least"]
    assert codes(terms(must), "guns") == []


def test_all_needs_must_hold() -> None:
    tow = Offer(name="tow", cost={1: 1}, needs={"guns": 2, "tanks": 1})
    known = terms(GUNS, TANKS, tow)
    assert [each.about for each in found(known, "tow")] == [("tow", "guns"), ("tow", "tanks")]
    (lacking,) = found(known, "tow", "guns", "tanks")
    assert (lacking.code, lacking.has, lacking.bound) == ("need-missing", 1, 2)
    assert codes(known, "tow", "guns", "guns", "tanks") == []


def test_one_of_several_needs_suffices() -> None:
    tow = Offer(name="tow", cost={1: 1}, needs_any_of={"guns": 2, "tanks": 1})
    known = terms(GUNS, TANKS, tow)
    (lacking,) = found(known, "tow", "guns")
    assert (lacking.code, lacking.about) == ("need-any-missing", ("tow", "guns", "tanks"))
    assert codes(known, "tow", "tanks") == []
    assert codes(known, "tow", "guns", "guns") == []


def test_a_need_for_each_grows_with_the_purchases() -> None:
    tow = Offer(name="tow", cost={1: 1}, most=3, needs_for_each={"guns": 1})
    known = terms(GUNS, tow)
    assert codes(known, "tow", "guns") == []
    (lacking,) = found(known, "tow", "tow", "guns")
    assert (lacking.code, lacking.has, lacking.bound) == ("need-for-each-missing", 1, 2)


def test_a_need_for_what_is_not_on_offer_cannot_hold() -> None:
    tow = Offer(name="tow", cost={1: 1}, needs={"mules": 1})
    assert codes(terms(tow), "tow", "mules") == ["not-in-force", "need-missing"]


def test_what_bars_another_cannot_be_with_it() -> None:
    horse = Offer(name="horse", cost={1: 1}, bars=frozenset({"guns"}))
    guns = replace(GUNS, bars=frozenset({"horse"}))
    known = terms(guns, horse)
    (pair,) = found(known, "horse", "guns", "guns")
    assert (pair.code, pair.about, pair.by) == ("barred-pair", ("guns", "horse"), 1)
    assert codes(known, "horse") == []
    itself = Offer(name="odd", cost={1: 1}, bars=frozenset({"odd"}))
    assert codes(terms(itself), "odd") == ["barred-pair"]


def test_a_group_limits_purchases_from_above_and_below() -> None:
    guns, tanks = replace(GUNS, group="armour"), replace(TANKS, group="armour")
    known = terms(guns, tanks, groups=(GroupLimit(group="armour", least=1, most=2),))
    assert codes(known) == ["below-group"]
    assert codes(known, "guns") == []
    assert codes(known, "guns", "tanks") == []
    assert codes(known, "guns", "tanks", "tanks") == ["over-group"]
    assert codes(known, "guns", "mules") == ["not-in-force"]


@pytest.mark.parametrize(
    ("points", "expected"),
    [(12, []), (11, ["over-group-points"]), (24, []), (25, ["below-group-points"])],
)
def test_a_group_has_an_exact_share_of_the_points(points: int, expected: list[str]) -> None:
    share = GroupLimit(group="armour", least_points=Fraction(1, 6), most_points=Fraction(1, 3))
    known = terms(replace(GUNS, group="armour"), groups=(share,))
    assert codes(known, "guns", points=points) == expected


def test_without_a_least_share_refunds_may_bring_a_group_below_nought() -> None:
    poor = Offer(name="poor", cost={1: -2}, group="armour")
    known = terms(poor, groups=(GroupLimit(group="armour", most_points=Fraction(1, 2)),))
    assert codes(known, "poor") == []


def test_what_has_no_price_is_told_once_and_costs_nothing() -> None:
    pioneers = Offer(name="pioneers", cost={2: 6}, choices={"flame": 0}, most=9)
    known = terms(pioneers)
    assert codes(known, "pioneers", "pioneers") == ["number-not-priced", "choice-missing"]
    assert codes(known, "pioneers/smoke") == ["number-not-priced", "choice-unknown"]
    assert codes(known, "lancers", "lancers") == ["unknown-name"]
    assert bill_of(known, take("pioneers", "lancers"), points=5).spent == 0
    assert is_priced(known, Purchase(entry="pioneers", number=2, choice="flame"))


@settings(max_examples=60, deadline=None)
@given(drawn=st.data(), points=st.integers(-1, 9))
def test_the_judge_agrees_with_the_rules_in_the_plainest_words(
    drawn: st.DataObject, points: int
) -> None:
    known = drawn.draw(small_terms())
    plan = drawn.draw(plans_of(known))
    bill = bill_of(known, plan, points=points)
    assert bill.spent == plain_points(known, plan)
    assert (breaches(bill) == ()) == plainly_legal(known, plan, points=points)
