"""The section `club`: shared figures, booked by the hour."""

from paradestate.core.club.booking import Booking, Box, Club
from paradestate.text.codec import ListOf, NameOf, Text
from paradestate.text.format import value
from paradestate.text.format.counts import Counts
from paradestate.text.format.troops import FIGURES
from paradestate.text.hours import read_hours
from paradestate.text.record import Named, record, word

BOXES = "boxes"
HOURS = Text(
    parse=read_hours,
    show=str,
    described={"type": "string", "examples": ["2026-12-03 20:00-22:00"]},
)
_BOX = record(
    Box,
    word("keeper", value.FREE, about="who has it; a role or a first name, no more"),
    word("holds", Counts(kind=FIGURES), required=True, about="what is lent whole"),
    by_hand=False,
)
_BOOKING = record(
    Booking,
    word("hours", HOURS, required=True, about="a day and two times: 2026-12-03 20:00-22:00"),
    word("needs", Counts(kind=FIGURES), required=True),
    word("borrows", ListOf(of=NameOf(kind=BOXES)), about="boxes that are borrowed for it"),
)
CLUB = record(
    Club,
    word("boxes", Named(entry=_BOX), about="boxes of others that may be borrowed"),
    word("bookings", Named(entry=_BOOKING), about="games that need figures for some hours"),
)
