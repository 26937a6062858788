"""Notes by hand on papers."""

from dataclasses import replace

from paradestate.core.paper.by_hand_note import by_hand_notes
from paradestate.text.folder import read_folder
from tests.core.paper.games import secrets
from tests.core.paper.grounds import battalion, ground_of
from tests.forces import EXAMPLES, force_from


def test_every_note_of_what_is_raised_played_and_planned_is_there() -> None:
    found = {each.text: each.of for each in by_hand_notes(secrets())}
    assert found == {
        "zzForceByHand": "",
        "zzRaiseByHand": "what is raised",
        "zzReservesByHand": "reserves",
        "zzTableByHand": "table",
        "zzOpponentByHand": "opponent",
        "zzFormationByHand": "zzPlatoon",
        "zzStandByHand": "section",
        "zzGameByHand": "zzGame",
        "zzArrivalByHand": "arrival of zzReinforcement",
        "zzEntryByHand": "zzGuns",
        "zzDiggingByHand": "zzDigging",
        "zzLossByHand": "loss limit 1",
    }


def test_without_game_and_plan_only_the_forces_own_are_there() -> None:
    bare = replace(secrets(), game="", plan=())
    assert "zzGameByHand" not in {each.text for each in by_hand_notes(bare)}
    assert by_hand_notes(battalion()) == ()


def test_parts_grades_and_limits_have_notes_too() -> None:
    ground = ground_of(
        force_from(
            "stands: {section: {base: 40 x 20 mm}}\n"
            "formations: {top: {parts: [{of: section, number: 2, by hand: in line}]}}\n"
            "grades: {drill: {usual: fair, points: {fair: 0}, by hand: as agreed}}\n"
            "supporting troops: {gun: {cost: 1, group: guns}}\n"
            "limits: [{group: guns, most: 2, by hand: in daylight}]\n"
            "loss limits:\n"
            "  - {at: {1: shaken}, by hand: roll first}\n"
            "  - {of: top, at: {1: gone}, by hand: at once}\n"
        )
    )
    assert [(each.of, each.text) for each in by_hand_notes(ground)] == [
        ("drill", "as agreed"),
        ("group guns", "in daylight"),
        ("loss limit 1", "roll first"),
        ("loss limit top", "at once"),
        ("section of top", "in line"),
    ]


def test_stands_by_fixed_ratio_have_none() -> None:
    assert by_hand_notes(ground_of(read_folder(EXAMPLES / "vellmark").force)) == ()
