"""Moves by hand: what changes, what closes up, and the rule that forbids one."""

from fractions import Fraction

import pytest

from paradestate.core.tray.ground import Ground
from paradestate.core.tray.laid import laid
from paradestate.core.tray.moving import (
    Bar,
    Barred,
    Swap,
    Transfer,
    Trays,
    home,
    moved,
    names_in,
    taken_in,
)
from paradestate.core.tray.plan import laid_out
from paradestate.core.tray.thing import Case, Thing
from tests.tray_things import alike, battalion, case, lies, squares_are_clear, thing


def start(cases: list[Case], things: list[Thing]) -> tuple[Ground, Trays]:
    """The trays as they are laid out."""
    plan = laid_out(cases, things)
    held = {tray.case.name: tray for tray in plan.trays}
    trays = {each.name: held.get(each.name, laid(each, ())) for each in cases}
    return Ground(cases=tuple(cases), things=tuple(things)), trays


def names(trays: Trays, tray: str) -> list[list[str]]:
    return [[each.thing.name for each in row.lying] for row in trays[tray].rows]


CASES = [case("case 1"), case("case 2")]


def after(ground: Ground, trays: Trays, *, move: Swap | Transfer) -> Trays:
    found = moved(ground, trays, move=move)
    assert not isinstance(found, Barred), found
    assert squares_are_clear(list(found.values()))
    return found


def test_two_in_a_row_change_places_and_the_row_closes_up() -> None:
    ground, trays = start(CASES, battalion())
    now = after(ground, trays, move=Swap(one="command", other="truck 1"))
    assert names(now, "case 1")[4][0] == "truck 1"
    row = now["case 1"].rows[4]
    assert [each.across for each in row.lying][:2] == [0, 17]
    assert after(ground, now, move=Swap(one="command", other="truck 1")) == trays


def test_alike_ones_change_places_in_lines_of_discs_and_others_may_not() -> None:
    ground, trays = start(CASES, battalion())
    one, other = "No 1 / marker 0", "No 4 / marker 1"
    now = after(ground, trays, move=Swap(one=one, other=other))
    assert names(now, "case 1")[5][0] == other
    barred = moved(ground, trays, move=Swap(one="observer 0", other=one))
    assert isinstance(barred, Barred)
    assert (barred.bar, barred.row, barred.thing.name) == (Bar.NOT_ALIKE, 6, "observer 0")
    assert isinstance(moved(ground, trays, move=Swap(one="command", other=one)), dict)


def test_a_row_and_a_tray_must_be_large_enough() -> None:
    things = [thing("long", 60, 20), *alike(3, 40, 20), thing("deep", 20, 50)]
    tray = laid(
        case(inside=(140, 80)),
        [
            lies(things[0], across=0, deep=0),
            lies(things[1], across=0, deep=22),
            lies(things[2], across=42, deep=22),
            lies(things[3], across=84, deep=22),
        ],
    )
    ground, trays = Ground(cases=(tray.case,), things=tuple(things)), {"case": tray}
    wide = moved(ground, trays, move=Swap(one="long", other="s1"))
    assert isinstance(wide, Barred)
    assert [wide.bar, wide.row, wide.needed] == [Bar.ROW_TOO_WIDE, 2, 144]
    both = {
        "case": laid(case(inside=(140, 60)), tray.lying),
        "2": laid(case("2"), [lies(things[4], across=0, deep=0)]),
    }
    two = Ground(cases=(both["case"].case, both["2"].case), things=tuple(things))
    deep = moved(two, both, move=Swap(one="deep", other="s1"))
    assert isinstance(deep, Barred)
    assert [deep.bar, deep.needed, deep.thing.name] == [Bar.TRAY_TOO_SHALLOW, 72, "deep"]


def test_what_is_too_high_goes_neither_by_a_swap_nor_by_itself() -> None:
    flag = thing("flag", 40, 20, height="44")
    low, high = case("low", height=38), case("high")
    trays = {
        "low": laid(low, [lies(thing("s", 40, 20), across=0, deep=0)]),
        "high": laid(high, [lies(flag, across=0, deep=0)]),
    }
    ground = Ground(cases=(low, high), things=(flag, thing("s", 40, 20)))
    for move in (Swap(one="flag", other="s"), Transfer(thing="flag", to="low")):
        barred = moved(ground, trays, move=move)
        assert isinstance(barred, Barred)
        assert (barred.bar, barred.thing, barred.case) == (Bar.TOO_HIGH, flag, low)
    assert taken_in(ground, trays["low"], thing=flag) is None


def test_a_stand_goes_to_the_end_of_a_row_behind_all_or_anywhere() -> None:
    small, things = case("small", inside=(84, 42)), alike(4, 40, 20)
    ground, trays = start([case("case 1"), small], things)
    now = trays
    for at in range(4):
        now = after(ground, now, move=Transfer(thing=f"s{at}", to="small"))
        assert home(now, f"s{at}") == "small"
    assert names(now, "small") == [["s0", "s1"], ["s2", "s3"]]
    assert names(now, "case 1") == []
    assert after(ground, now, move=Transfer(thing="s0", to="small")) == now


def test_a_free_place_between_others_is_found_and_none_is_said_to_be_none() -> None:
    things = [thing("pillar", 20, 60), thing("disc", 20), thing("small", 20, 20), thing("x", 90, 2)]
    tight = laid(
        case("tight", inside=(64, 62), gap=2),
        [lies(things[0], across=0, deep=0), lies(things[1], across=Fraction(70, 3), deep=0)],
    )
    other = laid(
        case("other"), [lies(each, across=0, deep=22 * at) for at, each in enumerate(things[2:])]
    )
    ground = Ground(cases=(tight.case, other.case), things=tuple(things))
    trays = {"tight": tight, "other": other}
    now = after(ground, trays, move=Transfer(thing="small", to="tight"))
    assert home(now, "small") == "tight"
    barred = moved(ground, trays, move=Transfer(thing="x", to="tight"))
    assert isinstance(barred, Barred)
    assert barred.bar is Bar.NO_ROOM


def test_two_trays_change_a_stand_and_each_closes_up() -> None:
    cases = [case("1", inside=(84, 20)), case("2", inside=(84, 20))]
    ground, trays = start(cases, alike(4, 40, 20))
    now = after(ground, trays, move=Swap(one="s0", other="s3"))
    assert (names(now, "1"), names(now, "2")) == ([["s3", "s1"]], [["s2", "s0"]])


def test_rows_that_are_not_straight_move_as_one() -> None:
    things = [*alike(2, 40, 20), thing("d", 40), thing("e", 40)]
    tray = laid(
        case(),
        [
            lies(things[0], across=0, deep=0),
            lies(things[2], across=0, deep=22),
            lies(things[3], across=30, deep=52),
        ],
    )
    other = laid(case("2"), [lies(things[1], across=0, deep=0)])
    ground = Ground(cases=(tray.case, other.case), things=tuple(things))
    now = after(ground, {"case": tray, "2": other}, move=Transfer(thing="s0", to="2"))
    assert [[each.across, each.deep] for each in now["case"].lying] == [[0, 0], [30, 30]]


def test_a_thing_that_lies_nowhere_has_no_home() -> None:
    ground, trays = start(CASES, battalion())
    assert ground.things
    with pytest.raises(KeyError):
        home(trays, "nobody")
    assert names_in(Swap(one="a", other="b")) == ("a", "b")
    assert names_in(Transfer(thing="a", to="b")) == ("a",)
