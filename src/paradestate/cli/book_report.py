"""Bookings for people, and for programs."""

from collections.abc import Mapping

from paradestate.cli.output import console, titled_table
from paradestate.core.club.booking import clock
from paradestate.core.club.enough import Move, Remedy
from paradestate.core.sentence.club import hours_short, remedy_words
from paradestate.core.sentence.wording import capital, counted, day_words, listed, several
from paradestate.journeys.book import BookedSpell, Bookings
from paradestate.journeys.document import finding_document


def print_bookings(answer: Bookings) -> None:
    """Whether all can be played; then what is short with its remedies; then every spell."""
    out = console()
    short = [each for each in answer.spells if each.spell.short]
    if not answer.spells:
        out.print("Nothing is booked.")
        return
    if not short:
        out.print("All booked games can be played.")
    for each in short:
        out.print(f"{day_words(each.spell.hours.on)}: {hours_short(each.spell)}.")
        for remedy in each.remedies:
            out.print(f"  {capital(remedy_words(remedy))} would do it.")
    out.print()
    table = titled_table("Booked")
    for heading in ("day", "hours", "games", "needs", "stand in", "short"):
        table.add_column(heading)
    for each in answer.spells:
        table.add_row(*_row(each))
    out.print(table)


def _row(each: BookedSpell) -> tuple[str, ...]:
    spell = each.spell
    hours = spell.hours
    instead = (f"{several(one.number, one.kind)} for {one.stands_for}" for one in spell.stand_ins)
    return (
        hours.on.isoformat(),
        f"{clock(hours.start)}-{clock(hours.end)}",
        listed(spell.games),
        counted(spell.booked),
        listed(instead),
        counted(spell.short) or "no",
    )


def book_json(answer: Bookings) -> dict[str, object]:
    """The spells with the keys that programs rely on."""
    in_repair = {} if answer.stock is None else answer.stock.in_repair
    return {
        "spells": [_spell(each, in_repair=in_repair) for each in answer.spells],
        "certainty": "exact",
        "findings": [finding_document(finding) for finding in answer.findings],
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
        "remedies": [_remedy(one) for one in each.remedies],
    }


def _remedy(remedy: Remedy) -> dict[str, object]:
    if isinstance(remedy, Move):
        return {
            "booking": remedy.booking,
            "from": clock(remedy.hours.start),
            "until": clock(remedy.hours.end),
        }
    return {"booking": remedy.booking, "box": remedy.box.name, "keeper": remedy.box.keeper}
