"""The best force by search: as good as by listing all, and with a bound where it is stopped."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bench.force_lists import force_list
from paradestate.chance.force import option, taking
from paradestate.chance.force.best_force import best_forces
from paradestate.chance.force.diagram import diagram
from paradestate.chance.force.fielding import Fielding, depot
from paradestate.chance.force.groundwork import MoreTies
from paradestate.chance.force.searched_force import searched_force
from paradestate.core.certainty import NotComputed
from paradestate.core.support.breach import bill_of, breaches
from paradestate.core.support.entry import Entry, GroupLimit
from paradestate.core.support.force_map import SearchedForce, ValuedForce
from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.core.support.plan import plan_points, plan_worth
from paradestate.core.support.terms import Terms
from paradestate.solve.program import Ending
from tests.chance.force.lists import SMALL, A, B, drawn, listed, names, ranked
from tests.chance.force.test_best_force import UNIT, once_each, program_of
from tests.forces import force_from
from tests.support_terms import attack, every_legal_plan, small_terms
from tests.supported_forces import fielded_entries, made_of, plainly_fielded, stocked_forces

PLENTY = 10_000


def searched(
    terms: Terms, *, points: int, more: MoreTies | None = None, steps: int = PLENTY
) -> SearchedForce:
    found = searched_force(terms, points=points, more=more, steps=steps)
    assert isinstance(found, SearchedForce)
    return found


def proved(terms: Terms, *, points: int, more: MoreTies | None = None) -> ValuedForce | None:
    found = searched(terms, points=points, more=more)
    assert found.is_proved
    assert found.bound == (found.force.worth if found.force else None)
    return found.force


def test_the_best_of_the_small_example_at_each_number_of_points() -> None:
    forces = [proved(listed(*SMALL), points=points) for points in range(9)]
    assert [names(force.purchases) for force in forces if force] == [
        "",
        "",
        "A",
        "B",
        "B",
        "A B",
        "A B",
        "A A B",
        "B C",
    ]


def test_the_best_of_the_example_in_an_attack() -> None:
    found = proved(attack(), points=18)
    assert found is not None
    assert (found.worth, found.points) == (Fraction(19), 18)


def test_of_the_same_worth_the_fewest_points_are_best() -> None:
    dear = Offer(name="dear", cost={1: 3}, worths={NO_CHOICE: {1: Fraction(2)}})
    found = proved(listed(dear, A), points=3)
    assert found is not None
    assert names(found.purchases) == "A"


def test_with_less_than_no_points_only_nothing_is_legal() -> None:
    nothing = ValuedForce(purchases=(), points=0, worth=Fraction(0))
    assert proved(listed(replace(A, cost={1: -2})), points=-1) == nothing
    assert proved(listed(replace(A, least=1)), points=-1) is None


def test_where_nothing_is_legal_there_is_no_best() -> None:
    assert proved(listed(replace(A, least=4)), points=8) is None
    one = replace(A, most=1, group="g", bars=frozenset("B"))
    other = replace(B, most=1, group="g", bars=frozenset("A"))
    both = GroupLimit(group="g", least=2)
    assert proved(listed(one, other, groups=[both]), points=8) is None


def test_too_many_takings_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(option, "MOST_USES", 3)
    found = searched_force(listed(A), points=8)
    assert found == NotComputed(
        reason="the ways to take each entry, times the limits, are more than 3"
    )
    monkeypatch.setattr(taking, "MOST_KEYS", 2)
    found = searched_force(listed(A), points=8)
    assert found == NotComputed(reason="there are more than 2 ways to take 'A' alone")


@pytest.mark.parametrize("steps", [0, 1, 30, 45])
def test_a_search_that_is_stopped_says_how_much_better_a_force_may_be(steps: int) -> None:
    terms = force_list(40, seed=2, shares=(Fraction(1, 3), Fraction(1, 2)))
    found = searched(terms, points=60, steps=steps)
    assert not found.is_proved
    assert found.bound is not None
    assert found.bound >= 121, "the worth of the best, found by the diagram"
    assert found.force is None or steps > 40, "each entry takes a step"


@pytest.mark.parametrize("seed", [2, 3])
def test_a_solver_of_whole_number_programs_finds_the_same_best(seed: int) -> None:
    """Eight groups of which each may take a tenth of the points: no diagram is drawn of them."""
    terms = once_each(seed, entries=60, shares=(Fraction(1, 10),) * 8)
    assert isinstance(diagram(terms, greatest=100), NotComputed)
    found = proved(terms, points=100)
    solved = program_of(terms, points=100).solved(seconds=60)
    assert solved.ending is Ending.OPTIMAL
    assert found is not None
    assert found.worth * UNIT == -solved.bound


@pytest.mark.parametrize("seed", [1, 2])
def test_the_best_of_a_long_list_is_that_of_the_diagram(seed: int) -> None:
    terms = force_list(40, seed=seed, shares=(Fraction(1, 3),))
    best = best_forces(drawn(terms, greatest=60)).best(points=60)
    found = proved(terms, points=60)
    assert best is not None
    assert found is not None
    assert (found.worth, found.points) == (best.worth, best.points)


def test_a_finished_stand_is_of_use_only_as_it_is() -> None:
    """There is a loose figure and an A, and A and B want the same: two B want one too many."""
    force = force_from(
        "figures: {a: {}}",
        "stands: {A: {base: none, figures: {a: 1}}, B: {base: none, figures: {a: 1}}, "
        "card: {base: none, printed: yes}}",
        "formations: {top: {parts: {card: 1}}}",
    )
    force = replace(force, stock={"a": {"based": 1}}, stock_stands={"A": {"based": 1}})
    entries = {name: Entry(name=name, cost={1: 1}, each={name: 1}) for name in "AB"}
    fielding = Fielding(depot(force, made_of(force), finished=False), entries)
    found = proved(listed(A, B), points=8, more=fielding.ties)
    assert found is not None
    assert names(found.purchases) == "A B"


@settings(max_examples=40)
@given(small_terms(), st.integers(-1, 8), st.integers(0, 12))
def test_the_best_is_the_first_of_all_that_are_listed(terms: Terms, points: int, few: int) -> None:
    best = ranked(terms, points=points, first=1)
    force = proved(terms, points=points)
    assert [(force.worth, force.points)] == best if force else not best
    assert force is None or not breaches(bill_of(terms, force.purchases, points=points))
    stopped = searched(terms, points=points, steps=few)
    if best:
        assert stopped.bound is not None
        assert stopped.bound >= best[0][0]
    assert stopped.force is None or stopped.force.worth <= best[0][0]


@settings(max_examples=25)
@given(small_terms(most_entries=3), st.data())
def test_the_best_that_can_be_fielded_is_that_of_allotting_each_force(
    terms: Terms, data: st.DataObject
) -> None:
    """Two stands at most may be taken away, and no force takes more."""
    exchanges = data.draw(st.booleans())
    most = 1 if exchanges else 2
    kept = dict(list(terms.offers.items())[: 4 - most - exchanges])
    offers = {name: replace(offer, most=most) for name, offer in kept.items()}
    terms = replace(terms, offers=offers)
    force = data.draw(stocked_forces(exchanges=exchanges))
    entries = data.draw(fielded_entries(terms, exchanges=exchanges))
    fielding = Fielding(depot(force, made_of(force), finished=False), entries)
    plainly = [
        (plan_worth(offers, plan), -plan_points(offers, plan))
        for plan in every_legal_plan(terms, points=6)
        if plainly_fielded(force, entries, plan=plan)
    ]
    found = proved(terms, points=6, more=fielding.ties)
    assert [(found.worth, -found.points)] == [max(plainly)] if found else not plainly
