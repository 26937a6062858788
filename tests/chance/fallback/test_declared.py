"""Sets that are named before the first roll."""

from dataclasses import replace
from fractions import Fraction

from paradestate.chance.fallback.declared import Declaration, best_grants, declaration_of
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.chance.fallback.fallbacks import GUN, HALF, MACHINE_GUN, TANK, TANK_GAME, prospect, worth
from tests.chance.plans import bought, terms_with


def declared(terms: Terms, *, points: int) -> Declaration:
    made = declaration_of(prospect(terms, points=points))
    assert made is not None
    return made


def best(terms: Terms, *, points: int) -> tuple[object, object]:
    made = declared(terms, points=points)
    value, named = made.named(points)[0]
    names = tuple(each.entry for each in named.purchases)
    return names, Fraction(value, made.ways * made.opinion.unit)


def test_the_tank_is_named_and_what_comes_free_is_spent() -> None:
    assert best(TANK_GAME, points=6) == (("tank",), 9)


def test_the_points_of_all_that_is_named_are_set_aside() -> None:
    """Two tanks of 6 can't both be named with 11, though at most one might come."""
    other = replace(TANK, name="other")
    assert best(terms_with(TANK, other), points=11) == (("tank",), 5)
    assert best(terms_with(TANK, other), points=12) == (("tank", "other"), 10)


def test_a_refund_that_may_be_refused_pays_for_nothing_that_is_named() -> None:
    mud = Offer(name="mud", cost={1: -4}, availability=HALF, worths={})
    assert best(terms_with(TANK, mud), points=5)[1] == 0
    assert best(terms_with(GUN, mud), points=0) == (("mud",), Fraction(5, 2))


def test_lost_points_are_gone_for_all_that_was_named() -> None:
    losing = replace(TANK, loses_points=True)
    assert best(terms_with(losing, GUN, MACHINE_GUN), points=6) == ((), 8)
    assert best(terms_with(losing, GUN), points=10) == (("tank",), 10)
    either = replace(losing, cost={1: -1, 2: 6}, worths=worth(n2=10))
    assert best(terms_with(either), points=6) == (("tank",), 5)


def test_what_is_named_must_be_able_to_stand_together() -> None:
    barring = replace(TANK, name="other", bars=frozenset({"tank"}))
    assert best(terms_with(TANK, barring), points=12) == (("tank",), 5)
    needing = replace(TANK, needs={"machine gun": 1})
    assert best(terms_with(needing, MACHINE_GUN), points=7) == ((), 3)
    assert best(terms_with(needing, MACHINE_GUN), points=8) == (("tank",), 8)
    grouped = replace(
        terms_with(replace(TANK, group="armour"), replace(TANK, name="other", group="armour")),
        groups=(GroupLimit(group="armour", most=1, most_points=Fraction(1)),),
    )
    assert best(grouped, points=12) == (("tank",), 5)


def test_what_needs_a_refused_one_is_not_held() -> None:
    crew = Offer(name="crew", cost={1: 1}, availability=HALF, needs={"tank": 1}, worths=worth(n1=8))
    assert best(terms_with(TANK, crew), points=7) == (("tank", "crew"), 5 + 2)


def test_of_what_is_allowed_the_best_is_taken_for_the_fewest_points() -> None:
    guns = Offer(name="guns", cost={1: 2, 2: 4}, availability=HALF, worths=worth(n1=5, n2=5))
    made = declared(terms_with(guns), points=4)
    assert best_grants(made, (2,), points=4) == (1,)


def test_equal_sets_are_ordered_by_points_and_number() -> None:
    idle = replace(TANK, name="idle", cost={1: 1}, worths={}, needs={"tank": 1})
    made = declared(terms_with(replace(TANK, worths=worth(n1=10)), idle, GUN), points=12)
    assert made.named(12)[0][1].purchases == bought(tank=1)


def test_more_sets_than_are_compared_are_refused() -> None:
    many = [replace(TANK, name=f"tank {n}") for n in range(16)]
    assert declaration_of(prospect(terms_with(*many), points=6)) is None
