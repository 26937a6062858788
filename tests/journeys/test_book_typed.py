"""A booking from what was typed."""

from paradestate.core.club.booking import Booking
from paradestate.journeys.book_typed import TypedBooking, booking_of, hours_of
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
