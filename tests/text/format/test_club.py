"""The section club."""

from paradestate.core.club.booking import Booking, Box, Club
from tests.core.club.bookings import hours
from tests.text.format.reading import codes, force


def test_every_word_of_a_club() -> None:
    made = force(
        "club: {boxes: {box 9: {keeper: Ann, holds: {officer: 6}}}, bookings: {river: "
        "{hours: 2026-12-03 20:00-22:00, needs: {officer: 8}, borrows: [box 9], by hand: b}}, "
        "by hand: a}"
    )
    assert made.club == Club(
        boxes={"box 9": Box(name="box 9", keeper="Ann", holds={"officer": 6})},
        bookings={
            "river": Booking(
                name="river",
                hours=hours(20, 22),
                needs={"officer": 8},
                borrows=("box 9",),
                by_hand="b",
            )
        },
        by_hand="a",
    )


def test_a_box_that_nobody_has_and_hours_that_are_none() -> None:
    booked = "club: {{bookings: {{a: {{hours: {}, needs: {{}}, borrows: [box 1]}}}}}}"
    assert codes(booked.format("2026-12-03 20:00-22:00")) == ["unknown-name"]
    assert codes("club: {bookings: {a: {hours: late, needs: {}}}}") == ["not-hours"]
    assert codes("club: []") == ["wrong-shape"]
