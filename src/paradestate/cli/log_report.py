"""Entries of the journal, for people and for programs."""

from pathlib import Path

import click

from paradestate.cli.holdings_report import holdings_words, staged_json
from paradestate.cli.output import command_line
from paradestate.core.finding import stops
from paradestate.core.holdings import Pile, piles
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.journal_text import entry_record
from paradestate.core.sentence.journal import SHORT, entry_words
from paradestate.core.sentence.wording import capital, day_words, several
from paradestate.journeys.history import History
from paradestate.journeys.log import Logged


def print_logged(entry: JournalEntry, answer: Logged, *, folder: Path) -> None:
    """The entry as it was written, what is held of it now, and how to take it back."""
    done = "Was there already" if answer.was_there else "Written"
    click.echo(f"{done}: {entry_words(entry)}, {day_words(entry.on)} (entry {entry.id[:SHORT]}).")
    names = {pile.name for each in (entry.leaves, entry.comes) for pile in piles(each)}
    names |= {*entry.ordered, *entry.cancelled}
    if entry.kind is EntryKind.STRUCK_OUT:
        names = {pile.name for pile in _changed(answer)}
    if entry.kind is EntryKind.COUNTED:
        for name in sorted(names):
            click.echo(_difference(entry, answer, name=name))
    is_past = entry.on < answer.state.last_day
    for line in holdings_words(answer.state, names=names):
        click.echo(f"Now {line}" if is_past else line)
    back = command_line("log", str(folder), "struck-out", entry.id[:SHORT], "--because", "slip")
    click.echo(f"To take it back: {back}")


def _changed(answer: Logged) -> set[Pile]:
    """What isn't held any more, or is held now, in another number than before."""
    return set(piles(answer.before.held)) ^ set(piles(answer.state.held))


def _difference(entry: JournalEntry, answer: Logged, *, name: str) -> str:
    """What a count found beside what was held; loose figures only."""
    stages = entry.comes.figures[name]
    before = answer.before.held.figures.get(name, {})
    held, found = sum(before.get(stage, 0) for stage in stages), sum(stages.values())
    more = {0: "as held"}.get(found - held, f"{found - held:+d}")
    return f"{name}: {found} counted, {held} held before ({more})."


def log_json(entry: JournalEntry, answer: Logged) -> dict[str, object]:
    """The entry's UUID and what is held now."""
    return {
        **entry_json(entry),
        "was_there": answer.was_there,
        **staged_json(answer.state),
    }


def entry_json(entry: JournalEntry) -> dict[str, object]:
    """An entry; what is empty is left out."""
    said = {word.replace(" ", "_"): value for word, value in entry_record(entry).items()}
    return {"entry": entry.id, "words": entry_words(entry), **said}


def print_history(answer: History, *, folder: Path) -> None:
    """The newest entries, one a line, newest first."""
    if not answer.number and not stops(answer.findings):
        begin = command_line("log", str(folder), "--help")
        click.echo(f"Nothing is written yet. Begin with: {begin}")
    for entry in answer.entries:
        struck = "  (struck out)" if entry.id in answer.struck_out else ""
        click.echo(f"{entry.id[:SHORT]}  {entry.on}  {entry_words(entry)}{struck}")
    if answer.number > len(answer.entries):
        more = several(answer.number - len(answer.entries), "older entry")
        click.echo(f"{capital(more)}: --last {answer.number} lists all.")


def history_json(answer: History) -> dict[str, object]:
    """The newest entries, newest first, and how many there are in all."""
    return {
        "entries": [
            entry_json(entry) | {"is_struck_out": entry.id in answer.struck_out}
            for entry in answer.entries
        ],
        "number": answer.number,
    }
