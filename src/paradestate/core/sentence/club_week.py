"""What a week of a club comes to, in words: games, what is short, who stands in."""

import datetime
from collections.abc import Iterator, Sequence

from paradestate.core.club.booking import Booking, Hours, clock
from paradestate.core.club.enough import Loan, Move
from paradestate.core.club.week import KindSpell, Week
from paradestate.core.figure import StandIn
from paradestate.core.sentence.club import needs_words
from paradestate.core.sentence.wording import capital, listed, several


def times_words(hours: Hours) -> str:
    """Such as: 20:00-22:00."""
    return f"{clock(hours.start)}-{clock(hours.end)}"


def needed_words(booking: Booking) -> str:
    """Such as: 8 light trucks, with box 9."""
    borrows = f", with {listed(booking.borrows)}" if booking.borrows else ""
    return f"{needs_words(booking)}{borrows}"


def game_words(booking: Booking) -> str:
    """Such as: river game, 20:00-22:00: 8 light trucks, with box 9."""
    return f"{booking.name}, {times_words(booking.hours)}: {needed_words(booking)}"


def stand_in_words(stand_ins: Sequence[StandIn]) -> str:
    """Such as: 2 carts stand in; empty where nobody does."""
    number = sum(each.number for each in stand_ins)
    if not number:
        return ""
    kinds = listed(several(each.number, each.kind) for each in stand_ins)
    return f"{kinds} {'stands' if number == 1 else 'stand'} in"


def kind_words(kind: str, spell: KindSpell) -> str:
    """Such as: light truck: 16 booked, 12 sound, 2 carts stand in, 2 short, 20:00-22:00."""
    said = [f"{spell.booked} booked", f"{spell.sound} sound"]
    if spell.kept:
        said.append(f"{spell.kept} kept in boxes")
    if spell.stand_ins:
        said.append(stand_in_words(spell.stand_ins))
    if spell.short:
        said.append(f"{spell.short} short")
    return f"{kind}: {', '.join(said)}, {times_words(spell.hours)}"


def short_words(week: Week, day: datetime.date) -> Iterator[str]:
    """What a day lacks: `4 light trucks, 20:00-22:00`."""
    for row in week.rows:
        for spell in row.on(day).spells:
            if spell.short:
                yield f"{several(spell.short, row.name)}, {times_words(spell.hours)}"


def mend_words(remedy: Move | Loan) -> str:
    """What to write down: move river game to 18:00-20:00; borrow box 9 from Ann for river game."""
    if isinstance(remedy, Move):
        return f"move {remedy.booking} to {times_words(remedy.hours)}"
    keeper = f" from {remedy.box.keeper}" if remedy.box.keeper else ""
    return f"borrow {remedy.box.name}{keeper} for {remedy.booking}"


def day_sentences(week: Week, day: datetime.date) -> Iterator[str]:
    """The games of a day, then each kind that is short or for which another stands in."""
    for booking in week.games(day):
        unknown = ", not counted" if booking.name in week.uncounted else ""
        yield f"{capital(game_words(booking))}{unknown}."
    for row in week.rows:
        for spell in row.on(day).spells:
            if spell.short or spell.stand_ins:
                yield f"{capital(kind_words(row.name, spell))}."
