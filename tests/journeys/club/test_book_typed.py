"""A booking from what was typed."""

from fractions import Fraction

from paradestate.core.club.booking import Booking, Box
from paradestate.journeys.club.book_typed import (
    TypedBooking,
    TypedBox,
    booking_of,
    box_of,
    hours_of,
)
from tests.core.club.bookings import hours

ALL = TypedBooking(
    name=" river game ",
    hours="2026-12-03 20:00-22:00",
    needs="truck=8, officer=0",
    stands='"rifle section"=3',
    game="attack",
    force="old",
    borrows=("box 3", "box 3"),
    whom="steward",
)


def test_all_that_is_typed_is_read() -> None:
    booking, slips = booking_of(ALL)
    assert slips == ()
    assert booking == Booking(
        name="river game",
        hours=hours(20, 22),
        needs={"truck": 8},
        stands={"rifle section": 3},
        game="attack",
        force="old",
        borrows=("box 3",),
        whom="steward",
    )


def test_what_is_left_out_is_empty_and_each_slip_is_said() -> None:
    booking, _ = booking_of(TypedBooking(name="a", hours="2026-12-03 20:00-22:00"))
    assert booking == Booking(name="a", hours=hours(20, 22))
    nothing, slips = booking_of(TypedBooking(name="a", hours="late", needs="8", stands="b=c"))
    assert nothing is None
    assert [each.code for each in slips] == ["not-hours", "not-names-and-numbers", "not-a-number"]
    assert hours_of("2026-12-03 20:00-22:00") == (hours(20, 22), ())


def test_a_box_that_is_typed_is_read_and_each_slip_is_said() -> None:
    typed = TypedBox(name=" box 3", holds="truck=6, officer=0", keeper="a", insured_for="12.50")
    assert box_of(typed) == (
        Box(name="box 3", keeper="a", holds={"truck": 6}, insured_for=Fraction(25, 2)),
        (),
    )
    assert box_of(TypedBox(name="a", holds="truck=1", is_counted=True)) == (
        Box(name="a", holds={"truck": 1}, is_counted=True),
        (),
    )
    nothing, slips = box_of(TypedBox(name="a", holds="six", insured_for="much"))
    assert (nothing, len(slips)) == (None, 2)
