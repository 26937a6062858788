"""Bookings, loans and keepers written into the folder itself, and the version before put back.

folder -> checked -> the club as it is meant -> edits of its section -> written whole

The version before is kept, and can be put back for as long as nothing else was written since.
"""

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypeVar

from paradestate.core.choice import CHOSEN_HERE, unknown_choice
from paradestate.core.club.booking import Booking, Box, Club, Hours, Lent
from paradestate.core.club.enough import Loan, Move
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.sentence.wording import capital
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.rewriting import Rewriting, Rewritten, put_back, said_anew
from paradestate.text.editing import Edit, Put, TakeOut
from paradestate.text.format.club import BOOKING, BOX, LENT

T = TypeVar("T")

SECTION = "club"
NOTHING_WRITTEN = "Nothing was written."


@dataclass(frozen=True, slots=True, kw_only=True)
class ClubChange:
    """A change of the club: the edits, and what it says with them."""

    edits: tuple[Edit, ...]
    after: Club


@dataclass(frozen=True, slots=True, kw_only=True)
class ClubWritten:
    """What was written; None where nothing was, with the stops that prevent it."""

    checked: Checked
    written: Rewritten | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ClubPen:
    """The folder that is written in, on which day and when."""

    folder: Path
    today: datetime.date
    at: datetime.datetime


def add_booking(pen: ClubPen, booking: Booking) -> ClubWritten:
    """Books a game under a name that is free. Raises FileError and EditError."""
    read = checked(pen.folder, today=pen.today)
    club = read.force.club
    stops = [*_taken(booking, club), *_unknown(booking, read.force)]
    change = ClubChange(
        edits=(Put(path=(SECTION, "bookings", booking.name), value=BOOKING.write(booking)),),
        after=replace(club, bookings={**club.bookings, booking.name: booking}),
    )
    return _written(pen, read, stops=stops, change=change)


def add_box(pen: ClubPen, box: Box) -> ClubWritten:
    """Writes a box down under a name that is free. Raises FileError and EditError."""
    read = checked(pen.folder, today=pen.today)
    club, figures = read.force.club, read.force.figures
    unknown = [
        _unwritten(kind, figures, what="figure kind") for kind in box.holds if kind not in figures
    ]
    change = ClubChange(
        edits=(Put(path=(SECTION, "boxes", box.name), value=BOX.write(box)),),
        after=replace(club, boxes={**club.boxes, box.name: box}),
    )
    stops = [*([_is_known(box)] if box.name in club.boxes else []), *unknown]
    return _written(pen, read, stops=stops, change=change)


def move_booking(pen: ClubPen, name: str, *, hours: Hours) -> ClubWritten:
    """Has a game played at other hours. Raises FileError and EditError."""
    read = checked(pen.folder, today=pen.today)
    club = read.force.club
    if name not in club.bookings:
        return _refused(read, _unwritten(name, club.bookings, what="booking"))
    moved = replace(club.bookings[name], hours=hours)
    change = ClubChange(
        edits=(Put(path=(SECTION, "bookings", name, "hours"), value=str(hours)),),
        after=replace(club, bookings={**club.bookings, name: moved}),
    )
    return _written(pen, read, stops=(), change=change)


def borrow_box(pen: ClubPen, name: str, *, box: str) -> ClubWritten:
    """Has a game borrow one more box. Raises FileError and EditError."""
    read = checked(pen.folder, today=pen.today)
    club = read.force.club
    for known, one, what in ((club.bookings, name, "booking"), (club.boxes, box, "box")):
        if one not in known:
            return _refused(read, _unwritten(one, known, what=what))
    before = club.bookings[name]
    with_it = replace(before, borrows=(*before.borrows, box))
    change = ClubChange(
        edits=(Put(path=(SECTION, "bookings", name, "borrows"), value=list(with_it.borrows)),),
        after=replace(club, bookings={**club.bookings, name: with_it}),
    )
    return _written(pen, read, stops=(), change=change)


def mend(pen: ClubPen, remedy: Move | Loan) -> ClubWritten:
    """Writes the change that puts a day right. Raises FileError and EditError."""
    match remedy:
        case Move(booking=name, hours=hours):
            return move_booking(pen, name, hours=hours)
        case Loan(booking=name, box=box):
            return borrow_box(pen, name, box=box.name)


def cancel_booking(pen: ClubPen, name: str) -> ClubWritten:
    """Takes a booking out. Raises FileError and EditError."""
    read = checked(pen.folder, today=pen.today)
    club = read.force.club
    if name not in club.bookings:
        return _refused(read, _unwritten(name, club.bookings, what="booking"))
    change = ClubChange(
        edits=(_taken_out("bookings", club.bookings, name=name),),
        after=replace(club, bookings=_without(club.bookings, name)),
    )
    return _written(pen, read, stops=(), change=change)


def lend_box(pen: ClubPen, lent: Lent) -> ClubWritten:
    """Writes down that a box goes out. Raises FileError and EditError."""
    read = checked(pen.folder, today=pen.today)
    club = read.force.club
    if lent.box not in club.boxes:
        return _refused(read, _unwritten(lent.box, club.boxes, what="box"))
    out = club.loans.get(lent.box)
    stops = [] if out is None else [_is_out(out)]
    if lent.until is not None and lent.until < lent.since:
        stops.append(_ends_before(lent, lent.until))
    change = ClubChange(
        edits=(Put(path=(SECTION, "loans", lent.box), value=LENT.write(lent)),),
        after=replace(club, loans={**club.loans, lent.box: lent}),
    )
    return _written(pen, read, stops=stops, change=change)


