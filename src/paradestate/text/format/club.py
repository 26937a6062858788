"""The section `club`: shared figures, booked by the hour, and the boxes that go out whole."""

from paradestate.core.club.booking import Booking, Box, Club, Lent
from paradestate.text.codec import ListOf, MappingOf, NameOf, Text
from paradestate.text.date import read_single_day
from paradestate.text.format import value
from paradestate.text.format.counts import Counts
from paradestate.text.format.troops import FIGURES, STANDS
from paradestate.text.hours import read_hours
from paradestate.text.record import Named, record, word

BOXES = "boxes"
HOURS = Text(
    parse=read_hours,
    show=str,
    described={"type": "string", "examples": ["2026-12-03 20:00-22:00"]},
)
SINGLE_DAY = Text(
    parse=read_single_day,
    show=str,
    described={"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}$", "examples": ["2026-12-03"]},
)
BOX = record(
    Box,
    word("keeper", value.FREE, about="who has it; a role, a code or a first name, no more"),
    word("holds", Counts(kind=FIGURES), required=True, about="what is lent whole"),
    word(
        "counted",
        value.YES_NO,
        attribute="is_counted",
        about="whether what it holds is among what is owned",
    ),
    word(
        "handed over",
        MappingOf(key=SINGLE_DAY, value=value.NAME),
        about="day to who keeps it from then on",
    ),
    word("insured for", value.POSITIVE, about="in units of the force's currency"),
    by_hand=False,
)
BOOKING = record(
    Booking,
    word("hours", HOURS, required=True, about="a day and two times: 2026-12-03 20:00-22:00"),
    word("needs", Counts(kind=FIGURES), about="figures"),
    word("stands", Counts(kind=STANDS), about="whole stands, beside those figures"),
    word("game", value.NAME, about="a game of a force, of which all that must be there is needed"),
    word("force", value.NAME, about="another force of the collection, whose game that is"),
    word("borrows", ListOf(of=NameOf(kind=BOXES)), about="boxes that are borrowed for it"),
    word("for", value.NAME, attribute="whom", about="a role or a code, never a name"),
)
LENT = record(
    Lent,
    word("to", value.NAME, required=True, about="a role or a code, never a name"),
    word("since", SINGLE_DAY, required=True, about="the first day on which it is away"),
    word("until", SINGLE_DAY, about="the last day on which it is away"),
    by_hand=False,
)
CLUB = record(
    Club,
    word("boxes", Named(entry=BOX), about="boxes that may be borrowed whole"),
    word("bookings", Named(entry=BOOKING), about="games that need figures for some hours"),
    word(
        "loans",
        Named(entry=LENT, attribute="box", kind=BOXES),
        about="boxes that are out, and with whom",
    ),
)
