"""Whether all booked games can be played."""

from pathlib import Path

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.journeys.club.book import Bookings, bookings
from tests.journeys.clubs import TODAY, with_club
from tests.journeys.logging_to import logged

ON = "hours: 2026-12-03 20:00-22:00"


@pytest.fixture
def shared(club: Path) -> Path:
    """The guard of a collection whose riflemen the watch has too."""
    logged(club, EntryKind.RECEIVED, figures={"rifleman": 3}, to_stage="based")
    return club / "guard"


def booked(folder: Path, text: str) -> Bookings:
    return bookings(with_club(folder, f"club: {text}\n"), today=TODAY)


def codes(answer: Bookings) -> list[str]:
    return [
        found.code for found in answer.findings if found.code not in ("unused", "stage-unknown")
    ]


def test_what_all_forces_of_the_collection_hold_is_given_out(shared: Path) -> None:
    # Three loose riflemen, and four on a section of the watch.
    answer = booked(shared, f"{{bookings: {{a: {{{ON}, needs: {{rifleman: 8}}}}}}}}")
    (only,) = answer.spells
    assert (only.spell.sound, only.spell.short) == ({"rifleman": 7}, {"rifleman": 1})


def test_stands_and_a_game_of_another_force_are_worked_out(shared: Path) -> None:
    answer = booked(
        shared,
        f"{{bookings: {{a: {{{ON}, stands: {{boat: 1}}, force: watch}}, "
        f"b: {{{ON}, force: guard}}}}}}",
    )
    assert answer.needs["a"].figures == {"boat": 1, "rifleman": 8}
    assert answer.needs["a"].stands == {"boat": 1, "rifle section": 2}
    assert answer.needs["b"].figures == {"boat": 1, "rifleman": 8}
    (only,) = answer.spells
    assert only.spell.short == {"boat": 2, "rifleman": 9}
    assert answer.uncounted == ()


def test_a_game_or_force_that_nobody_knows_is_said_and_in_no_spell(shared: Path) -> None:
    answer = booked(
        shared,
        f"{{bookings: {{a: {{{ON}, force: old}}, b: {{{ON}, game: attack}}, "
        f"c: {{{ON}, needs: {{rifleman: 1}}}}}}}}",
    )
    assert answer.uncounted == ("a", "b")
    assert [each.spell.games for each in answer.spells] == [("c",)]
    left_out = [found for found in answer.findings if found.code == "booking-not-counted"]
    assert [found.message for found in left_out] == [
        "a: no force of the collection is called 'old'; there is guard and watch.",
        "b: what it needs can't be counted. No game is called 'attack'.",
    ]
    assert left_out[0].place.path == ("club", "bookings", "a", "force")


def test_a_late_box_is_away_and_boxes_too_full_are_said(shared: Path) -> None:
    answer = booked(
        shared,
        f"{{boxes: {{box 3: {{counted: yes, holds: {{rifleman: 20}}}}}}, bookings: {{a: {{{ON}, "
        "needs: {rifleman: 2}}}, "
        "loans: {box 3: {to: steward, since: 2026-11-01, until: 2026-11-20}}}",
    )
    assert codes(answer) == ["loan-late", "boxes-hold-more", "booked-twice"]
    (only,) = answer.spells
    assert (only.spell.away, only.spell.short) == (("box 3",), {"rifleman": 2})
    assert [each.box for each in answer.late] == ["box 3"]
