"""Entries that hang together."""

from dataclasses import replace

from paradestate.chance.fallback.knot import Knot, knots_of
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.chance.fallback.fallbacks import GUN, TANK, guns_and_horse, prospect
from tests.chance.plans import terms_with

OTHER = replace(TANK, name="other")
GUIDE = Offer(name="guide", cost={1: 1}, most=2)


def knots(terms: Terms) -> tuple[Knot, ...]:
    return knots_of(prospect(terms, points=9))


def test_what_is_bound_to_no_other_is_a_knot_by_itself() -> None:
    barring = replace(OTHER, bars=frozenset({"gun"}))
    assert [each.rolled for each in knots(terms_with(TANK, barring, GUN))] == [(0,), (1,)]


def test_a_condition_binds_also_by_way_of_what_is_bought_early() -> None:
    terms = terms_with(TANK, replace(OTHER, needs={"tank": 1}))
    assert [each.rolled for each in knots(terms)] == [(0, 1)]
    led = [replace(each, needs={"guide": 1}) for each in (TANK, OTHER)]
    assert knots(terms_with(*led, GUIDE)) == (Knot(rolled=(0, 1), early=(0,), rooms=(), shared=()),)


def test_a_group_binds_those_in_it_and_is_of_their_knot() -> None:
    tank, other = (replace(each, group="armour") for each in (TANK, OTHER))
    free = replace(TANK, name="free")
    limits = (GroupLimit(group="armour", most=1), GroupLimit(group="horse", most=1))
    terms = replace(terms_with(tank, free, other, replace(GUN, group="horse")), groups=limits)
    assert knots(terms) == (
        Knot(rolled=(0, 2), early=(), rooms=(0,), shared=()),
        Knot(rolled=(1,), early=(), rooms=(), shared=()),
    )


def test_a_shared_roll_binds_those_it_decides() -> None:
    assert knots(guns_and_horse()) == (Knot(rolled=(0, 1), early=(), rooms=(), shared=(0,)),)


def test_what_brings_points_is_a_knot_without_a_roll() -> None:
    mud = Offer(name="mud", cost={1: -2})
    assert knots(terms_with(TANK, mud)) == (
        Knot(rolled=(0,), early=(), rooms=(), shared=()),
        Knot(rolled=(), early=(0,), rooms=(), shared=()),
    )
