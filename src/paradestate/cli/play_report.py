"""A game for people: what was written, points left, what to do now, and the roll record."""

from collections.abc import Iterable, Iterator
from pathlib import Path

import click
from rich.console import Console
from rich.table import Table
from rich.text import Text

from paradestate.cli.output import command_line, console, print_hanging, titled_table
from paradestate.core.journal_entry import JournalEntry
from paradestate.core.play.event import Committed, Noted, Revealed, Told
from paradestate.core.play.game_record import GameRecord, Line
from paradestate.core.play.loss_count import LossCount
from paradestate.core.sentence.account import points_words
from paradestate.core.sentence.journal import SHORT
from paradestate.core.sentence.loss_limit import body_words, losses_words
from paradestate.core.sentence.play import (
    binding_words,
    clock_words,
    event_words,
    note_words,
    season_words,
    who_words,
)
from paradestate.core.sentence.support import purchases_words
from paradestate.core.sentence.wording import capital, listed, on_one_line
from paradestate.journeys.game.play import Wrote
from paradestate.journeys.game.played_game import PlayedGame


def print_wrote(done: Wrote) -> None:
    """What was written, whole digests and secrets, then points left and what to do now.

    How things stand, told in the heat of the game, has no bearing on what is asked for: there the
    line alone is enough.
    """
    out = console()
    game = done.game
    record = None if game is None else game.record
    if done.were_there:
        click.echo("Written before; nothing was added.")
    for entry in done.entries:
        if entry.played is None:
            print_hanging(out, f"Struck out: {entry.struck_out[:SHORT]}, {on_one_line(entry.note)}")
            continue
        print_hanging(out, f"{entry.id[:SHORT]}  {capital(event_words(entry.played.event))}.")
        for line in _in_full(entry.played.event):
            click.echo(f"  {line}")
    if game is None or record is None:
        return
    _print_losses(out, _touched(done, game))
    if any(map(_bears_on_choice, done.entries)):
        _print_now(out, game)


def _bears_on_choice(entry: JournalEntry) -> bool:
    return entry.played is None or not isinstance(entry.played.event, Told | Noted)


def _touched(done: Wrote, game: PlayedGame) -> Iterator[LossCount]:
    """The losses that hang on what was just told, or struck out."""
    written = {each.struck_out or each.id for each in done.entries}
    lines = () if game.record is None else game.record.lines
    events = [each.event for each in lines if each.id in written]
    subjects = [each.subject for each in events if isinstance(each, Told)]
    for losses in game.losses:
        if any(map(losses.body.counts, subjects)):
            yield losses


def _in_full(event: object) -> Iterator[str]:
    """What somebody may want to write down or type elsewhere."""
    match event:
        case Committed():
            yield f"digest {event.digest}"
            yield "Show it to your opponent, and ask for a word: play FOLDER word WORD"
        case Revealed():
            yield f"secret {event.secret}"
        case _:
            pass


def print_game(game: PlayedGame, *, folder: Path) -> None:
    """The whole game: terms, points, what to do now, and its record."""
    out, record = console(), game.record
    if record is None:
        begin = command_line("play", str(folder), "start")
        click.echo(f"No game is written down yet. Begin with: {begin}")
        return
    out.print(Text(capital(event_words(record.terms)), style="bold"))
    if record.ended is not None:
        print_hanging(out, capital(event_words(record.ended)) + ".")
    _print_now(out, game)
    out.print()
    out.print(_record_table(game, record))
    if any(line.device for line in record.lines):
        print_hanging(
            out,
            "Each time is by the clock of the device that wrote it; lines stand as they came.",
        )
    for binding in game.bindings:
        about = f"{on_one_line(binding.committed.purpose)} ({binding.line.id[:SHORT]})"
        words = binding_words(binding, wrong=game.differences.get(binding.line.id))
        print_hanging(out, f"Machine, {about}: {words}.")
    _print_board(out, record)
    _print_losses(out, (each for each in game.losses if each.most))
    print_notes(out, record)
    for sides, each in game.season.items():
        if each.is_enough:
            print_hanging(out, season_words(sides, each))


def _print_now(out: Console, game: PlayedGame) -> None:
    account = game.account
    if account is not None:
        print_hanging(out, points_words(account))
        if account.bought:
            print_hanging(out, f"Taken: {purchases_words(account.bought)}.")
        if account.refused:
            print_hanging(out, f"Refused or declined: {purchases_words(account.refused)}.")
    if game.now.words:
        out.print(Text(f"Now: {game.now.words}", style="bold"))
    for line in game.now.chart:
        print_hanging(out, line)


def _record_table(game: PlayedGame, record: GameRecord) -> Table:
    table = titled_table("Record")
    for heading in ("time", "line", "what", "who"):
        table.add_column(heading)
    begun = record.opening.written.date()
    for line in record.lines:
        table.add_row(
            clock_words(line.written, is_dated=line.written.date() != begun),
            line.id[:SHORT],
            on_one_line(_line_words(line, game)),
            on_one_line(who_words(line)),
        )
    return table


def _line_words(line: Line, game: PlayedGame) -> str:
    words = event_words(line.event)
    second = () if game.account is None else game.account.second
    if line.struck_because is not None:
        return f"STRUCK OUT ({line.struck_because}): {words}"
    return f"{words} - the first roll counts" if line.id in second else words


def _print_board(out: Console, record: GameRecord) -> None:
    for subject, standing in record.board.items():
        told = tuple(map(on_one_line, standing.values))
        values = listed((f"'{each}'" for each in told), joint="or")
        about = on_one_line(", ".join(filter(None, (subject.name, subject.aspect))))
        if standing.is_disputed:
            print_hanging(out, f"{about}: {values}. Which is right?")
        elif told != ("",):
            print_hanging(out, f"{about}: {told[0]}.")


def _print_losses(out: Console, losses: Iterable[LossCount]) -> None:
    """How bodies with a limit to their losses stand."""
    for each in losses:
        print_hanging(out, f"{body_words(each.body)}: {losses_words(each)}.")


def print_notes(out: Console, record: GameRecord) -> None:
    """What was noted, those of a stand or body with its name."""
    for note in record.notes:
        print_hanging(out, f"Noted: {note_words(note)}")