def take_back(pen: ClubPen, box: str) -> ClubWritten:
    """Writes down that a box is back. Raises FileError and EditError."""
    read = checked(pen.folder, today=pen.today)
    club = read.force.club
    if box not in club.boxes:
        return _refused(read, _unwritten(box, club.boxes, what="box"))
    if box not in club.loans:
        return _refused(read, _isnt_out(box))
    change = ClubChange(
        edits=(_taken_out("loans", club.loans, name=box),),
        after=replace(club, loans=_without(club.loans, box)),
    )
    return _written(pen, read, stops=(), change=change)


def hand_over_box(pen: ClubPen, box: str, *, to: str, day: datetime.date) -> ClubWritten:
    """Writes down who keeps a box from a day on. Raises FileError and EditError."""
    read = checked(pen.folder, today=pen.today)
    club = read.force.club
    if box not in club.boxes:
        return _refused(read, _unwritten(box, club.boxes, what="box"))
    known = club.boxes[box]
    kept = replace(known, handed_over={**known.handed_over, day: to})
    change = ClubChange(
        edits=(Put(path=(SECTION, "boxes", box, "handed over", str(day)), value=to),),
        after=replace(club, boxes={**club.boxes, box: kept}),
    )
    return _written(pen, read, stops=(), change=change)


def put_club_back(pen: ClubPen, former: str) -> ClubWritten:
    """Puts the version of the file back that was kept last, if it has that name.

    Raises ChangedSinceError where another was kept last, or where the two differ in more than the
    club, and FileError where the disk refuses.
    """
    beside = replace(checked(pen.folder, today=pen.today).force, club=Club())
    made = put_back(
        pen.folder,
        today=pen.today,
        at=pen.at,
        former=former,
        is_meant=lambda force: replace(force, club=Club()) == beside,
    )
    return _answer(made)


def club_file(force: Force) -> Path | None:
    """The file that says what the club shares; where none does the one that says what is raised."""
    place = force.places.get((SECTION,)) or force.places.get(("raise",))
    return None if place is None else Path(place.file)


def _written(
    pen: ClubPen, read: Checked, *, stops: Sequence[Finding], change: ClubChange
) -> ClubWritten:
    file = club_file(read.force)
    if read.is_stopped or stops or file is None:
        return _refused(read, *stops)
    meant = replace(read.force, club=change.after)
    made = said_anew(
        pen.folder,
        today=pen.today,
        at=pen.at,
        file=file,
        edits=change.edits,
        is_meant=lambda force: force == meant,
    )
    return _answer(made)


def _answer(made: Rewriting) -> ClubWritten:
    return ClubWritten(checked=made.trial, written=made.written)


def _refused(read: Checked, *stops: Finding) -> ClubWritten:
    return ClubWritten(checked=read if read.is_stopped else read.with_findings(*stops))


def _without(entries: Mapping[str, T], name: str) -> Mapping[str, T]:
    return {other: entry for other, entry in entries.items() if other != name}


def _taken_out(word: str, entries: Mapping[str, object], *, name: str) -> TakeOut:
    """The entry taken out, with the key above it where nothing else stands there."""
    return TakeOut(path=(SECTION, word) if len(entries) == 1 else (SECTION, word, name))


def _taken(booking: Booking, club: Club) -> list[Finding]:
    if booking.name not in club.bookings:
        return []
    stop = _stop(
        code="booked-already",
        message=f"'{booking.name}' is booked already: {club.bookings[booking.name].hours}.",
        hint="Move that one, or give this one another name.",
    )
    return [stop]


def _unknown(booking: Booking, force: Force) -> list[Finding]:
    """A stop for each name that the files don't have; games are looked up when they count."""
    named = (
        *((kind, force.figures, "figure kind") for kind in booking.needs),
        *((pattern, force.stands, "stand") for pattern in booking.stands),
        *((box, force.club.boxes, "box") for box in booking.borrows),
    )
    return [_unwritten(name, known, what=what) for name, known, what in named if name not in known]


def _unwritten(name: str, known: Mapping[str, object], *, what: str) -> Finding:
    return replace(unknown_choice(name, known, what=what), effect=NOTHING_WRITTEN)


def _stop(*, code: str, message: str, hint: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect=NOTHING_WRITTEN,
        hint=hint,
        place=CHOSEN_HERE,
    )


def _is_known(box: Box) -> Finding:
    return _stop(
        code="box-known",
        message=f"'{box.name}' is written down already.",
        hint="Change it in an editor, hand it over, or give this one another name.",
    )


def _is_out(lent: Lent) -> Finding:
    return _stop(
        code="box-out-already",
        message=f"{lent.box} is out with {lent.to} since {lent.since}.",
        hint="Write down first that it is back.",
    )


def _isnt_out(box: str) -> Finding:
    return _stop(
        code="box-not-out",
        message=f"{capital(box)} isn't out: nobody has it.",
        hint="If another box is back, say that one; with `book FOLDER` all that are out are named.",
    )


def _ends_before(lent: Lent, until: datetime.date) -> Finding:
    return _stop(
        code="loan-ends-before",
        message=f"{lent.box} would be back on {until}, before it is lent on {lent.since}.",
        hint="Give a later day.",
    )
