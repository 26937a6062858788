"""Which milestones a force has, in the owner's order."""

from fractions import Fraction

import pytest

from paradestate.core.finding import Level
from tests.core.work.works import MINUTES, WISHED, load_of, sound_load, stands_of

GAMES = """\
games:
  raid: {allowance: 8, posture: attack, weight: 3, numbers: {company: 2}, plan: [guns=2]}
  siege: {allowance: 9, posture: defence}
  sally: {allowance: 9, posture: attack, plan: [guns=1, spotters=1, wire=2, storm troops=1]}
supporting troops:
  guns: {cost: {1: 2, 2: 4}, each: {gun team: 1}, grants: {marker: 1}}
  spotters: {cost: 1, each: {command: 1}, place: off table}
  wire: {cost: {2: 1}, each: {marker: 1}}
  storm troops: {cost: 3, replaces: {of: section, number: 2, with: command}}
"""
COSTS = """\
games: {raid: {allowance: 1d6, posture: attack}, feast: {posture: attack}}
formation cost: {by: company, points: {2: 9, 3: 6, 4: 7}}
"""


def names(*texts: str, game: str | None = None) -> dict[str, Fraction]:
    load = sound_load(MINUTES, *texts, game=game)
    return {each.name: each.weight for each in load.milestones}


def test_the_smallest_legal_force_the_whole_and_the_wished_are_milestones() -> None:
    assert list(names()) == ["smallest legal force", "whole top"]
    load = sound_load(MINUTES, head=WISHED)
    assert [each.name for each in load.milestones] == [
        "smallest legal force",
        "whole top",
        "with the wished items",
    ]
    assert len(stands_of(load, "with the wished items")) == 1 + 3 * 5 + 1


def test_a_game_is_a_milestone_where_it_has_numbers_or_a_plan() -> None:
    """And so is what the owner calls playable; each with its own weight."""
    playable = MINUTES + "  playable: [{name: skirmish, numbers: {company: 4}, weight: 2}]\n"
    load = sound_load(playable, GAMES)
    found = {each.name: each.weight for each in load.milestones}
    assert found == {
        "smallest legal force": 1,
        "whole top": 1,
        "raid": 3,
        "sally": 1,
        "skirmish": 2,
    }
    assert len(stands_of(load, "skirmish")) == 1 + 4 * 4
    assert list(names(GAMES, game="raid")) == ["smallest legal force", "whole top", "raid"]


@pytest.mark.parametrize(
    ("playable", "texts", "told"),
    [
        ("[{name: a}, {name: b}, {name: A}]", (), ["2 milestones are called 'A'."]),
        ("[{name: Smallest legal force}]", (), ["2 milestones are called 'Smallest legal force'."]),
        ("[{name: whole top}]", (), ["2 milestones are called 'whole top'."]),
        ("[{name: raid}]", (GAMES,), ["2 milestones are called 'raid'."]),
        ("[{name: siege}]", (GAMES,), []),
        ("[{name: a}, {name: b}]", (GAMES,), []),
    ],
)
def test_milestones_of_one_name_could_not_be_told_apart(
    playable: str, texts: tuple[str, ...], told: list[str]
) -> None:
    """A game without numbers or a plan is no milestone, so its name is free."""
    load, findings = load_of(f"{MINUTES}  playable: {playable}\n", *texts)
    found = [each for each in findings if each.code == "milestone-twice"]
    assert [each.message for each in found] == told
    assert (load is None) is bool(told)
    assert all(each.place.path[:2] == ("bench", "playable") for each in found)


def test_the_plan_of_a_game_puts_stands_beside_the_force() -> None:
    load = sound_load(MINUTES, GAMES)
    beside = [name for name in stands_of(load, "raid") if name.startswith("Supporting")]
    assert beside == [
        "Supporting Troops / 1 Gun Team",
        "Supporting Troops / 2 Gun Team",
        "Supporting Troops / 1 Marker",
    ]
    assert load.works["Supporting Troops / 2 Gun Team"].minutes == 30
    assert load.works["Supporting Troops / 1 Marker"].is_finished


def test_what_is_off_the_table_wants_no_stand_and_what_is_replaced_none_either() -> None:
    load = sound_load(MINUTES, GAMES)
    found = stands_of(load, "sally")
    beside = [name for name in found if name.startswith("Supporting")]
    assert beside == [
        "Supporting Troops / 1 Gun Team",
        "Supporting Troops / 1 Marker",
        "Supporting Troops / 2 Marker",
        "Supporting Troops / 3 Marker",
        "Supporting Troops / 1 Command",
        "Supporting Troops / 2 Command",
    ]
    assert sum("Section" in name for name in found) == 6 - 2


def test_the_smallest_force_is_paid_by_the_greatest_allowance() -> None:
    """Two companies cost nine; three are the fewest that six points pay."""
    load = sound_load(MINUTES, COSTS)
    assert len(stands_of(load, "smallest legal force")) == 1 + 3 * 4


def test_where_no_allowance_pays_for_it_no_force_is_legal() -> None:
    load, (found,) = load_of(MINUTES, COSTS.replace("3: 6", "3: 16").replace("4: 7", "4: 17"))
    assert load is not None
    assert [each.name for each in load.milestones] == ["whole top"]
    assert (found.code, found.level) == ("smallest-over-allowance", Level.WARN)
    assert found.message == (
        "The formation costs 9 points at its smallest; no game allows for more than 6."
    )


def test_a_fixed_cost_over_every_allowance_leaves_nothing_to_try() -> None:
    _, (found,) = load_of(MINUTES, "games: {a: {allowance: 3, posture: x}}\nformation cost: 4\n")
    assert found.code == "smallest-over-allowance"
