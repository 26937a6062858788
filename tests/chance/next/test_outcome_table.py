"""The best forces of now and of then for everything that may come of the dice."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.chance.next import outcome_table as module
from paradestate.chance.next.outcome_table import outcome_rows
from paradestate.core.support.chances import chances
from paradestate.core.support.force_map import ValuedForce
from tests.chance.next.examples import osk, osk_bought, osk_terms, osk_worth, play_of, worth_of


def short(force: ValuedForce | None) -> str:
    return "" if force is None else f"{force.worth}: {' '.join(e.entry for e in force.purchases)}"


def rows(*, now: tuple[int, int], then: tuple[int, int]) -> list[tuple[object, ...]]:
    game = osk_worth()
    keys = [game.ground.key(osk_bought(each)[0]) for each in (now, then)]
    return [
        (row.points, row.chance, row.allowed, short(row.now), short(row.then))
        for row in outcome_rows(game, now=keys[0], then=keys[1])
    ]


def test_the_outcomes_of_the_example_with_a_tank() -> None:
    mg = "machine guns"
    sixth, both = Fraction(1, 6), ({"tanks": 0}, {"tanks": 1})
    assert rows(now=(0, 0), then=(0, 1)) == [
        (4, 2 * sixth, both, f"6: {mg} {mg}", f"6: {mg} {mg}"),
        (6, sixth, ({"tanks": 0},), f"6: {mg} {mg}", f"6: {mg} {mg}"),
        (6, sixth, ({"tanks": 1},), f"6: {mg} {mg}", "10: tanks"),
        (8, sixth, ({"tanks": 0},), f"6: {mg} {mg}", f"6: {mg} {mg}"),
        (8, sixth, ({"tanks": 1},), f"6: {mg} {mg}", f"13: {mg} tanks"),
    ]


def test_of_many_outcomes_it_is_said_what_comes_if_all_is_allowed(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(module, "MOST_OUTCOMES", 1)
    third = Fraction(1, 3)
    assert [(row[0], row[1], row[2], row[4]) for row in rows(now=(0, 0), then=(0, 1))] == [
        (4, third, (), "6: machine guns machine guns"),
        (6, third, (), "10: tanks"),
        (8, third, (), "13: machine guns tanks"),
    ]


def test_where_no_force_can_be_fielded_there_is_none() -> None:
    terms = osk_terms()
    must = replace(terms.offers["guns"], least=1)
    terms = replace(terms, offers={**terms.offers, "guns": must})
    game = worth_of(play_of(terms, osk(), most=osk_bought((3, 3))[0]))
    now, then = (game.ground.key(osk_bought(each)[0]) for each in ((0, 0), (1, 0)))
    found = list(outcome_rows(game, now=now, then=then))
    assert [(short(row.now), short(row.then)) for row in found] == [
        ("", "7: guns"),
        ("", "10: machine guns guns"),
        ("", "13: machine guns machine guns guns"),
    ]


def test_with_less_than_no_points_nothing_is_fielded_and_the_chances_make_one() -> None:
    play = play_of(osk_terms(), osk(), most=osk_bought((3, 3))[0])
    game = worth_of(replace(play, points=chances({-2: 1, 2: 3})))
    key = game.ground.key(osk_bought((0, 0))[0])
    first, second = outcome_rows(game, now=key, then=key)
    assert (first.points, first.chance, short(first.now)) == (-2, Fraction(1, 4), "0: ")
    assert (second.points, second.chance) == (2, Fraction(3, 4))


def test_with_less_than_no_points_what_must_be_held_leaves_no_force() -> None:
    terms = osk_terms()
    must = replace(terms.offers["guns"], least=1)
    terms = replace(terms, offers={**terms.offers, "guns": must})
    play = play_of(terms, osk(), most=osk_bought((3, 3))[0])
    game = worth_of(replace(play, points=chances({-2: 1, 8: 1})))
    for bought in ((0, 0), (1, 0)):
        key = game.ground.key(osk_bought(bought)[0])
        first, *_ = outcome_rows(game, now=key, then=key)
        assert (first.points, first.now, first.then) == (-2, None, None)
