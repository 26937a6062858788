"""The greatest worths that many stocks have in one game."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings

from paradestate.chance.force.diagram import MOST_POINTS, Diagram
from paradestate.chance.next import game_worth as module
from paradestate.chance.next.expectation import Expectation
from paradestate.chance.next.game_worth import GameWorth, game_worth
from paradestate.chance.next.outcome_table import outcome_rows
from paradestate.core.certainty import NotComputed
from paradestate.core.force import Force
from paradestate.core.support.chances import chances
from paradestate.core.support.entry import Entry, Replacement
from paradestate.core.support.terms import Terms
from tests.chance.next.examples import (
    ALL,
    LOT,
    POINTS,
    drawn_plays,
    osk,
    osk_bought,
    osk_terms,
    osk_worth,
    owned,
    play_of,
    worth_of,
)
from tests.chance.next.plainly import plain_worth
from tests.forces import force_from


def worths(game: GameWorth, *baskets: tuple[int, int]) -> list[list[list[int]]]:
    keys = [game.ground.key(osk_bought(basket)[0]) for basket in baskets]
    assert game.refusal(keys) is None
    found = {
        key: units.tolist()
        for some, every in game.units(keys)
        for key, units in zip(some, every, strict=True)
    }
    return [found[key] for key in keys]


def test_the_table_of_outcomes_of_the_example() -> None:
    """Section 3.13 of the computations: rolls refuse the tank or not; 4, 6 or 8 points."""
    game = osk_worth()
    assert (game.levels, game.outcomes.ways, game.scale) == ([4, 6, 8], (1, 1), 1)
    assert worths(game, (0, 0), (1, 0), (2, 0), (0, 1), (1, 1)) == [
        [[6, 6, 6], [6, 6, 6]],
        [[7, 10, 13], [7, 10, 13]],
        [[7, 10, 14], [7, 10, 14]],
        [[6, 6, 6], [6, 10, 13]],
        [[7, 10, 13], [7, 10, 13]],
    ]


def test_stocks_are_parted_where_they_are_too_many_at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    whole = worths(osk_worth(), (0, 0), (1, 0), (1, 1))
    monkeypatch.setattr(module, "MOST_CELLS", 1)
    assert worths(osk_worth(), (0, 0), (1, 0), (1, 1)) == whole


def test_a_game_too_large_is_refused() -> None:
    play = play_of(osk_terms(), osk(), most=owned(osk()), points=chances({MOST_POINTS + 1: 1}))
    found = game_worth(play, lot=LOT)
    assert isinstance(found, NotComputed)
    assert "points" in found.reason


def test_exchanges_are_refused_while_the_must_layer_lacks_figures() -> None:
    entries = dict(osk().supporting_troops)
    swap = Replacement(of="staff", number=1, with_="tank")
    entries["guns"] = replace(entries["guns"], replaces=swap)
    most = replace(owned(osk()), must_lacks=1)
    found = game_worth(play_of(osk_terms(), osk(), most=most, entries=entries), lot=LOT)
    assert isinstance(found, NotComputed)
    assert "takes stands" in found.reason or "take stands" in found.reason


def test_a_game_in_which_nothing_is_legal_has_no_worths() -> None:
    terms = osk_terms()
    guns = replace(terms.offers["guns"], least=5)
    terms = replace(terms, offers={**terms.offers, "guns": guns})
    assert game_worth(play_of(terms, osk(), most=owned(osk())), lot=LOT) is None


def test_what_can_be_taken_in_too_many_ways_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("paradestate.chance.force.allowed.MOST_LISTED", 2)
    found = game_worth(play_of(osk_terms(), osk(), most=osk_bought((3, 3))[0]), lot=LOT)
    assert isinstance(found, NotComputed)
    assert found.reason == "'tanks' is rolled for and can be taken in more than 2 ways"


SHARED = """\
figures: {foot: {}, staff: {}}
stands: {one: {base: none, figures: {foot: 1}}, two: {base: none, figures: {foot: 2}}}
formations: {top: {parts: {one: 1}}}
stock: {foot: {painted: 3}}
games: {evening: {allowance: 6, posture: attack}}
supporting troops:
  scouts: {cost: 2, each: {one: 1}, limit: {most: 3}}
  guards: {cost: 3, each: {two: 1}, limit: {most: 2}}
worths: {scouts: {1: 2, 2: 4, 3: 5}, guards: {1: 4, 2: 8}}
"""


def test_figures_that_several_entries_want_bind_them_together() -> None:
    force = force_from(SHARED)
    terms = osk_terms(force)
    depots = [owned(force).with_figures({"foot": more}) for more in range(4)]
    play = play_of(terms, force, most=depots[-1], asked="scouts guards")
    game = game_worth(play, lot=LOT)
    assert isinstance(game, GameWorth)
    values = Expectation([game]).values([(each,) for each in depots])
    assert values == [Fraction(each) for each in (4, 6, 8, 8)]
    (key,) = {game.ground.key(each) for each in depots[2:3]}
    assert game.ground.reach(key).ties


def test_ties_that_no_force_can_hold_leave_nothing() -> None:
    force = force_from(SHARED)
    terms = osk_terms(force)
    must = replace(terms.offers["guards"], least=1)
    scouts = replace(terms.offers["scouts"], least=1)
    terms = replace(terms, offers={"scouts": scouts, "guards": must})
    depots = [owned(force).with_figures({"foot": more}) for more in (0, 1)]
    game = worth_of(play_of(terms, force, most=depots[1], asked=""))
    assert Expectation([game]).values([(each,) for each in depots]) == [Fraction(0), Fraction(6)]
    now, then = (game.ground.key(each) for each in depots)
    (row,) = outcome_rows(game, now=now, then=then)
    assert (row.now, row.then is None) == (None, False)


def test_ties_with_which_too_much_would_have_to_be_told_apart_are_refused(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    force = force_from(SHARED)
    depots = [owned(force).with_figures({"foot": more}) for more in (0, 9)]
    game = game_worth(play_of(osk_terms(force), force, most=depots[1], asked=""), lot=LOT)
    assert isinstance(game, GameWorth)
    monkeypatch.setattr("paradestate.chance.force.diagram.MOST_NODES", 1)
    refusal = Expectation([game]).values([(depots[0],)])
    assert isinstance(refusal, NotComputed)
    assert "cases would have to be told apart" in refusal.reason
    assert game.weighing_of(game.ground.key(depots[0])) is None


@settings(max_examples=30, deadline=None)
@given(drawn_plays())
def test_the_mean_is_that_of_every_force_in_every_outcome(
    drawn: tuple[Terms, Force, dict[str, Entry]],
) -> None:
    terms, force, entries = drawn
    play = play_of(
        terms,
        force,
        most=owned(force).with_figures({"foot": 3, "gunner": 2}),
        entries=entries,
        points=POINTS,
        asked="",
    )
    game = game_worth(play, lot=ALL)
    if isinstance(game, NotComputed):
        return
    drawing = play.drawn()
    assert isinstance(drawing, Diagram)
    rolls = {row.entry: max(each.purchases for each in row.plain) for row in drawing.rows}
    rolls = dict.fromkeys(terms.offers, 0) | rolls
    plain = plain_worth(terms, force, entries=entries, points=POINTS, rolls=rolls)
    assert Expectation([game]).values([(owned(force),)]) == [plain]
