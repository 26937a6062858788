"""What is doubtful of bookings, loans and boxes: late, away, handed over while out, too much."""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.club.booking import Booking, Box, Club, Lent, clock
from paradestate.core.club.loan import at_once, handed_over_away, late, with_late_away, without_box
from paradestate.core.finding import Finding, Level
from paradestate.core.money import Currency, money_text
from paradestate.core.number import summed
from paradestate.core.outline import decimal_text
from paradestate.core.place import Places, nearest_place
from paradestate.core.sentence.wording import capital, counted, day_words, listed, several

SECTION = "club"
DIGITS_OF_A_NUMBER = 6
"""So many digits are taken for a telephone number; a code of a borrower has at most five."""


def club_doubts(club: Club, *, places: Places, today: datetime.date) -> Iterator[Finding]:
    """A warning for each loan, booking and handing over that can't be, or is doubtful."""
    yield from _contacts(club, places=places)
    for booking in club.bookings.values():
        if booking.is_of_nothing:
            yield _of_nothing(booking, places=places)
    for lent in club.loans.values():
        if lent.is_backwards:
            yield _backwards(lent, places=places)
    for lent in late(club, today):
        yield _late(lent, places=places, today=today)
    out = with_late_away(club, today)
    for booking, lent in without_box(out):
        yield _away(booking, lent, places=places)
    for name, one, other in at_once(club):
        if one.hours.on >= today:
            yield _at_once(name, one, other=other, places=places)
    for box, day, lent in handed_over_away(out):
        yield _handed_over(box, day, lent=lent, places=places)


def _contacts(club: Club, *, places: Places) -> Iterator[Finding]:
    """A warning for each keeper or borrower whose words hold more than a role, code or name."""
    said = (
        *((("boxes", box.name, "keeper"), box.keeper) for box in club.boxes.values()),
        *(
            (("boxes", box.name, "handed over", str(day)), whom)
            for box in club.boxes.values()
            for day, whom in box.handed_over.items()
        ),
        *((("loans", lent.box, "to"), lent.to) for lent in club.loans.values()),
        *((("bookings", each.name, "for"), each.whom) for each in club.bookings.values()),
    )
    for path, words in said:
        if "@" in words or sum(letter.isdigit() for letter in words) >= DIGITS_OF_A_NUMBER:
            yield Finding(
                level=Level.WARN,
                code="contact-in-files",
                message=f"'{words}' looks like somebody's telephone number or address.",
                effect="The files of a folder are copied, archived and shown.",
                hint="Write a role, or have `book` keep the name and number on this machine alone.",
                place=nearest_place(places, (SECTION, *path)),
            )


def _of_nothing(booking: Booking, *, places: Places) -> Finding:
    return Finding(
        level=Level.WARN,
        code="booking-of-nothing",
        message=f"{booking.name}: nothing is said of what it needs.",
        effect="It is counted as needing nothing, so that it can always be played.",
        hint="Say the figures that it needs, its stands, its game, or a box that it borrows.",
        place=nearest_place(places, (SECTION, "bookings", booking.name)),
    )


def _backwards(lent: Lent, *, places: Places) -> Finding:
    until = lent.until or lent.since
    return Finding(
        level=Level.WARN,
        code="loan-backwards",
        message=f"{lent.box} would be back from {lent.to} on {day_words(until)}, before it goes "
        f"out on {day_words(lent.since)}.",
        effect="It counts as away from the day on which it goes out, and nobody knows until when.",
        hint="One of the two days is a slip: write the right one.",
        place=nearest_place(places, (SECTION, "loans", lent.box, "until")),
    )


def boxes_too_full(club: Club, owned: Mapping[str, int], *, places: Places) -> Iterator[Finding]:
    """A warning for each kind of which boxes of our own hold more than is owned at all."""
    own = [box for box in club.boxes.values() if box.is_counted]
    for kind, number in summed(box.holds for box in own).items():
        there = owned.get(kind, 0)
        if number > there:
            last = [box.name for box in own if kind in box.holds][-1]
            yield Finding(
                level=Level.WARN,
                code="boxes-hold-more",
                message=f"{capital(kind)}: our boxes hold {number}, and {there} are owned.",
                effect="The boxes that stand first in the file are taken to be full.",
                hint="Count them, then log what was counted, or write down what the boxes hold.",
                place=nearest_place(places, (SECTION, "boxes", last, "holds", kind)),
            )


