"""Entries that are rolled for, and their rolls."""

from dataclasses import replace

from paradestate.chance.fallback.rolled import options_of, points_saved, rolled_entries
from paradestate.core.support.offer import Offer
from tests.chance.fallback.fallbacks import GUN, HALF, TANK, guns_and_horse
from tests.chance.plans import rolled

GUNS = Offer(name="guns", cost={1: 4, 2: 7}, availability=rolled(9, sides=12, partly=3))


def test_options_are_all_priced_numbers_with_every_choice_fewest_points_first() -> None:
    offer = Offer(name="pioneers", cost={2: 6, 1: 3}, choices={"flame": 1, "charges": 0})
    assert [(o.purchase.number, o.purchase.choice, o.price) for o in options_of(offer)] == [
        (1, "charges", 3),
        (1, "flame", 4),
        (2, "charges", 6),
        (2, "flame", 8),
    ]


def test_cases_of_a_roll_are_in_lowest_terms() -> None:
    """Of 1d12: 9 or more both, 3 or more one, else none: 1/3, 1/2, 1/6."""
    (guns,), (roll,) = rolled_entries([GUNS, GUN])
    assert (guns.roll, guns.seat) == (0, 0)
    assert [(case.allowed, case.ways) for case in roll.cases] == [((2,), 2), ((1,), 3), ((0,), 1)]
    assert roll.ways == 6


def test_a_shared_roll_has_one_case_for_all_that_it_decides() -> None:
    entries, (roll,) = rolled_entries(guns_and_horse().offers.values())
    assert [(each.roll, each.seat) for each in entries] == [(0, 0), (0, 1)]
    assert [case.allowed for case in roll.cases] == [(2, 1), (2, 0), (1, 0), (0, 0)]


def test_entries_that_do_not_agree_what_is_rolled_have_a_roll_each() -> None:
    one = replace(TANK, name="one", availability=rolled(4, shared="convoy"))
    other = replace(TANK, name="other", availability=rolled(4, sides=8, shared="convoy"))
    _, rolls = rolled_entries([one, other])
    assert [roll.members for roll in rolls] == [(0,), (1,)]


def test_lost_points_are_those_that_were_asked() -> None:
    (guns,), _ = rolled_entries([replace(GUNS, loses_points=True)])
    one, two = guns.options
    assert [guns.paid(two, taken) for taken in (None, one, two)] == [7, 7, 7]
    (kept,), _ = rolled_entries([GUNS])
    assert [kept.paid(two, taken) for taken in (None, one, two)] == [0, 4, 7]


def test_what_would_bring_points_is_never_lost() -> None:
    (mud,), _ = rolled_entries(
        [Offer(name="mud", cost={1: -2}, availability=HALF, loses_points=True)]
    )
    (option,) = mud.options
    assert (mud.paid(option, None), mud.paid(option, option)) == (0, -2)


def test_no_more_is_taken_than_was_asked_and_allowed_and_with_the_same_choice() -> None:
    offer = replace(GUNS, choices={"light": 0, "heavy": 1})
    (guns,), _ = rolled_entries([offer])
    asked = next(o for o in guns.options if o.purchase.choice == "heavy" and o.price == 9)
    takes = [option.purchase for option in guns.takes(asked, allowed=1)]
    assert [(each.number, each.choice) for each in takes] == [(1, "heavy")]
    assert len(guns.takes(asked, allowed=5)) == 2


def test_refunds_are_added_up_as_often_as_they_may_be_taken() -> None:
    mud = Offer(name="mud", cost={1: -2}, most=3, repeats_cost_more=(1,))
    bog = replace(mud, name="bog", availability=HALF)
    many = Offer(name="many", cost={1: 1}, most=None)
    assert points_saved({each.name: each for each in (mud, bog, many)}) == 4 + 2
