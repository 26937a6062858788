"""What a game says of the force before the first shot."""

from collections.abc import Mapping
from dataclasses import replace

import pytest

from paradestate.core.game import Purchase
from paradestate.core.play.board import Standing, Telling, board
from paradestate.core.play.event import Subject, Told
from paradestate.core.play.told_force import ToldForce, told_force
from paradestate.core.support.room import Fielded
from tests.core.play.test_arrangement import ALL

PLATOONS = ("No 4 Company / 1 Platoon", "No 4 Company / 2 Platoon")
GUNS = (Purchase(entry="anti-tank guns", number=3),)


def told(*said: tuple[str, str, str]) -> Mapping[Subject, Standing]:
    return board(
        Telling(id=str(place), told=Told(subject=Subject(aspect, name), value=value))
        for place, (aspect, name, value) in enumerate(said)
    )


def of(*said: tuple[str, str, str], fielded: Fielded = ALL) -> ToldForce:
    return told_force(told(*said), fielded)


def kept_back(*names: str, fielded: Fielded = ALL) -> dict[str, int]:
    return dict(of(*(("reserve", name, "yes") for name in names), fielded=fielded).reserve)


def test_where_nothing_is_told_it_is_what_was_bought() -> None:
    assert of() == ToldForce(plan=ALL.plan, reserve={}, arranged=(), findings=())


def test_fire_missions_are_as_many_as_were_told_to_be_there() -> None:
    twice = (
        Purchase(entry="field battery", number=2),
        Purchase(entry="light tanks", number=2),
        Purchase(entry="field battery", number=2),
    )
    fielded = replace(ALL, plan=twice)
    three = of(("missions taken", "field battery", "3"), fielded=fielded).plan
    assert three == (*twice[:2], replace(twice[2], number=1))
    assert of(("missions taken", "field battery", "0"), fielded=fielded).plan == twice[1:2]


def test_fire_missions_that_were_told_and_not_bought_are_there_too() -> None:
    nothing = replace(ALL, plan=())
    six = (Purchase(entry="field battery", number=6),)
    assert of(("missions taken", "field battery", "6"), fielded=nothing).plan == six


@pytest.mark.parametrize(
    "said",
    [("light tanks", "3"), ("No 1 Company", "3"), ("field battery", "many")],
)
def test_missions_of_what_has_none_change_nothing(said: tuple[str, str]) -> None:
    assert of(("missions taken", *said)).plan == ALL.plan


def test_parts_of_the_force_are_kept_back_by_their_kind() -> None:
    assert kept_back(*PLATOONS) == {"platoon": 2}
    assert kept_back(ALL.made.formation) == {ALL.made.bodies[0].formation: 1}


def test_an_entry_is_kept_back_with_all_that_was_taken_of_it() -> None:
    assert kept_back("machine-gun platoon") == {"machine-gun platoon": 2}


def test_a_section_is_kept_back_by_itself() -> None:
    assert kept_back("machine-gun platoon 2") == {"machine-gun platoon": 1}


def test_a_stand_keeps_back_the_one_taken_that_it_came_with() -> None:
    fielded = replace(ALL, plan=GUNS)
    two = ("anti-tank guns / 1 anti-tank gun team", "anti-tank guns / 2 anti-tank gun team")
    assert kept_back(*two, "anti-tank guns / 3 truck", fielded=fielded) == {"anti-tank guns": 2}


def test_a_stand_that_comes_free_keeps_back_one() -> None:
    fielded = replace(ALL, plan=(Purchase(entry="medium mortars", number=2),))
    assert kept_back("medium mortars / 1 observer", fielded=fielded) == {"medium mortars": 1}


def test_no_more_is_kept_back_than_was_taken_and_what_is_unknown_is_left_out() -> None:
    both = ("machine-gun platoon", "machine-gun platoon 1")
    assert kept_back(*both) == {"machine-gun platoon": 2}
    assert kept_back("nobody") == {}


def test_who_is_with_whom_is_said_in_sentences() -> None:
    said = of(
        ("attached to", "machine-gun platoon 1", PLATOONS[0]),
        ("loaded on", f"{PLATOONS[0]} / 1 Section", "lorry 1"),
        ("missions allotted", "No 1 Company", "2"),
        ("missions allotted", "No 2 Company", "a few"),
        ("reserve", PLATOONS[1], "yes"),
        ("reserve", PLATOONS[0], ""),
        ("out", PLATOONS[0], "yes"),
    )
    assert sorted(said.arranged) == [
        "Machine-gun platoon 1: attached to No 4 Company, 1 Platoon.",
        "No 1 Company: 2 fire missions allotted.",
        "No 4 Company, 1 Platoon, 1 Section: loaded on lorry 1.",
        "No 4 Company, 2 Platoon: in reserve.",
    ]


def test_what_two_devices_told_differently_is_a_warning() -> None:
    standing = told(
        ("reserve", PLATOONS[0], "yes"),
        ("reserve", PLATOONS[0], ""),
        ("out", PLATOONS[0], "yes"),
        ("out", PLATOONS[0], "no"),
    )
    (doubt,) = told_force(standing, ALL).findings
    assert doubt.code == "told-differently"
    assert doubt.message.startswith("No 4 Company, 1 Platoon, reserve: two devices told it")
    assert doubt.effect == "It is printed as 'yes'."
