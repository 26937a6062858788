"""The opponent's sheet."""

from dataclasses import replace

import pytest

from paradestate.core.finding import Level
from paradestate.core.game import Purchase
from paradestate.core.paper.ground import NO_RESERVE, Ground
from paradestate.core.paper.opponents_sheet import (
    OpponentsSheet,
    may_be_found_out,
    opponents_sheet,
    private_names,
)
from paradestate.core.strength import strength
from paradestate.core.support.entry import Position
from paradestate.text.folder import read_folder
from tests.core.paper.games import secrets
from tests.core.paper.grounds import battalion, ground_of
from tests.forces import EXAMPLES, force_from


def shown(ground: Ground) -> OpponentsSheet:
    draft = opponents_sheet(ground)
    assert draft.shown is not None
    return draft.shown


def numbers(ground: Ground) -> dict[str, int]:
    return {each.called: each.number for each in shown(ground).stands}


def test_only_what_stands_on_the_table_for_all_to_see_is_on_it() -> None:
    """Two companies of two platoons of two, and the guns: nothing late, hidden, or kept back."""
    assert numbers(secrets()) == {"Team": 8, "Gun": 2}


def test_no_word_that_begins_with_zz_is_in_the_record() -> None:
    assert "zz" not in repr(shown(secrets()))


def test_the_marks_are_those_of_stands_that_are_seen_without_a_units_name() -> None:
    colours = shown(secrets()).colours
    assert [[mark.mark.bars for mark in each.marks] for each in colours] == [[1, 2], [1, 2]]
    assert [each.marks[0].colour for each in colours] == ["red", "blue"]


def with_stock(**numbers: int) -> Ground:
    ground = secrets()
    stock = {kind: {"painted": number} for kind, number in numbers.items()}
    force = replace(ground.force, stock=stock)
    return replace(ground, force=force, strength=strength(force, ground.made))


def test_substitutions_are_marked() -> None:
    team, gun = shown(with_stock(sergeant=3, rifleman=1)).stands
    assert team.stand_ins == ("3 sergeants for riflemen",)
    assert gun.stand_ins == ()
    assert shown(with_stock(sergeant=1)).stands[0].stand_ins == ("1 sergeant for rifleman",)
    assert shown(replace(with_stock(sergeant=3), strength=None)).stands[0].stand_ins == ()


def test_substitutions_on_stands_that_come_later_are_not_told() -> None:
    assert shown(with_stock(sergeant=3, rifleman=40)).stands[0].stand_ins == ()


def test_the_reserve_dummies_and_unseen_troops_make_no_difference_to_it() -> None:
    """So that nobody can read them from a gap."""
    ground = secrets()
    without = replace(
        ground,
        dummies=7,
        reserve=replace(ground.reserve, formations={}),
        plan=tuple(each for each in ground.plan if each.entry not in {"zzBattery", "zzDigging"}),
    )
    assert shown(without) == shown(ground)


def test_what_is_kept_back_is_seen_once_it_isnt() -> None:
    assert numbers(replace(secrets(), reserve=NO_RESERVE))["zzKeptCalled"] == 1


def test_what_was_found_out_is_on_it() -> None:
    assert numbers(replace(secrets(), revealed=("zzPost",)))["zzPostCalled"] == 2
    guns = replace(secrets(), revealed=("zzEither",))
    assert numbers(guns)["Gun"] == 3
    assert "zzEither" not in private_names(guns)


@pytest.mark.parametrize(
    ("name", "what"),
    [
        ("zzPlatoon", "reserve: 1 zzPlatoon"),
        ("zzReserves", "reserve: 1 x zzReserves"),
        ("zzBattery", "off the table: zzBattery"),
        ("zzMine", "zzMine"),
    ],
)
def test_what_nobody_may_find_out_on_paper_stops_it(name: str, what: str) -> None:
    """Row 80."""
    draft = opponents_sheet(replace(secrets(), revealed=(name,)))
    assert draft.shown is None
    (found,) = draft.findings
    assert (found.level, found.code) == (Level.STOP, "private-on-public-sheet")
    assert found.message == f"The opponent's sheet would show '{what}'."


def test_an_unknown_name_stops_it_too_and_a_visible_one_is_no_matter() -> None:
    (found,) = opponents_sheet(replace(secrets(), revealed=("zzMines",))).findings
    assert (found.code, found.hint) == ("unknown-choice", "Did you mean 'zzMine'?")
    assert numbers(replace(secrets(), revealed=("section", "zzGuns"))) == numbers(secrets())


NAMESAKE = """\
stands:
  section: {base: 40 x 20 mm, called: Mine field}
  mine field: {base: 20 mm disc, seen by opponent: no}
formations: {top: {parts: {section: 2, mine field: 1}}}
"""


def test_what_is_seen_may_not_bear_the_name_of_what_is_hidden() -> None:
    draft = opponents_sheet(ground_of(force_from(NAMESAKE)))
    assert draft.shown is None
    (found,) = draft.findings
    assert found.message == "The opponent's sheet would show 'mine field'."
    assert found.place.path[:2] == ("stands", "mine field")


def test_private_names_are_counted_and_none_of_them_is_on_it() -> None:
    (tick,) = opponents_sheet(secrets()).ticks
    assert tick.holds
    assert tick.words == "4 private names, none of them on the opponent's sheet"
    assert private_names(secrets()) == {"zzMine", "zzPost", "zzBattery", "zzEither"}


def test_the_battalion_without_a_game_shows_its_stands_and_the_table() -> None:
    made = shown(battalion())
    assert made.game is None
    assert made.table is not None
    assert made.table.size == "1800 x 1200 mm"
    assert numbers(battalion())["Section"] == 24
    assert len(made.colours) == 4


def test_unknown_troops_of_a_plan_are_passed_over_and_what_is_unseen_in_it_stays_so() -> None:
    ground = replace(secrets(), plan=(Purchase(entry="nobody", number=2),))
    assert numbers(ground) == {"Team": 8}
    assert shown(replace(ground, force=replace(ground.force, table=None))).table is None


def test_stands_by_fixed_ratio_are_seen() -> None:
    ground = ground_of(read_folder(EXAMPLES / "vellmark").force)
    assert sum(numbers(ground).values()) == 25


def test_what_may_be_found_out_is_what_changes_the_sheet_once_it_is_named() -> None:
    """Not what is never seen, nor what is off the table, nor what is seen from the start."""
    assert may_be_found_out(secrets().force) == ("zzPost", "zzEither")
    hidden = secrets().force.supporting_troops["zzReserves"]
    entries = {
        "bring": replace(hidden, each={"zzPost": 1}),
        "grant": replace(hidden, grants={"zzPost": 1}),
        "far": replace(hidden, each={"zzPost": 1}, place=Position.OFF_TABLE),
        "plain": hidden,
    }
    force = replace(secrets().force, supporting_troops=entries)
    assert may_be_found_out(force) == ("zzPost", "bring", "grant")
