"""What one entry may bring, taken as often as its limit allows."""

from collections import Counter
from fractions import Fraction
from itertools import combinations_with_replacement

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.chance.force import taking
from paradestate.chance.force.taking import Taking, Takings, ValuedTaking, takings_of
from paradestate.core.certainty import NotComputed
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_points, plan_worth
from tests.support_terms import offers_called, single_purchases

GUNS = Offer(
    name="guns",
    cost={1: 4, 2: 7},
    choices={"towed": 0, "ported": 1},
    repeats_cost_more=(1,),
    most=2,
    worths={"": {1: Fraction(2), 3: Fraction(9, 2)}, "towed": {2: Fraction(1)}},
)


def takings(offer: Offer, *, budget: int = 99, numbered: bool = False) -> Takings:
    found = takings_of(offer, budget=budget, possible=lambda _: True, numbered=numbered)
    assert isinstance(found, Takings)
    return found


def test_two_purchases_of_guns() -> None:
    every = takings(GUNS).plain()
    assert sum(each.ways for each in every) == 1 + 4 + 10
    assert Taking(1, 0, 7, 1) in every, "two towed ones"
    assert Taking(2, 0, 4 + 4 + 1, 1) in every, "the second costs one more"
    assert Taking(2, 0, 4 + 5 + 1, 1) in every
    numbered = takings(GUNS, numbered=True).plain()
    assert {each.number for each in numbered} == {0, 1, 2, 3, 4}


def test_worths_are_whole_in_their_unit() -> None:
    every = takings(GUNS).valued(2)
    assert ValuedTaking(0, 0, 0, 0, 1) in every
    assert ValuedTaking(1, 0, 7, 4 + 2, 1) in every, "two towed: 2 for one or two, 1 for two towed"
    assert ValuedTaking(2, 0, 4 + 7 + 1, 9 + 2, 1) in every


def test_what_the_points_do_not_pay_for_is_left_out() -> None:
    assert {each.purchases for each in takings(GUNS, budget=7).plain()} == {0, 1}
    scouts = Offer(name="scouts", cost={1: 2}, most=None)
    assert max(each.purchases for each in takings(scouts, budget=9).plain()) == 4
    assert max(each.purchases for each in takings(scouts, budget=-1).plain()) == 0


def test_of_two_purchases_the_dearest_together_may_be_too_dear() -> None:
    scouts = Offer(name="scouts", cost={1: 2, 2: 3}, most=2)
    assert [each.points for each in takings(scouts, budget=5).plain()] == [0, 2, 4, 3, 5]


@pytest.mark.parametrize("cost", [0, -1])
def test_a_limit_of_a_thousand_million_is_refused_at_once(cost: int) -> None:
    mud = Offer(name="mud", cost={1: cost}, most=10**9)
    refused = takings_of(mud, budget=0, possible=lambda _: True)
    assert refused == NotComputed(reason="there are more than 50,000 ways to take 'mud' alone")


def test_an_entry_that_grows_cheaper_is_not_cut_too_soon() -> None:
    scouts = Offer(name="scouts", cost={1: 3}, repeats_cost_more=(-2,), most=3)
    assert scouts.cheapest == 1
    assert [each.points for each in takings(scouts, budget=5).plain()] == [0, 3, 4, 5]


def test_refunds_are_never_cut() -> None:
    poor = Offer(name="poor", cost={1: -2}, most=2)
    assert [each.points for each in takings(poor, budget=-9).plain()] == [0, -2, -4]


def test_too_many_takings_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(taking, "MOST_KEYS", 10)
    offer = Offer(name="scouts", cost={1: 1}, most=None)
    found = takings_of(offer, budget=20, possible=lambda _: True)
    assert isinstance(found, NotComputed)
    assert found.reason == "there are more than 10 ways to take 'scouts' alone"


def test_a_taking_has_no_more_places_than_ways() -> None:
    with pytest.raises(ValueError, match="no such place"):
        takings(GUNS).purchases_of(Taking(1, 0, 7, 1), 1)


@settings(max_examples=60, deadline=None)
@given(offers_called("guns", others=("horse",)).filter(lambda offer: offer.most is not None))
def test_takings_are_all_multisets_of_purchases(offer: Offer) -> None:
    found = takings(offer, numbered=True)
    offers = {"guns": offer}
    every = [
        plan
        for times in range(offer.least, (offer.most or 0) + 1)
        for plan in combinations_with_replacement(single_purchases(offer), times)
    ]
    plain: Counter[tuple[int, int, int]] = Counter()
    valued: Counter[tuple[int, int, int, Fraction]] = Counter()
    for plan in every:
        known = (len(plan), sum(each.number for each in plan), plan_points(offers, plan))
        plain[known] += 1
        valued[*known, plan_worth(offers, plan)] += 1
    assert {each[:3]: each.ways for each in found.plain()} == plain
    scale = 2
    assert {
        (*each[:3], Fraction(each.worth, scale)): each.ways for each in found.valued(scale)
    } == valued
    listed = [
        found.purchases_of(each, place) for each in found.plain() for place in range(each.ways)
    ]
    assert Counter(frozenset(Counter(plan).items()) for plan in listed) == Counter(
        frozenset(Counter(plan).items()) for plan in every
    )
    for each in found.valued(scale):
        for place in range(each.ways):
            plan = found.valued_purchases_of(each, place, scale=scale)
            assert plan_worth(offers, plan) * scale == each.worth


@given(st.integers(0, 3))
def test_only_possible_numbers_are_taken(only: int) -> None:
    found = takings_of(GUNS, budget=99, possible=lambda number: number == only)
    assert isinstance(found, Takings)
    assert {each.purchases for each in found.plain()} == ({only} if only < 3 else set())
