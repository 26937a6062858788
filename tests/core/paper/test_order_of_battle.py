"""The order of battle on paper."""

from dataclasses import replace

from paradestate.core.game import Purchase
from paradestate.core.paper.order_of_battle import (
    marker_names,
    missions_of,
    number_of_dummies,
    troops_lines,
    unit_lines,
)
from paradestate.core.support.mission import Missions
from tests.core.paper.games import secrets
from tests.core.paper.grounds import battalion, small, with_plan


def test_the_battalions_units_stand_in_the_order_of_the_parade() -> None:
    lines = unit_lines(battalion())
    assert [line.name for line in lines[:3]] == [
        "Battalion",
        "No 1 Company",
        "No 1 Company, 1 Platoon",
    ]
    assert lines[1].stands == ("Company Command", "Light Mortar Section")
    assert len(lines) == 17
    assert sum(len(line.stands) for line in lines) == 37


def test_supporting_troops_say_what_they_put_down_and_to_whom_they_go() -> None:
    tanks, guns, fire = troops_lines(
        with_plan(("light tanks", 2), ("machine-gun platoon", 1), ("field battery", 3))
    )
    assert (tanks.name, tanks.stands) == ("2 x light tanks", ("1 Light Tank", "2 Light Tank"))
    assert (guns.host, guns.stands) == ("platoon", ("Machine-gun Team",))
    assert (fire.stands, fire.missions) == ((), 3)
    assert not tanks.missions
    assert not tanks.host


def test_an_entry_taken_twice_goes_on_counting_its_stands() -> None:
    first, second = troops_lines(with_plan(("armoured cars", 2), ("armoured cars", 2)))
    assert first.stands == ("1 Armoured Car", "2 Armoured Car")
    assert second.stands == ("3 Armoured Car", "4 Armoured Car")


def test_what_is_kept_back_comes_last() -> None:
    lines = troops_lines(secrets())
    assert [line.is_kept_back for line in lines] == [False] * 5 + [True]
    assert lines[-1].name == "1 x zzReserves"


def test_missions_are_those_from_off_the_table_or_with_a_roll() -> None:
    ground = battalion()
    battery = Purchase(entry="field battery", number=2)
    mortars = Purchase(entry="medium mortars", number=4)
    assert missions_of(ground, battery) == 2
    assert missions_of(ground, mortars) == 0
    assert missions_of(ground, Purchase(entry="nobody", number=1)) == 0
    entries = dict(ground.force.supporting_troops)
    entries["medium mortars"] = replace(entries["medium mortars"], missions=Missions())
    force = replace(ground.force, supporting_troops=entries)
    assert missions_of(replace(ground, force=force), mortars) == 4


def test_markers_are_those_that_are_raised_and_dummies_go_with_them() -> None:
    assert len(marker_names(battalion())) == 8
    assert marker_names(battalion())[0] == "No 1 Company, 1 Hidden-movement Marker"
    assert number_of_dummies(battalion()) == 8
    assert number_of_dummies(replace(battalion(), dummies=3)) == 3
    assert number_of_dummies(replace(small(), dummies=3)) == 0
