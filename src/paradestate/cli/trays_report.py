"""The tray plan and its packing list, for people."""

import click

from paradestate.cli.output import console, titled_table
from paradestate.core.outline import decimal_text
from paradestate.core.sentence.tray import (
    case_words,
    plan_sentences,
    row_sentence,
    row_title,
    tray_words,
)
from paradestate.core.tray.laid import LaidTray
from paradestate.core.tray.plan import TrayPlan


def print_trays(plan: TrayPlan, *, is_whole: bool) -> None:
    """How many trays and how sure, then each tray row by row from the far side."""
    click.echo(" ".join(plan_sentences(plan)))
    for tray in plan.trays:
        click.echo()
        _print_tray(tray)
    click.echo()
    if is_whole:
        click.echo("The trays hold exactly the packing list.")
    for case in plan.empty:
        click.echo(f"Not needed: {case_words(case)}.")


def _print_tray(tray: LaidTray) -> None:
    table = titled_table(f"{case_words(tray.case)}: {tray_words(tray)}")
    table.add_column("row, from the far side")
    table.add_column("mm", justify="right")
    table.add_column("stands", justify="right")
    table.add_column("from left to right")
    for number, row in enumerate(tray.rows, start=1):
        table.add_row(
            row_title(row, number=number),
            f"{decimal_text(row.starts)} to {decimal_text(row.ends)}",
            str(len(row.lying)),
            row_sentence(row),
        )
    console().print(table)
