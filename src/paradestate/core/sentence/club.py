"""Boxes and bookings as sentences, and what is short."""

from collections.abc import Iterator

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.club.booking import Booking, Box, Club, clock
from paradestate.core.club.enough import Move, Remedy, Spell
from paradestate.core.finding import Finding, Level
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
    if club.by_hand:
        yield (), f"The club.{by_hand_words(club.by_hand)}"


def box_sentence(box: Box) -> str:
    """Such as: box 9 may be borrowed from Ann: 6 light trucks."""
    keeper = f" from {box.keeper}" if box.keeper else ""
    return f"{box.name} may be borrowed{keeper}: {counted(box.holds)}."


def booking_sentence(booking: Booking) -> str:
    """Such as: river game, 3 December 2026, 20:00-22:00: 8 light trucks."""
    hours = booking.hours
    when = f"{day_words(hours.on)}, {clock(hours.start)}-{clock(hours.end)}"
    borrows = f", with {listed(booking.borrows)}" if booking.borrows else ""
    needs = counted(booking.needs) or "nothing of ours"
    return f"{booking.name}, {when}: {needs}{borrows}.{by_hand_words(booking.by_hand)}"


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
    if isinstance(remedy, Move):
        hours = remedy.hours
        return f"moving {remedy.booking} to {clock(hours.start)}-{clock(hours.end)}"
    keeper = f" from {remedy.box.keeper}" if remedy.box.keeper else ""
    return f"borrowing {remedy.box.name}{keeper}"


def booked_twice(
    spell: Spell, remedies: tuple[Remedy, ...], *, place: Place = CHOSEN_HERE
) -> Finding:
    """The warning where not all games of a spell can be played, with the ways out."""
    ways = [remedy_words(each) for each in remedies]
    hint = f"{capital(listed(ways, joint='or'))} would do it." if ways else NO_REMEDY
    return Finding(
        level=Level.WARN,
        code="booked-twice",
        message=f"{hours_short(spell)} on {day_words(spell.hours.on)}.",
        effect=f"Not all can be played as booked: {listed(spell.games)}.",
        hint=hint,
        place=place,
    )
