"""The actions `carry` and `bring` of `play`: a file for the evening, and what it gave back."""

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING
from uuid import uuid4

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import finish, today
from paradestate.cli.output import command_line, print_json
from paradestate.core.sentence.wording import several
from paradestate.text.error import FileChangedError

if TYPE_CHECKING:  # start-up time
    from paradestate.journeys.game.bring import GivenFile

TYPED = "-"
"""Stands for what is typed or piped in."""


def carry_out(folder: Path, *, out: Path | None, as_json: bool) -> None:
    """Writes a carry file."""
    from paradestate.journeys.game.carry import carry
    from paradestate.text.whole_file import write_new
    from paradestate.web.table.carry_file import carry_file

    if out is None:
        raise click.UsageError("Say where the file is to be written: --out evening.html.")
    if out.suffix != ".html":
        raise click.UsageError("A phone opens it by its ending: give it a name that ends in .html.")
    made = carry(folder, today=today(), new_id=lambda: str(uuid4()))
    print_findings(made.findings, made.texts)
    if made.content is None:
        finish(stopped=True)
        return
    data = carry_file(made.content)
    try:
        write_new(out, data)
    except FileChangedError:
        raise click.UsageError(f"{out} is there already; nothing is overwritten.") from None
    if as_json:
        print_json({"path": str(out), "id": made.content["carry"], "bytes": len(data)})
        return
    click.echo(f"Written: {out} ({len(data) // 1000} kB).")
    click.echo(
        "Copy it to your phone and open it there once before the game: it says what it keeps."
    )
    click.echo(f"What it gives back: {command_line('play', str(folder), 'bring')} FILE")


def bring_in(folder: Path, *, files: Sequence[str], as_json: bool) -> None:
    """Takes entries back."""
    from paradestate.journeys.game.bring import bring

    if not files:
        raise click.UsageError("Name the files that the phone gave back; - reads what is typed.")
    brought = bring(folder, today=today(), files=[_given(each) for each in files])
    print_findings(brought.findings, brought.texts)
    if as_json:
        print_json({"taken": brought.taken, "there": brought.there, "is_whole": brought.is_whole})
    elif brought.taken is not None:
        there = f"; {brought.there} had come before" if brought.there else ""
        click.echo(f"Taken: {several(brought.taken, 'entry')}{there}.")
        click.echo(f"The game as it stands: {command_line('play', str(folder))}")
    finish(stopped=not brought.is_whole)


def _given(name: str) -> "GivenFile":
    from paradestate.journeys.game.bring import GivenFile
    from paradestate.text.decoding import MOST_BYTES
    from paradestate.text.whole_file import read_whole

    most = MOST_BYTES + 1
    if name == TYPED:
        return GivenFile(name="what was typed", data=sys.stdin.buffer.read(most))
    if not Path(name).is_file():
        raise click.UsageError(f"There is no file '{name}'.")
    return GivenFile(name=name, data=read_whole(Path(name), most=most))
