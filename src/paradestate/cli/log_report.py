"""Entries of the journal, for people and for programs."""

from collections.abc import Mapping
from pathlib import Path

import click

from paradestate.cli.holdings_report import holdings_words, staged_json
from paradestate.core.holdings import Holdings, piles
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.sentence.journal import SHORT, entry_words
from paradestate.core.sentence.wording import capital, day_words, several
from paradestate.journeys.history import History
from paradestate.journeys.log import Logged


def print_logged(entry: JournalEntry, answer: Logged, *, folder: Path) -> None:
    """The entry as it was written, what is held of it now, and how to take it back."""
    done = "Was there already" if answer.was_there else "Written"
    click.echo(f"{done}: {entry_words(entry)}, {day_words(entry.on)} (entry {entry.id[:SHORT]}).")
    names = {pile.name for each in (entry.leaves, entry.comes) for pile in piles(each)}
    for line in holdings_words(answer.state, names=names):
        click.echo(line)
    if entry.kind is not EntryKind.STRUCK_OUT:
        back = f"paradestate log {folder} struck-out {entry.id[:SHORT]} --because"
        click.echo(f'To take it back: {back} "..."')


def log_json(entry: JournalEntry, answer: Logged) -> dict[str, object]:
    """The entry's UUID and what is held now."""
    return {
        **entry_json(entry),
        "was_there": answer.was_there,
        **staged_json(answer.state),
    }


def entry_json(entry: JournalEntry) -> dict[str, object]:
    """An entry; what is empty is left out."""
    always = {
        "entry": entry.id,
        "kind": entry.kind,
        "on": entry.on.isoformat(),
        "written": entry.written.isoformat(),
        "words": entry_words(entry),
    }
    other: dict[str, object] = {
        "force": entry.force,
        "leaves": _holdings_json(entry.leaves),
        "comes": _holdings_json(entry.comes),
        "stand": entry.stand,
        "minutes": entry.minutes,
        "promised": dict(entry.promised),
        "note": entry.note,
        "struck_out": entry.struck_out,
    }
    return always | {word: value for word, value in other.items() if value}


def _holdings_json(holdings: Holdings) -> dict[str, Mapping[str, Mapping[str, int]]]:
    both = {"figures": holdings.figures, "stands": holdings.stands}
    return {word: staged for word, staged in both.items() if staged}


def print_history(answer: History, *, folder: Path) -> None:
    """The newest entries, one a line, newest first."""
    if not answer.entries:
        click.echo(f"Nothing is written yet. Begin with: paradestate log {folder} --help")
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
