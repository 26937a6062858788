"""How many legal forces hold an entry, beside plain listing."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings

from paradestate.chance.proof.entry_count import levels_without
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import SMALL, drawn, listed
from tests.support_terms import attack, every_legal_plan, small_terms


def without(terms: Terms, points: range) -> dict[str, list[int]]:
    found = levels_without(drawn(terms, greatest=points[-1]), points=points)
    return {name: [level.legal for level in levels] for name, levels in found.items()}


def plainly_without(terms: Terms, points: range) -> dict[str, list[int]]:
    found: dict[str, list[int]] = {name: [] for name in terms.offers}
    for number in points:
        plans = list(every_legal_plan(terms, points=number))
        for name, counts in found.items():
            counts.append(sum(all(each.entry != name for each in plan) for plan in plans))
    return found


def test_the_small_example() -> None:
    """Section 3.12 of the computations: of 10 forces one holds C, and 9 don't."""
    assert without(listed(*SMALL), range(8, 9))["C"] == [9]


def test_the_example_in_an_attack() -> None:
    """Section 3.12: of 19 forces with 5 points two hold mortars or none, counted by hand."""
    found = without(attack(), range(5, 6))
    assert found["medium mortars"] == [18]
    assert found["bicycle troop"] == [18]
    assert found["machine-gun platoon"] == [16]
    assert found["light tanks"] == [19]


def test_a_share_of_the_points_is_judged_at_each_level() -> None:
    half = GroupLimit(group="g", most_points=Fraction(1, 2))
    a, b, c = SMALL
    shared = (replace(a, group="g"), replace(b, group="g", least=1), c)
    terms = listed(*shared, groups=[half])
    points = range(3, 9)
    assert without(terms, points) == plainly_without(terms, points)


@settings(max_examples=30, deadline=None)
@given(small_terms())
def test_counts_equal_plain_listing(terms: Terms) -> None:
    points = range(-1, 7)
    found = without(terms, points)
    plain = plainly_without(terms, points)
    assert {name: found.get(name, plain[name]) for name in plain} == plain
