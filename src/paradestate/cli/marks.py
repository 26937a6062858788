"""The command `marks`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.marks_json import marks_json
from paradestate.cli.marks_report import print_marks
from paradestate.cli.option import (
    choice_options,
    finish,
    folder_argument,
    json_option,
    now,
    stop_for,
    today,
)
from paradestate.cli.output import print_json
from paradestate.journeys.choosing import choice_of
from paradestate.journeys.colouring import ColouringAnswer, colour_anew
from paradestate.journeys.marks import AskedMarks, Proposal, marks
from paradestate.text.error import EditError

EPILOG = """\b
Examples:
  paradestate marks marenz
  paradestate marks marenz --choose 4
  paradestate marks marenz --choose 3 --from "brick red, sky blue, bone=E3DAC9, black"
  paradestate marks marenz --read "yellow, three bars"
"""


@click.command(epilog=EPILOG)
@folder_argument
@choice_options
@click.option(
    "--choose",
    type=click.IntRange(min=1),
    metavar="N",
    help="Choose so many colours that can be told apart best.",
)
@click.option(
    "--from",
    "at_hand",
    default="",
    metavar="NAMES",
    help="Colours to choose from: 'brown, bone=E3DAC9'; else yours and nine usual ones.",
)
@click.option("--write", is_flag=True, help="Write the colours chosen into the folder.")
@click.option(
    "--read",
    default="",
    metavar="MARK",
    help="Say whose mark it is: 'yellow, three bars'.",
)
@json_option
def command(
    folder: Path,
    *,
    choose: int | None,
    at_hand: str,
    write: bool,
    read: str,
    as_json: bool,
    **options: str,
) -> None:
    """Say how well the marks of FOLDER are told apart, and which stand bears which.

    Colours are compared by CIEDE2000 as most people see them and as red-weak, green-weak and
    blue-weak viewers do; how alike they are in grey is told beside it.
    """
    if write and choose is None:
        raise click.UsageError("--write writes what --choose N has chosen: name both.")
    choice, slips = choice_of(**options)
    stop_for(slips)
    asked = AskedMarks(choose=choose, at_hand=tuple(at_hand.split(",")), read=read)
    answer = marks(folder, today=today(), choice=choice, asked=asked)
    print_findings(answer.checked.findings, answer.checked.texts)
    written = _written(folder, answer.proposal) if write and answer.proposal else None
    if answer.marked is not None and as_json:
        print_json(marks_json(answer, written=written))
    elif answer.marked is not None:
        print_marks(answer, written=written)
    finish(stopped=answer.checked.is_stopped)


def _written(folder: Path, proposal: Proposal) -> ColouringAnswer:
    """Writes the colours chosen."""
    try:
        return colour_anew(folder, today=today(), at=now(), after=proposal.after)
    except EditError as error:
        raise click.ClickException(str(error)) from None
