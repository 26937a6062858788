"""What stocks let their owner field."""

from dataclasses import replace

from paradestate.chance.force.diagram import Diagram
from paradestate.chance.next.reach import most_wanted
from tests.chance.next.examples import (
    osk,
    osk_bought,
    osk_terms,
    osk_worth,
    owned,
    play_of,
    worth_of,
)
from tests.forces import force_from


def test_stocks_that_let_the_same_be_fielded_have_one_key() -> None:
    """At 8 points two guns at the most can be paid for."""
    ground = osk_worth().ground
    keys = [ground.key(osk_bought((guns, 0))[0]) for guns in range(4)]
    assert len(set(keys)) == 3
    assert keys[2] == keys[3]


def test_figures_let_takings_of_single_entries_be_fielded() -> None:
    ground = osk_worth().ground
    reach = ground.reach(ground.key(osk_bought((1, 0))[0]))
    assert {name: sorted(t.number for t in among) for name, among in reach.among.items()} == {
        "machine guns": [0, 1, 2],
        "guns": [0, 1],
        "tanks": [0],
    }
    assert reach.ties == {}


def test_an_entry_that_wants_several_kinds_is_held_by_each_of_them() -> None:
    force = osk()
    entries = dict(force.supporting_troops)
    entries["guns"] = replace(entries["guns"], each={"field gun": 1, "staff": 1})
    most = owned(force).with_figures({"field gun": 2, "officer": 2})
    game = play_of(osk_terms(), force, most=most, entries=entries)
    ground = worth_of(game).ground
    reach = ground.reach(ground.key(owned(force).with_figures({"field gun": 2, "officer": 1})))
    assert sorted(t.number for t in reach.among["guns"]) == [0, 1]


def test_the_most_that_may_be_wanted_counts_the_must_layer() -> None:
    drawn = play_of(osk_terms(), osk(), most=owned(osk())).drawn()
    assert isinstance(drawn, Diagram)
    wanted = most_wanted(drawn, osk().supporting_troops, owned=owned(osk()))
    assert wanted == {"officer": 1, "machine gun": 4, "field gun": 2, "tank": 1}


def test_finished_stands_serve_before_loose_figures() -> None:
    force = force_from(
        "figures: {gun: {}}\nstands: {gun: {base: none, figures: {gun: 1}}}\n"
        "formations: {top: {parts: {gun: 1}}}\n"
        "games: {evening: {allowance: 8, posture: attack}}\n"
        "supporting troops: {guns: {cost: 2, each: {gun: 1}, limit: {most: 4}}}\n"
    )
    depot = replace(owned(force), spare={"gun": 1})
    game = play_of(osk_terms(force), force, most=depot.with_figures({"gun": 3}), asked="guns")
    ground = worth_of(game).ground
    reach = ground.reach(ground.key(depot))
    assert max(t.number for t in reach.among["guns"]) == 1
