"""Bookings, loans and keepers written into the folder itself."""

from dataclasses import replace
from pathlib import Path

import pytest

from paradestate.core.club.booking import Booking, Box, Lent
from paradestate.journeys.check import checked
from paradestate.journeys.club.book_change import (
    ClubWritten,
    add_booking,
    add_box,
    cancel_booking,
    hand_over_box,
    lend_box,
    move_booking,
    put_club_back,
    take_back,
)
from paradestate.journeys.rewriting import ChangedSinceError
from paradestate.text.former import former_versions
from tests.core.club.bookings import DAY, hours
from tests.journeys.clubs import CLUB, TODAY, club_of, pen, with_club

HILL = Booking(name="hill: game", hours=hours(18, 20), needs={"rifleman": 1}, borrows=("box 3",))
OUT = Lent(box="box 3", to="treasurer", since=TODAY, until=DAY)


@pytest.fixture
def folder(guard: Path) -> Path:
    return with_club(guard)


def codes(answer: ClubWritten) -> list[str]:
    assert answer.written is None
    return [
        found.code for found in answer.checked.findings if found.effect == "Nothing was written."
    ]


def test_a_booking_is_added_beside_what_the_owner_wrote(folder: Path) -> None:
    answer = add_booking(pen(folder), HILL)
    assert answer.written is not None
    assert club_of(folder) == CLUB + (
        "    'hill: game': {hours: '2026-12-03 18:00-20:00', needs: {rifleman: 1}, "
        "borrows: [box 3]}\n"
    )
    assert checked(folder, today=TODAY).force.club.bookings["hill: game"] == HILL
    assert answer.written.former.read_text(encoding="utf-8") == CLUB


def test_a_first_booking_begins_the_section_where_the_raising_is_written(guard: Path) -> None:
    before = (guard / "force.yaml").read_text(encoding="utf-8")
    assert add_booking(pen(guard), replace(HILL, borrows=())).written is not None
    after = (guard / "force.yaml").read_text(encoding="utf-8")
    assert after.startswith(before)
    assert list(checked(guard, today=TODAY).force.club.bookings) == ["hill: game"]


def test_a_booking_that_can_not_be_is_refused_with_nothing_written(folder: Path) -> None:
    assert codes(add_booking(pen(folder), replace(HILL, name="river"))) == ["booked-already"]
    unknown = replace(HILL, needs={"x": 1}, stands={"y": 1}, borrows=("z",))
    assert codes(add_booking(pen(folder), unknown)) == ["unknown-choice"] * 3
    assert codes(move_booking(pen(folder), "x", hours=hours(1, 2))) == ["unknown-choice"]
    assert codes(cancel_booking(pen(folder), "x")) == ["unknown-choice"]
    assert club_of(folder) == CLUB
    assert former_versions(folder / "club.yaml") == ()


def test_a_booking_is_moved_and_cancelled_and_its_comment_is_named(folder: Path) -> None:
    assert move_booking(pen(folder), "river", hours=hours(18, 20)).written is not None
    moved = CLUB.replace("2026-12-03 20:00-22:00", "'2026-12-03 18:00-20:00'")
    assert club_of(folder) == moved
    gone = cancel_booking(pen(folder), "river")
    assert gone.written is not None
    assert "green lid" in club_of(folder)
    assert checked(folder, today=TODAY).force.club.bookings == {}


def test_a_box_goes_out_and_comes_back(folder: Path) -> None:
    assert lend_box(pen(folder), OUT).written is not None
    lent = club_of(folder)
    assert lent.startswith(CLUB)
    assert checked(folder, today=TODAY).force.club.loans == {"box 3": OUT}
    assert codes(lend_box(pen(folder), OUT)) == ["box-out-already"]
    assert take_back(pen(folder), "box 3").written is not None
    assert checked(folder, today=TODAY).force.club.loans == {}
    assert "loans" not in club_of(folder)
    assert codes(take_back(pen(folder), "box 3")) == ["box-not-out"]
    assert codes(take_back(pen(folder), "box 4")) == ["unknown-choice"]


def test_a_loan_that_can_not_be_is_refused(folder: Path) -> None:
    assert codes(lend_box(pen(folder), replace(OUT, box="box 4"))) == ["unknown-choice"]
    assert codes(lend_box(pen(folder), replace(OUT, since=DAY, until=TODAY))) == [
        "loan-ends-before"
    ]


def test_a_box_is_handed_over_on_a_day(folder: Path) -> None:
    assert hand_over_box(pen(folder), "box 3", to="steward", day=DAY).written is not None
    box = checked(folder, today=TODAY).force.club.boxes["box 3"]
    assert (box.keeper_on(TODAY), box.keeper_on(DAY)) == ("secretary", "steward")
    assert "# green lid" in club_of(folder)
    assert codes(hand_over_box(pen(folder), "box 4", to="a", day=DAY)) == ["unknown-choice"]


def test_the_version_before_is_put_back_unless_more_was_written_since(folder: Path) -> None:
    made = add_booking(pen(folder), HILL).written
    assert made is not None
    back = put_club_back(pen(folder, later=1), made.former.name)
    assert back.written is not None
    assert club_of(folder) == CLUB
    with pytest.raises(ChangedSinceError):
        put_club_back(pen(folder, later=2), made.former.name)


def test_a_folder_with_a_stop_is_left_alone(folder: Path) -> None:
    with_club(folder, CLUB + "    late: {hours: soon}\n")
    assert add_booking(pen(folder), HILL).written is None
    assert take_back(pen(folder), "box 3").written is None
    assert former_versions(folder / "club.yaml") == ()


def test_a_box_is_written_down_under_a_name_that_is_free(folder: Path) -> None:
    four = Box(name="box 4", keeper="steward", holds={"boat": 1}, is_counted=True)
    assert add_box(pen(folder), four).written is not None
    assert checked(folder, today=TODAY).force.club.boxes["box 4"] == four
    assert "# green lid" in club_of(folder)
    assert codes(add_box(pen(folder), replace(four, holds={"x": 1}))) == [
        "box-known",
        "unknown-choice",
    ]
