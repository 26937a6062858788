"""Bookings for people."""

import datetime
from pathlib import Path

import click

from paradestate.cli.output import command_line, console, titled_table
from paradestate.core.club.booking import Club, clock
from paradestate.core.sentence.club import hours_short, kept_words, remedy_words, where_words
from paradestate.core.sentence.wording import capital, counted, day_words, listed, several
from paradestate.journeys.club.book import BookedSpell, Bookings
from paradestate.journeys.rewriting import Rewritten


def print_bookings(answer: Bookings, *, today: datetime.date) -> None:
    """Whether all can be played; then what is short with its remedies; every spell; the boxes."""
    out = console()
    short = [each for each in answer.spells if each.spell.short]
    if answer.uncounted:
        out.print(f"Not counted: {listed(answer.uncounted)}.")
    if not answer.spells:
        out.print("Nothing else is booked." if answer.uncounted else "Nothing is booked.")
    elif not short:
        others = "other " if answer.uncounted else ""
        out.print(f"All {others}booked games can be played.")
    for each in short:
        out.print(f"{day_words(each.spell.hours.on)}: {hours_short(each.spell)}.")
        for remedy in each.remedies:
            out.print(f"  {capital(remedy_words(remedy))} would do it.")
    if answer.spells:
        _print_spells(answer)
    if answer.club.boxes:
        _print_boxes(answer.club, today=today)


def print_changed(
    written: Rewritten, answer: Bookings, *, folder: Path, today: datetime.date
) -> None:
    """Where it was written and how it is put back; then the bookings as they are now."""
    click.echo(f"Written: {written.file}; the version before: {written.former}")
    for comment in written.comments_gone:
        click.echo(f"A comment went with what was replaced: {comment}")
    back = command_line("book", str(folder), "put-back", written.former.name)
    click.echo(f"To put it back: {back}")
    click.echo()
    print_bookings(answer, today=today)


def _print_spells(answer: Bookings) -> None:
    out = console()
    out.print()
    table = titled_table("Booked")
    for heading in ("day", "hours", "games", "needs", "stand in", "short"):
        table.add_column(heading)
    for each in answer.spells:
        table.add_row(*_row(each))
    out.print(table)
    booked = {kind for each in answer.spells for kind in each.spell.booked}
    in_repair = {} if answer.stock is None else answer.stock.in_repair
    waiting = {kind: number for kind, number in in_repair.items() if kind in booked}
    if waiting:
        out.print(f"Not finished or in repair, and given out to nobody: {counted(waiting)}.")
    for words in dict.fromkeys(kept_words(each.spell) for each in answer.spells):
        if words:
            out.print(f"{capital(words)}.")


def _print_boxes(club: Club, *, today: datetime.date) -> None:
    """Who keeps each box today, what it holds, and who has it."""
    out = console()
    out.print()
    table = titled_table("Boxes")
    for heading in ("box", "keeper", "holds", "where"):
        table.add_column(heading)
    for box in club.boxes.values():
        where = where_words(box, club.loans.get(box.name), today=today)
        keeper = box.keeper_on(today) or "nobody is named"
        table.add_row(box.name, keeper, counted(box.holds), where)
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
