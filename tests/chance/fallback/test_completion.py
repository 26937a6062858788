"""The best sure troops to end with."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.chance.fallback import completion
from paradestate.chance.fallback.completion import (
    BestSet,
    Completions,
    HeldAtEnd,
    completions_of,
    never,
)
from paradestate.chance.fallback.opinion import as_said
from paradestate.chance.fallback.rules import rules_of
from paradestate.core.game import Purchase
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_worth
from paradestate.core.support.terms import Terms
from tests.chance.fallback.fallbacks import GUN, MACHINE_GUN, TANK, TANK_GAME, prospect, worth
from tests.chance.fallback.plain_fallback import PlainFallback, without_leasts
from tests.chance.plans import terms_with
from tests.support_terms import small_terms

BOUND = 10_000
LEAST = never(BOUND) // 2
"""Whatever can be is worth more."""


def completions(terms: Terms, *, points: int, judge_rolled: bool = False) -> Completions:
    return completions_of(rules_of(prospect(terms, points=points)), judge_rolled=judge_rolled)


def best(made: Completions, held: HeldAtEnd) -> list[int]:
    said = as_said(made.rules.prospect.offers.values())
    (row,), (again,) = (made.worths(held, [said], bound=bound) for bound in (BOUND, 2**70))
    assert [value for value in row if value > LEAST] == [
        value for value in again if value > never(2**70) // 2
    ]
    sets = made.best_sets(held, said)
    assert [each.worth if each else None for each in sets] == [
        None if value <= LEAST else value for value in row
    ]
    return [int(value) for value in row]


def test_the_best_for_every_number_of_points() -> None:
    made = completions(TANK_GAME, points=6)
    assert best(made, made.held(made.rules.start().at(0))) == [0, 0, 3, 3, 5, 5, 8]


def test_of_equal_worth_what_costs_the_fewest_points() -> None:
    dear = replace(MACHINE_GUN, name="dear gun", cost={1: 5}, worths=worth(n1=8))
    made = completions(terms_with(dear, GUN, MACHINE_GUN), points=6)
    sets = made.best_sets(HeldAtEnd(0, (), ()), as_said(made.sure))
    assert sets[6] is not None
    assert (sets[6].points, [each.entry for each in sets[6].purchases]) == (5, ["dear gun"])


def test_of_a_long_list_nothing_beyond_the_points_is_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    number, points = 60, 6
    made = completions(
        terms_with(*(Offer(name=f"e{n}", cost={1: 5}, worths=worth(n1=1)) for n in range(number))),
        points=points,
    )
    kept: list[int] = []

    def counted(*, worth: int, points: int, purchases: tuple[Purchase, ...]) -> BestSet:
        kept.append(points)
        return BestSet(worth=worth, points=points, purchases=purchases)

    monkeypatch.setattr(completion, "BestSet", counted)
    sets = made.best_sets(made.held(made.rules.start().at(0)), as_said(made.sure))
    assert [each.worth if each else None for each in sets] == [0, 0, 0, 0, 0, 1, 1]
    assert max(kept) == points - 1
    assert len(kept) <= 3 * number + 1


def test_what_is_held_bars_and_opens() -> None:
    barred = replace(TANK, bars=frozenset({"gun"}))
    made = completions(terms_with(barred, GUN, MACHINE_GUN), points=4)
    assert best(made, HeldAtEnd(1, (), ())) == [0, 0, 3, 3, 3]
    opened = completions(terms_with(TANK, replace(GUN, needs={"tank": 1})), points=4)
    assert best(opened, HeldAtEnd(0, (), ()))[4] == 0
    assert best(opened, HeldAtEnd(1, (), ()))[4] == 5


def test_a_later_entry_that_needs_an_earlier_one_and_more_of_it_for_each() -> None:
    crew = Offer(name="crew", cost={1: 1}, most=2)
    gun = replace(GUN, cost={1: 2}, most=2, needs_for_each={"crew": 1}, worths=worth(n1=5, n2=9))
    made = completions(terms_with(crew, gun), points=6)
    assert best(made, made.held(made.rules.start().at(0))) == [0, 0, 0, 5, 5, 5, 9]


def test_a_group_that_is_full_or_too_full() -> None:
    limits = (GroupLimit(group="guns", most=1), GroupLimit(group="armour", most=1))
    terms = terms_with(
        replace(GUN, group="guns"),
        replace(MACHINE_GUN, group="guns"),
        replace(TANK, group="armour"),
    )
    made = completions(replace(terms, groups=limits), points=6)
    assert best(made, HeldAtEnd(0, (), (1, 1)))[6] == 5
    assert best(made, HeldAtEnd(0, (), (0, 1)))[6] == 0
    assert best(made, HeldAtEnd(0, (), (1, -1)))[6] < LEAST


def test_a_refund_makes_room_again_in_a_share_of_points() -> None:
    mud = Offer(name="mud", cost={1: -2}, group="guns")
    terms = terms_with(replace(GUN, group="guns"), mud)
    limits = (GroupLimit(group="guns", most_points=Fraction(1, 2)),)
    made = completions(replace(terms, groups=limits), points=4)
    assert best(made, HeldAtEnd(0, (0,), (2,)))[4] == 5


@pytest.mark.parametrize(("most", "worth_of_two_points"), [(1, 0), (2, 5)])
def test_what_brings_points_fills_its_group_too(most: int, worth_of_two_points: int) -> None:
    mud = Offer(name="mud", cost={1: -2}, group="guns")
    limits = (GroupLimit(group="guns", most=most),)
    terms = replace(terms_with(replace(GUN, group="guns"), mud), groups=limits)
    made = completions(terms, points=2)
    assert best(made, made.held(made.rules.start().at(0)))[2] == worth_of_two_points


def test_what_a_rolled_entry_needs_is_bought_at_the_end_where_that_is_judged() -> None:
    terms = terms_with(replace(TANK, needs={"machine gun": 1}), GUN, MACHINE_GUN)
    made = completions(terms, points=6, judge_rolled=True)
    rolled = HeldAtEnd(1, (0,), ())
    assert best(made, rolled)[1] < LEAST
    assert best(made, rolled)[2:7] == [3, 3, 3, 3, 8]


@settings(max_examples=40)
@given(small_terms(most_entries=3), st.integers(0, 6))
def test_ends_are_those_of_going_through_every_set(terms: Terms, points: int) -> None:
    free = without_leasts(terms)
    made = completions(free, points=points)
    unit = as_said(made.rules.prospect.offers.values()).unit
    held = made.held(made.rules.start().at(0))
    plain = PlainFallback(terms=free, points=points)
    wanted = max(plan_worth(free.offers, more) for more in plain.sure_sets((), left=points))
    assert Fraction(best(made, held)[points], unit) == wanted


def test_what_brings_points_in_small_and_is_dearer_than_all_points_in_large() -> None:
    mud = Offer(name="mud", cost={1: -1, 2: 40}, worths=worth(n2=9))
    made = completions(terms_with(mud, GUN), points=3)
    assert best(made, HeldAtEnd(0, (0,), ())) == [0, 0, 0, 5, 5]
