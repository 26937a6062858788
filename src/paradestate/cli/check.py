"""The command `check`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings, summary
from paradestate.cli.option import finish, folder_argument, json_option, today
from paradestate.cli.output import at_work, print_json
from paradestate.core.finding import Level
from paradestate.journeys.document import finding_document
from paradestate.journeys.holdings import checked_with_journal

EPILOG = """\b
Examples:
  paradestate check marenz
  paradestate check marenz --strict       exit with 1 on warnings too
  paradestate check marenz --json
  paradestate check marenz --schema > force.schema.json
"""


@click.command(epilog=EPILOG)
@folder_argument
@click.option("--strict", is_flag=True, help="Exit with 1 on warnings too.")
@click.option("--schema", is_flag=True, help="Print the JSON Schema of the format, for editors.")
@json_option
def command(folder: Path, *, strict: bool, schema: bool, as_json: bool) -> None:
    """Read the force in FOLDER and say everything that is wrong or doubtful in it.

    Each finding says what, where (file:line:column), what it does to the result and what would
    put it right.
    """
    if schema:
        from paradestate.journeys.check import schema as json_schema

        print_json(json_schema())
        return
    with at_work("Reading"):
        read = checked_with_journal(folder, today=today())
    if as_json:
        print_json({"findings": [finding_document(finding) for finding in read.findings]})
    else:
        print_findings(read.findings, read.texts)
        click.echo(f"{read.force.title or folder}: {summary(read.findings) or 'nothing to say'}.")
    warned = any(finding.level is Level.WARN for finding in read.findings)
    finish(stopped=read.is_stopped or (strict and warned))
