"""Boxes and bookings as sentences, and what is short."""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import replace

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.club.booking import Booking, Box, Club, Lent, clock
from paradestate.core.club.enough import BackInTime, Loan, Move, Remedy, Sharing, Spell
from paradestate.core.finding import Finding, Level
from paradestate.core.outline import decimal_text
from paradestate.core.place import KeyPath, Place
from paradestate.core.sentence.wording import (
    by_hand_words,
    capital,
    counted,
    day_words,
    listed,
)

NO_REMEDY = (
    "No single change was found that lets all be played: move or drop more than one, or borrow."
)


def club_sentences(club: Club) -> Iterator[tuple[KeyPath, str]]:
    """What the owner wrote, with where it stands in the section."""
    for box in club.boxes.values():
        yield ("boxes", box.name), box_sentence(box)
    for booking in club.bookings.values():
        yield ("bookings", booking.name), booking_sentence(booking)
    for lent in club.loans.values():
        yield ("loans", lent.box), lent_sentence(lent)
    if club.by_hand:
        yield (), f"The club.{by_hand_words(club.by_hand)}"


def box_sentence(box: Box) -> str:
    """Such as: box 9 may be borrowed from Ann: 6 light trucks."""
    keeper = f" from {box.keeper}" if box.keeper else ""
    own = f", one of ours{f', is kept by {box.keeper}' if box.keeper else ''}"
    begins = f"{box.name}{own}" if box.is_counted else f"{box.name} may be borrowed{keeper}"
    later = "".join(
        f" From {day_words(day)} on {box.handed_over[day]} keeps it."
        for day in sorted(box.handed_over)
    )
    insured = "" if box.insured_for is None else f" Insured for {decimal_text(box.insured_for)}."
    return f"{begins}: {counted(box.holds)}.{later}{insured}"


def booking_sentence(booking: Booking) -> str:
    """Such as: river game, 3 December 2026, 20:00-22:00: 8 light trucks."""
    hours = booking.hours
    when = f"{day_words(hours.on)}, {clock(hours.start)}-{clock(hours.end)}"
    borrows = f", with {listed(booking.borrows)}" if booking.borrows else ""
    whom = f", for {booking.whom}" if booking.whom else ""
    return (
        f"{booking.name}, {when}{whom}: {needs_words(booking)}{borrows}."
        f"{by_hand_words(booking.by_hand)}"
    )


def needs_words(booking: Booking) -> str:
    """Such as: 8 light trucks, 3 rifle sections and all of whole-day attack of marenz."""
    of = f" of {booking.force}" if booking.force else ""
    whole = [f"all of {booking.game}{of}" if booking.game else f"all{of}"]
    said = [counted(booking.needs), counted(booking.stands)]
    said += whole if booking.game or booking.force else []
    return listed([each for each in said if each]) or "nothing of ours"


def lent_sentence(lent: Lent) -> str:
    """Such as: box 3 is out with borrower 7f3k2, 20 November 2026 to 10 December 2026."""
    if lent.until is None:
        return (
            f"{lent.box} is out with {lent.to} since {day_words(lent.since)}; nobody said until "
            "when."
        )
    return f"{lent.box} is out with {lent.to}, {day_words(lent.since)} to {day_words(lent.until)}."


def where_words(box: Box, lent: Lent | None, *, today: datetime.date) -> str:
    """Where a box is today: `here`, `with its keeper`, or `out with Ann since 2 January 2026`."""
    home = "here" if box.is_counted else "with its keeper"
    if lent is None:
        return home
    known = None if lent.is_backwards else lent.until
    until = f" until {day_words(known)}" if known else ""
    if lent.since > today:
        return f"{home}; goes out to {lent.to} on {day_words(lent.since)}{until}"
    late = ", late" if lent.is_late(today) else ""
    return f"out with {lent.to} since {day_words(lent.since)}{until}{late}"


def hours_short(spell: Spell) -> str:
    """Such as: Light truck: 16 booked, 12 sound, 4 short, 20:00-22:00."""
    when = f"{clock(spell.hours.start)}-{clock(spell.hours.end)}"
    return "; ".join(
        f"{capital(kind)}: {spell.booked[kind]} booked, {spell.sound[kind]} sound, "
        f"{number} short, {when}"
        for kind, number in spell.short.items()
    )


def remedy_words(remedy: Remedy) -> str:
    """Such as: moving river game to 22:00-24:00; borrowing box 9 from Ann."""
    match remedy:
        case Move(booking=booking, hours=hours):
            return f"moving {booking} to {clock(hours.start)}-{clock(hours.end)}"
        case Loan(box=box):
            return f"borrowing {box.name}{f' from {box.keeper}' if box.keeper else ''}"
        case Sharing(box=box):
            return f"taking out of {box.name} only what is needed"
        case BackInTime(lent=lent):
            return f"having {lent.box} back from {lent.to} by then"


def kept_words(spell: Spell) -> str:
    """Such as: box 3 is out whole, and 4 light trucks of it aren't needed."""
    return "; ".join(
        f"{box} is out whole, and {counted(over)} of it {_are(over)} needed"
        for box, over in spell.kept.items()
    )


def _are(numbers: Mapping[str, int]) -> str:
    return "isn't" if sum(numbers.values()) == 1 else "aren't"


def booked_twice(
    spell: Spell, remedies: tuple[Remedy, ...], *, place: Place = CHOSEN_HERE
) -> Finding:
    """The warning where not all games of a spell can be played, with the ways out."""
    ways = [remedy_words(each) for each in remedies]
    hint = f"{capital(listed(ways, joint='or'))} would do it." if ways else NO_REMEDY
    return Finding(
        level=Level.WARN,
        code="booked-twice",
        message=f"{hours_short(spell)} on {day_words(spell.hours.on)}.{_kept_sentence(spell)}",
        effect=f"Not all can be played as booked: {listed(spell.games)}.",
        hint=hint,
        place=place,
    )


def _kept_sentence(spell: Spell) -> str:
    """What boxes keep from others, where that is of a kind that is short."""
    kept = {
        box: over for box, over in spell.kept.items() if any(kind in spell.short for kind in over)
    }
    return f" {capital(kept_words(replace(spell, kept=kept)))}." if kept else ""
