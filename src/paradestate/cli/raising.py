"""The command `raise`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import (
    finish,
    folder_argument,
    json_option,
    now,
    raised_options,
    today,
)
from paradestate.cli.output import print_json
from paradestate.cli.raising_report import print_raising, raising_json
from paradestate.journeys.choosing import choice_of
from paradestate.journeys.raising import (
    NothingKeptError,
    RaisingAnswer,
    put_former_back,
    raise_anew,
)
from paradestate.text.error import EditError

EPILOG = """\b
Examples:
  paradestate raise marenz --set company=3
  paradestate raise marenz --date 1943-07 --wished all
  paradestate raise marenz --theatre ""       no theatre any more
  paradestate raise marenz --back
"""


@click.command(name="raise", epilog=EPILOG)
@folder_argument
@raised_options
@click.option("--back", is_flag=True, help="Put the former version of the file back.")
@json_option
def command(folder: Path, *, back: bool, as_json: bool, **options: str) -> None:
    """Write into FOLDER what is raised, as `count` shows it for one sum with the same options.

    Comments and order of the file stay, and its former version is kept. A choice that would bring
    a stop is refused, and nothing is written.
    """
    named = any(value for key, value in options.items() if key != "theatre")
    if back == (named or options["theatre"] is not None):
        raise click.UsageError(
            "Name what to raise (--set, --date, --theatre, --wished), or --back alone."
        )
    answer = _put_back(folder) if back else _raised(folder, options)
    print_findings(answer.checked.findings, answer.checked.texts)
    stopped = answer.checked.is_stopped
    if as_json and not stopped:
        print_json(raising_json(answer))
    elif not stopped:
        print_raising(answer, folder=folder)
    else:
        click.echo("Nothing was written; the lines above are as they would read.", err=True)
    finish(stopped=stopped)


def _raised(folder: Path, options: dict[str, str]) -> RaisingAnswer:
    choice, findings = choice_of(**options)
    if findings:
        print_findings(findings, {})
        finish(stopped=True)
    try:
        return raise_anew(folder, today=today(), at=now(), choice=choice)
    except EditError as error:
        raise click.ClickException(str(error)) from None


def _put_back(folder: Path) -> RaisingAnswer:
    try:
        return put_former_back(folder, today=today(), at=now())
    except NothingKeptError as error:
        raise click.UsageError(f"No former version of {error} is kept.") from None
