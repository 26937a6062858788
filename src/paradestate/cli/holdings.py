"""The command `holdings`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import finish, folder_argument, json_option, today
from paradestate.cli.output import at_work, print_json
from paradestate.journeys.choosing import day_of
from paradestate.journeys.holdings import holdings

EPILOG = """\b
Examples:
  paradestate holdings marenz
  paradestate holdings marenz --on 2026-03-01
  paradestate holdings club --json
"""


@click.command(epilog=EPILOG)
@folder_argument
@click.option("--on", default="", metavar="DATE", help="As it was at the end of that day.")
@json_option
def command(folder: Path, *, on: str, as_json: bool) -> None:
    """Say what is owned in FOLDER, by kind and stage: at the start, and all that happened since.

    FOLDER is a force, or a collection of forces that share their figures.
    """
    day, slips = day_of(on)
    if slips:
        print_findings(slips, {})
        finish(stopped=True)
    with at_work("Adding up"):
        answer = holdings(folder, today=today(), on=day)
    print_findings(answer.findings, answer.texts)
    if answer.state is not None and as_json:
        from paradestate.cli.holdings_report import holdings_json

        print_json(holdings_json(answer, on=day or today()))
    elif answer.state is not None:
        from paradestate.cli.holdings_report import print_holdings

        print_holdings(answer, on=day or today())
    finish(stopped=answer.is_stopped)