def not_counted(booking: Booking, *, why: str, places: Places) -> Finding:
    """The warning for a game whose needs nobody can work out."""
    word = "force" if booking.force else "game"
    return Finding(
        level=Level.WARN,
        code="booking-not-counted",
        message=f"{booking.name}: {why}",
        effect="What it needs isn't known, so that nothing is said of the hours in which it is "
        "played.",
        hint="Name a game and a force as they stand in the files, or say what it needs by kind.",
        place=nearest_place(places, (SECTION, "bookings", booking.name, word)),
    )


def insured_too_low(box: Box, value: int, *, currency: Currency, places: Places) -> Finding:
    """The warning for a box that would cost more to buy again than it is insured for.

    `value` is in minor units.
    """
    insured = decimal_text(box.insured_for or Fraction(0))
    return Finding(
        level=Level.WARN,
        code="insured-too-low",
        message=f"{box.name} is insured for {insured}; what it holds would cost "
        f"{money_text(value, currency)} to buy again.",
        effect="The insurance wouldn't replace it, and the work on it is in neither sum.",
        hint="Insure it for more, or write down what it holds.",
        place=nearest_place(places, (SECTION, "boxes", box.name, "insured for")),
    )


def name_of_several(codes: Sequence[str], *, effect: str) -> Finding:
    """The stop for a name that several people have, with the codes that tell them apart."""
    return Finding(
        level=Level.STOP,
        code="name-of-several",
        message=f"{len(codes)} people are called so on this machine: {listed(codes)}.",
        effect=effect,
        hint="Give the code of the one who is meant.",
        place=CHOSEN_HERE,
    )


def _late(lent: Lent, *, places: Places, today: datetime.date) -> Finding:
    until = lent.until or today
    return Finding(
        level=Level.WARN,
        code="loan-late",
        message=f"{lent.box} was to be back from {lent.to} by {day_words(until)}: it is "
        f"{several((today - until).days, 'day')} late.",
        effect="It counts as away, and is given out to nobody else.",
        hint=f"Ask {lent.to} for it; when it is here, write down that it is back.",
        place=nearest_place(places, (SECTION, "loans", lent.box, "until")),
    )


def _away(booking: Booking, lent: Lent, *, places: Places) -> Finding:
    until = f" until {day_words(lent.until)}" if lent.until else ""
    return Finding(
        level=Level.WARN,
        code="box-away",
        message=f"{booking.name} borrows {lent.box}, which is out with {lent.to}{until}.",
        effect="That game is counted without it.",
        hint="Have it back by then, borrow another, or book the game for who has it.",
        place=nearest_place(places, (SECTION, "bookings", booking.name, "borrows")),
    )


def _at_once(box: str, one: Booking, *, other: Booking, places: Places) -> Finding:
    start = max(one.hours.start, other.hours.start)
    end = min(one.hours.end, other.hours.end)
    return Finding(
        level=Level.WARN,
        code="box-at-once",
        message=f"{box} is borrowed by {one.name} and {other.name} at once, "
        f"{clock(start)}-{clock(end)} on {day_words(one.hours.on)}.",
        effect="They are taken to share what it holds, each having what the other doesn't need.",
        hint="Leave it if both are played at one place; else have one of them borrow another box.",
        place=nearest_place(places, (SECTION, "bookings", other.name, "borrows")),
    )


def _handed_over(box: Box, day: datetime.date, *, lent: Lent, places: Places) -> Finding:
    return Finding(
        level=Level.WARN,
        code="handed-over-away",
        message=f"{box.name} is handed over to {box.handed_over[day]} on {day_words(day)}, and is "
        f"out with {lent.to} then.",
        effect=f"Nobody can look into it on that day: {counted(box.holds)}.",
        hint="Hand it over after it is back, or have it back before.",
        place=nearest_place(places, (SECTION, "boxes", box.name, "handed over", str(day))),
    )
