"""The command `attach`."""

from pathlib import Path
from typing import Unpack

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import (
    finish,
    folder_argument,
    json_option,
    plan_option,
    stop_for,
    terms_options,
    today,
)
from paradestate.cli.output import print_json
from paradestate.journeys.choosing import TermsTyped, terms_asked

EPILOG = """\b
Examples:
  paradestate attach marenz --game "whole-day attack" --plan "machine-gun platoon=3"
  paradestate attach marenz --game "whole-day attack" --plan "pioneers(flame)=2" --must all

\b
What places are worth to you, in a sheet to fill in:
  paradestate attach marenz --game "whole-day attack" --plan "pioneers(flame)=2" --form worths.csv
  paradestate attach marenz --game "whole-day attack" --plan "pioneers(flame)=2" \\
      --worths worths.csv
"""


@click.command(epilog=EPILOG)
@folder_argument
@terms_options
@plan_option
@click.option(
    "--worths",
    type=click.Path(exists=True, dir_okay=False, path_type=Path),
    metavar="FILE.csv",
    help="What each place is worth: rows of section, host and worth.",
)
@click.option(
    "--must",
    multiple=True,
    metavar="ENTRY|all",
    help="An entry whose sections may not stay independent.",
)
@click.option(
    "--form",
    type=click.Path(path_type=Path),
    metavar="FILE.csv",
    help="Write a row for each section and place to fill in, and attach nothing.",
)
@json_option
def command(
    folder: Path,
    *,
    plan: str,
    worths: Path | None,
    must: tuple[str, ...],
    form: Path | None,
    as_json: bool,
    **terms: Unpack[TermsTyped],
) -> None:
    """Give each weapon section of a plan of FOLDER the host where it is worth most.

    A place is worth 1 and none at all 0, unless a file says otherwise. Without --plan it is the
    plan that the game has in the folder.
    """
    from paradestate.cli.attach_report import print_attachment, print_form
    from paradestate.journeys.attach import AskedToAttach, attach, write_worths
    from paradestate.journeys.spreadsheet import CannotWriteError

    typed, slips = terms_asked(**terms)
    stop_for(slips)
    asked = AskedToAttach(plan=plan, worths=worths, must=must)
    answer = attach(folder, today=today(), choice=typed.choice, grades=typed.grades, asked=asked)
    print_findings(answer.checked.findings, answer.checked.texts)
    if form is not None and answer.question is not None:
        try:
            write_worths(form, answer.question)
        except CannotWriteError as error:
            raise click.UsageError(str(error)) from None
        print_form(form, as_json=as_json)
        finish(stopped=False)
    if answer.best is not None and as_json:
        from paradestate.cli.attach_json import attach_json

        print_json(attach_json(answer))
    elif answer.best is not None:
        print_attachment(answer)
    finish(stopped=answer.best is None)
