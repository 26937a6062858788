"""What matters to a fall-back."""

from dataclasses import replace
from fractions import Fraction

from paradestate.chance.fallback.prospect import Held, is_refund, needed_by
from paradestate.core.game import Purchase
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from tests.chance.fallback.fallbacks import GUN, HALF, MACHINE_GUN, TANK, prospect
from tests.chance.plans import rolled, terms_with

GUIDE = Offer(name="guide", cost={1: 1}, most=2)


def test_what_has_no_worth_and_is_needed_by_nothing_of_worth_is_left_out() -> None:
    idle = Offer(name="idle", cost={1: 1})
    never = replace(GUN, name="never", most=0)
    itself = replace(GUN, name="itself", bars=frozenset({"itself"}))
    made = prospect(terms_with(GUN, idle, never, itself), points=5)
    assert list(made.offers) == ["gun"]


def test_what_shares_a_roll_with_something_of_worth_may_tell_what_it_shows() -> None:
    one = replace(TANK, availability=rolled(4, shared="convoy"))
    other = replace(one, name="other", worths={})
    alone = replace(one, name="alone", worths={}, availability=HALF)
    assert list(prospect(terms_with(one, other, alone), points=5).offers) == ["tank", "other"]


def test_bars_stand_on_both_sides_among_what_is_of_use() -> None:
    barring = replace(GUN, bars=frozenset({"tank", "mules"}))
    made = prospect(terms_with(TANK, barring), points=5)
    assert made.offers["tank"].bars == {"gun"}
    assert made.offers["gun"].bars == {"tank"}


def test_what_a_rolled_entry_needs_may_be_bought_early_as_often_as_it_is_needed() -> None:
    guide = replace(GUIDE, needs_for_each={"map": 2})
    maps = Offer(name="map", cost={1: 1}, most=3)
    many = replace(MACHINE_GUN, most=None)
    tank = replace(TANK, needs={"guide": 5, "mules": 1}, needs_any_of={"machine gun": 4})
    made = prospect(terms_with(tank, guide, maps, many, GUN), points=9)
    assert made.early == {"guide": 2, "map": 3, "machine gun": 4}
    assert [offer.name for offer in made.sure] == ["guide", "map", "machine gun", "gun"]


def test_what_two_need_is_bought_early_as_often_as_the_one_that_needs_more() -> None:
    two = replace(TANK, name="two", needs={"guide": 2})
    one = replace(TANK, needs={"guide": 1})
    for terms in (terms_with(one, two, GUIDE), terms_with(two, one, GUIDE)):
        assert prospect(terms, points=9).early == {"guide": 2}


def test_what_brings_points_may_be_bought_early_with_what_it_needs() -> None:
    mud = Offer(name="mud", cost={1: -2}, most=2, needs={"guide": 1})
    made = prospect(terms_with(TANK, mud, GUIDE), points=4)
    assert made.early == {"mud": 2, "guide": 1}
    assert made.top == 4 + 4


def test_what_is_held_is_kept_though_it_is_of_no_use() -> None:
    held = Held(taken=(Purchase(entry="guide", number=1),) * 2)
    made = prospect(terms_with(TANK, GUIDE), points=4, held=held)
    assert made.early == {"guide": 2}


def test_a_later_purchase_that_costs_less_may_be_a_refund() -> None:
    assert is_refund(Offer(name="mud", cost={1: 1}, repeats_cost_more=(-2,)))
    assert not is_refund(GUN)


def test_needs_of_all_sorts_with_the_greatest_number() -> None:
    offer = replace(GUN, needs={"map": 1}, needs_any_of={"map": 3}, needs_for_each={"guide": 2})
    assert needed_by(offer) == {"map": 3, "guide": 2}


def test_rooms_of_groups_are_whole_numbers() -> None:
    tank = replace(TANK, group="armour")
    limits = (
        GroupLimit(group="armour", most=2, most_points=Fraction(1, 3)),
        GroupLimit(group="horse", most=1),
        GroupLimit(group="armour"),
    )
    made = prospect(replace(terms_with(tank, GUN), groups=limits), points=11)
    assert [(room.in_points, room.most) for room in made.rooms] == [(False, 2), (True, 3)]
