"""The best forces by the worths of their owner."""

from dataclasses import replace
from fractions import Fraction
from itertools import islice

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bench.force_lists import force_list
from paradestate.chance.force.best_force import BestForces, best_forces
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.force_map import ValuedForce
from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.core.support.plan import plan_points, plan_worth
from paradestate.core.support.terms import Terms
from paradestate.solve.program import Ending, Program
from tests.chance.force.lists import SMALL, A, B, C, drawn, in_order, listed, names, ranked
from tests.solve.second_solver import solved_again
from tests.support_terms import attack, small_terms


def best_of(terms: Terms, *, greatest: int) -> BestForces:
    return best_forces(drawn(terms, greatest=greatest))


def test_the_best_of_the_small_example_at_each_number_of_points() -> None:
    found = best_of(listed(*SMALL), greatest=8)
    forces = [found.best(points=points) for points in range(9)]
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
    assert found.worths(range(9)) == tuple(force.worth for force in forces if force)


def test_of_the_same_worth_the_fewest_points_come_first() -> None:
    dear = Offer(name="dear", cost={1: 3}, worths={NO_CHOICE: {1: Fraction(2)}})
    every = list(best_of(listed(dear, A), greatest=3).ranked(points=3))
    assert [names(force.purchases) for force in every] == ["A", "dear", ""]


def test_each_worth_has_one_force_and_its_fewest_points() -> None:
    steps = list(best_of(listed(*SMALL), greatest=8).steps(points=8))
    assert [(names(force.purchases), str(force.worth)) for force in steps] == [
        ("B C", "19/2"),
        ("A A B", "13/2"),
        ("A B", "11/2"),
        ("B", "7/2"),
        ("A A", "3"),
        ("A", "2"),
        ("", "0"),
    ]


def test_where_nothing_is_legal_there_is_no_best() -> None:
    must = best_of(listed(replace(A, least=2)), greatest=8)
    assert must.worths([-1, 3, 4]) == (None, None, Fraction(3))
    assert must.best(points=3) is None
    assert must.best(points=-1) is None
    assert list(must.steps(points=-1)) == []
    nothing = best_of(listed(replace(A, least=4)), greatest=8)
    assert nothing.worths([8]) == (None,)
    assert nothing.best(points=8) is None


def test_with_less_than_no_points_the_best_is_nothing() -> None:
    found = best_of(listed(*SMALL), greatest=8)
    assert found.worths([-1]) == (Fraction(0),)
    assert list(found.ranked(points=-1)) == [ValuedForce(purchases=(), points=0, worth=Fraction(0))]


def test_each_game_has_its_own_shares() -> None:
    half = GroupLimit(group="g", least_points=Fraction(1, 4), most_points=Fraction(1, 2))
    terms = listed(A, replace(B, group="g"), replace(C, group="g"), groups=[half])
    found = best_of(terms, greatest=12)
    every = [ranked(terms, points=points, first=1) for points in range(13)]
    assert found.worths(range(13)) == tuple(best[0][0] if best else None for best in every)
    assert found.worths([13 - 8])[0] is None, "5 points allow 2 for the group, and none costs so"
    best = found.best(points=12)
    assert best is not None
    assert names(best.purchases) == "A A B"


@settings(max_examples=40, deadline=None)
@given(small_terms(), st.integers(-1, 8), st.integers(0, 2))
def test_the_ranking_is_that_of_all_forces(terms: Terms, points: int, more: int) -> None:
    found = best_of(terms, greatest=points + more)
    first = list(islice(found.ranked(points=points), 20))
    assert [(force.worth, force.points) for force in first] == ranked(terms, points=points)
    assert len({in_order(force.purchases) for force in first}) == len(first)
    for force in first:
        assert plan_points(terms.offers, force.purchases) == force.points
        assert plan_worth(terms.offers, force.purchases) == force.worth
    assert found.worths([points]) == ((first[0].worth if first else None),)
    cheapest: dict[Fraction, int] = {}
    for worth, cost in ranked(terms, points=points, first=10**6):
        cheapest.setdefault(worth, cost)
    steps = list(found.steps(points=points))
    assert [(force.worth, force.points) for force in steps] == list(cheapest.items())


def program_of(terms: Terms, *, points: int) -> Program:
    """The best force as a whole-number program: a variable for each priced number of an entry."""
    program = Program()
    numbers = {
        name: {program.variable(most=1): number for number in offer.cost}
        for name, offer in terms.offers.items()
    }
    costs = {
        each: terms.offers[name].cost[number]
        for name, priced in numbers.items()
        for each, number in priced.items()
    }
    program.row(costs, most=points)
    for name, offer in terms.offers.items():
        own = dict.fromkeys(numbers[name], 1)
        program.row(own, most=offer.most)
        for other, least in offer.needs.items():
            program.row(dict.fromkeys(numbers[other], 1) | dict.fromkeys(own, -least), least=0)
        any_of = {each: 1 for other in offer.needs_any_of for each in numbers[other]}
        if any_of:
            program.row(any_of | dict.fromkeys(own, -1), least=0)
        for other in offer.bars:
            program.row(own | dict.fromkeys(numbers[other], 1), most=1)
    for limit in terms.groups:
        within = [name for name, offer in terms.offers.items() if offer.group == limit.group]
        program.row({each: 1 for name in within for each in numbers[name]}, most=limit.most)
        shared = {each: costs[each] for name in within for each in numbers[name]}
        program.row(shared, most=limit.most_spent(points))
    program.minimise(
        {
            each: -int(terms.offers[name].worth({NO_CHOICE: number}) * UNIT)
            for name, priced in numbers.items()
            for each, number in priced.items()
        }
    )
    return program


UNIT = 16
"""Worths of the lists drawn from a seed are whole in sixteenths."""


def once_each(seed: int, *, entries: int = 40, shares: tuple[Fraction, ...] = ()) -> Terms:
    """A list of entries, each once, so that worths add up purchase by purchase."""
    terms = force_list(entries, seed=seed, shares=shares)
    offers = {name: replace(offer, most=1) for name, offer in terms.offers.items()}
    return replace(terms, offers=offers)


@pytest.mark.parametrize(("seed", "points"), [(1, 23), (2, 60), (3, 41)])
def test_two_solvers_of_whole_number_programs_find_the_same_best(seed: int, points: int) -> None:
    terms = once_each(seed)
    program = program_of(terms, points=points)
    first, second = program.solved(seconds=60), solved_again(program)
    assert first.ending is second.ending is Ending.OPTIMAL
    (worth,) = best_of(terms, greatest=60).worths([points])
    assert worth is not None
    assert -first.bound == -second.bound == worth * UNIT


def test_the_example_in_an_attack() -> None:
    """By hand: tanks 10 for 9, guns 4 for 4 and machine guns 5 for 5; nothing else is as good."""
    best = best_of(attack(), greatest=18).best(points=18)
    assert best is not None
    assert (best.worth, best.points) == (Fraction(19), 18)
    assert {each.entry: each.number for each in best.purchases} == {
        "light tanks": 2,
        "anti-tank guns": 1,
        "machine-gun platoon": 2,
    }
