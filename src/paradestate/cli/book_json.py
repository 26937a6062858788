"""Bookings, boxes and loans for programs; codes alone, and never a name."""

from collections.abc import Mapping

from paradestate.core.club.booking import Booking, Box, Lent, clock
from paradestate.core.club.enough import BackInTime, Loan, Move, Remedy, Sharing, Spell
from paradestate.core.outline import decimal_text
from paradestate.journeys.club.book import BookedSpell, Bookings
from paradestate.journeys.document import finding_document
from paradestate.journeys.rewriting import Rewritten


def book_json(answer: Bookings) -> dict[str, object]:
    """The spells, bookings, boxes and loans with the keys that programs rely on."""
    in_repair = {} if answer.stock is None else answer.stock.in_repair
    late = {each.box for each in answer.late}
    club = answer.club
    return {
        "spells": [_spell(each, in_repair=in_repair) for each in answer.spells],
        "bookings": [_booking(each, answer) for each in club.bookings.values()],
        "boxes": [_box(each) for each in club.boxes.values()],
        "loans": [_lent(each, is_late=each.box in late) for each in club.loans.values()],
        "uncounted": list(answer.uncounted),
        "certainty": "not computed" if answer.uncounted else "exact",
        "findings": [finding_document(finding) for finding in answer.findings],
    }


def changed_json(written: Rewritten, answer: Bookings) -> dict[str, object]:
    """What was written, and the bookings as they are now."""
    return {
        "written": str(written.file),
        "former": written.former.name,
        "comments_gone": list(written.comments_gone),
        **book_json(answer),
    }


def _spell(each: BookedSpell, *, in_repair: Mapping[str, int]) -> dict[str, object]:
    spell = each.spell
    return {
        "hours": str(spell.hours),
        "on": spell.hours.on.isoformat(),
        "from": clock(spell.hours.start),
        "until": clock(spell.hours.end),
        "games": list(spell.games),
        "booked": dict(spell.booked),
        "sound": dict(spell.sound),
        "in_repair": {kind: in_repair.get(kind, 0) for kind in spell.booked},
        "short": dict(spell.short),
        "stand_ins": [
            {"kind": one.kind, "stands_for": one.stands_for, "number": one.number}
            for one in spell.stand_ins
        ],
        "kept": _kept(spell),
        "away": list(spell.away),
        "remedies": [_remedy(one) for one in each.remedies],
    }


def _kept(spell: Spell) -> dict[str, dict[str, int]]:
    return {box: dict(over) for box, over in spell.kept.items()}


def _remedy(remedy: Remedy) -> dict[str, object]:
    match remedy:
        case Move(booking=booking, hours=hours):
            return {"booking": booking, "from": clock(hours.start), "until": clock(hours.end)}
        case Loan(booking=booking, box=box):
            return {"booking": booking, "box": box.name, "keeper": box.keeper}
        case Sharing(box=box):
            return {"box": box.name, "only_what_is_needed": True}
        case BackInTime(lent=lent):
            return {"box": lent.box, "back_from": lent.to}


def _booking(booking: Booking, answer: Bookings) -> dict[str, object]:
    needs = answer.needs.get(booking.name)
    return {
        "name": booking.name,
        "hours": str(booking.hours),
        "for": booking.whom,
        "game": booking.game,
        "force": booking.force,
        "borrows": list(booking.borrows),
        "needs": None if needs is None else dict(needs.figures),
        "stands": None if needs is None else dict(needs.stands),
    }


def _box(box: Box) -> dict[str, object]:
    return {
        "name": box.name,
        "keeper": box.keeper,
        "holds": dict(box.holds),
        "counted": box.is_counted,
        "handed_over": {str(day): keeper for day, keeper in sorted(box.handed_over.items())},
        "insured_for": None if box.insured_for is None else decimal_text(box.insured_for),
    }


def _lent(lent: Lent, *, is_late: bool) -> dict[str, object]:
    return {
        "box": lent.box,
        "to": lent.to,
        "since": lent.since.isoformat(),
        "until": None if lent.until is None else lent.until.isoformat(),
        "late": is_late,
    }
