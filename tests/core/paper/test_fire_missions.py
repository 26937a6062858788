"""Tear-offs for fire missions."""

from paradestate.core.paper.fire_missions import FireMission, fire_missions
from paradestate.core.paper.ground import Ground
from tests.core.paper.games import secrets
from tests.core.paper.grounds import battalion, ground_of, with_plan
from tests.forces import force_from


def faces(ground: Ground) -> list[FireMission]:
    made = fire_missions(ground).shown
    assert made is not None
    return [piece.face for page in made.pages for piece in page.pieces]


def test_each_mission_that_is_bought_has_one() -> None:
    assert [
        (each.battery, each.number, each.of) for each in faces(with_plan(("field battery", 3)))
    ] == [
        ("Field battery", 1, 3),
        ("Field battery", 2, 3),
        ("Field battery", 3, 3),
    ]


def test_what_is_rolled_and_what_is_said_by_hand_stands_on_it() -> None:
    force = force_from(
        "stands: {gun: {base: 40 x 20 mm}}\nformations: {top: {parts: {gun: 1}}}\n"
        "supporting troops:\n"
        "  battery: {cost: 1, place: off table, by hand: not at night,\n"
        "    missions: {arrives: {roll: 1d6, on: 3-6}}}\n"
    )
    (face,) = faces(ground_of(force, plan=with_plan(("battery", 1)).plan))
    assert face.rolls == ("For each mission roll one 6-sided die: it arrives on 3 to 6",)
    assert face.by_hand == "not at night"


def test_those_of_a_plan_with_unknown_troops_are_printed_all_the_same() -> None:
    assert len(faces(secrets())) == 3


def test_without_missions_there_are_none() -> None:
    assert fire_missions(battalion()).shown is None
