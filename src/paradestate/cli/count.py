"""The command `count`."""

from pathlib import Path

import click

from paradestate.cli.count_json import count_json
from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import choice_options, finish, folder_argument, json_option, today
from paradestate.cli.output import print_json
from paradestate.journeys.choosing import against_of, choice_of
from paradestate.journeys.count import count

EPILOG = """\b
Examples:
  paradestate count marenz
  paradestate count marenz --set company=3 --changes
  paradestate count marenz --against date=1941
  paradestate count marenz --game "whole-day attack" --json
"""


@click.command(epilog=EPILOG)
@folder_argument
@choice_options
@click.option(
    "--against",
    default="",
    metavar="WORD=VALUE",
    help="What another date, theatre or number would change: date=1941, company=3.",
)
@click.option(
    "--changes", is_flag=True, help="What your choice changes against the folder as it is written."
)
@json_option
def command(folder: Path, *, against: str, changes: bool, as_json: bool, **options: str) -> None:
    """Count the force in FOLDER: what must be on the table, what is owned, what is lacking.

    Every number comes with the multiplication behind it, and is counted in three ways that have
    to agree.
    """
    choice, findings = choice_of(**options)
    other, more = against_of(against) if against else (None, ())
    if findings or more:
        print_findings((*findings, *more), {})
        finish(stopped=True)
    answer = count(
        folder,
        today=today(),
        choice=choice,
        against=other,
        since_written=changes and other is None,
    )
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.count is not None and as_json:
        print_json(count_json(answer.count))
    elif answer.count is not None:
        from paradestate.cli.parade_state import print_parade_state

        print_parade_state(answer.count, folder=folder)
    finish(stopped=answer.count is None)
