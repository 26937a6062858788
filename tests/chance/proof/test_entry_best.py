"""In how many of the best forces an entry is, beside plain weighing of all of them."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings

from paradestate.chance.force.best_force import best_forces
from paradestate.chance.proof.entry_best import places_in_best
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.plan import plan_worth
from paradestate.core.support.proof import InBest
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import A, B, C, drawn, listed
from tests.support_terms import Plan, attack, every_legal_plan, small_terms

Places = dict[str, list[InBest | None]]


def places(terms: Terms, points: range) -> Places:
    best = best_forces(drawn(terms, greatest=points[-1]))
    return {name: list(each) for name, each in places_in_best(best, points=points).items()}


def plain_places(terms: Terms, points: range) -> Places:
    found: Places = {name: [] for name in terms.offers}
    for number in points:
        plans = list(every_legal_plan(terms, points=number))
        worths = [plan_worth(terms.offers, plan) for plan in plans]
        best = [p for p, worth in zip(plans, worths, strict=True) if worth == max(worths)]
        for name, said in found.items():
            said.append(_plain_place(name, best))
    return found


def _plain_place(name: str, best: list[Plan]) -> InBest | None:
    holding = sum(any(each.entry == name for each in plan) for plan in best)
    if not best:
        return None
    if holding == len(best):
        return InBest.EVERY
    return InBest.SOME if holding else InBest.NONE


def test_all_best_forces_are_considered_and_not_the_cheapest_alone() -> None:
    """With 3 points either of two that are alike is as good."""
    twin = replace(B, name="twin")
    found = places(listed(A, B, twin, C), range(3, 4))
    assert found == {
        "A": [InBest.NONE],
        "B": [InBest.SOME],
        "twin": [InBest.SOME],
        "C": [InBest.NONE],
    }


def test_the_example_with_eighteen_points() -> None:
    """Tanks with one gun, or armoured cars with two: 19 either way, always with machine guns."""
    found = places(attack(), range(18, 19))
    assert found["light tanks"] == [InBest.SOME]
    assert found["armoured cars"] == [InBest.SOME]
    assert found["machine-gun platoon"] == [InBest.EVERY]
    assert found["bicycle troop"] == [InBest.NONE]


def test_where_nothing_is_legal_there_is_no_place() -> None:
    found = places(listed(A, replace(B, least=1)), range(2, 4))
    assert found == {"A": [None, InBest.NONE], "B": [None, InBest.EVERY]}


def test_shares_of_the_points() -> None:
    half = GroupLimit(group="g", most_points=Fraction(1, 2))
    terms = listed(replace(A, group="g"), B, C, groups=[half])
    points = range(-1, 10)
    assert places(terms, points) == plain_places(terms, points)


@settings(max_examples=40, deadline=None)
@given(small_terms())
def test_places_equal_plain_weighing(terms: Terms) -> None:
    points = range(-1, 7)
    found = places(terms, points)
    plain = plain_places(terms, points)
    assert {name: found.get(name, plain[name]) for name in plain} == plain
