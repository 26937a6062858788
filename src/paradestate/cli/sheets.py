"""The command `sheets`."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar, Unpack

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import (
    GAME,
    finish,
    folder_argument,
    grade_option,
    json_option,
    now,
    plan_option,
    points_option,
    raised_options,
    stop_for,
    today,
)
from paradestate.cli.output import at_work, print_json
from paradestate.core.imposition.layout import TurnEdge
from paradestate.core.imposition.paper_size import Stock
from paradestate.core.sentence.cross_check import Tick
from paradestate.core.sentence.wording import capital, several
from paradestate.journeys.choosing import grades_of, number_of, want_of
from paradestate.journeys.paper.sheet_layout import SheetsTyped, asked_of
from paradestate.journeys.spreadsheet import CannotWriteError

if TYPE_CHECKING:  # the typesetter is loaded when it is needed
    from paradestate.journeys.paper.sheet_files import Written

F = TypeVar("F", bound=Callable[..., Any])

EPILOG = """\b
Examples:
  paradestate sheets marenz --out papers
  paradestate sheets marenz --out papers --only labels --paper letter
  paradestate sheets marenz --out papers --game "whole-day attack" --plan "light tanks=2"
  paradestate sheets marenz --out papers --played

\b
The 100 mm line of a printed page measures 96.8: what to print at, or sheets that make it good:
  paradestate sheets marenz --out papers --scale 96.8
  paradestate sheets marenz --out papers --scale 96.8,97.2 --correct
"""

PAPERS = click.Choice([each.value for each in Stock])

OUT = click.option(
    "--out",
    required=True,
    type=click.Path(file_okay=False, path_type=Path),
    help="The folder for the papers.",
)

LAYOUT = (
    click.option(
        "--paper",
        type=PAPERS,
        default=Stock.A4.value,
        show_default=True,
        help="The paper that they are laid out for.",
    ),
    click.option("--loaded", type=PAPERS, help="The paper in the printer, if it is another."),
    click.option(
        "--scale",
        default="",
        metavar="ACROSS[,DOWN]",
        help="What the 100 mm lines measure on a page of yours: 96.8, or 96.8,97.2.",
    ),
    click.option(
        "--bleed", default="", metavar="LENGTH", help="How far colour runs over the cut: 1 mm."
    ),
    click.option(
        "--shift", default="", metavar="LENGTH", help="How far second sides lie off: 1 mm."
    ),
    click.option(
        "--turn",
        type=click.Choice([each.value for each in TurnEdge]),
        default=TurnEdge.LONG.value,
        show_default=True,
        help="The edge about which two-sided pages turn.",
    ),
    click.option(
        "--read-from", default="", metavar="LENGTH", help="From where they are read: 60 cm."
    ),
    click.option(
        "--dummies", default="", metavar="N", help="Markers that hide nobody; else one a marker."
    ),
)


def layout_options(command: F) -> F:
    """The options that decide how sheets are laid out."""
    for option in reversed(LAYOUT):
        command = option(command)
    return command


OF_A_GAME = (
    grade_option,
    points_option,
    click.option(
        "--reserve",
        default="",
        metavar="NAME=N",
        help="What is kept back, of the force or of the plan: 'platoon=4'.",
    ),
    click.option(
        "--revealed",
        multiple=True,
        metavar="NAME",
        help="A stand or entry that the opponent has found out: it stands on his sheet.",
    ),
    click.option(
        "--other",
        type=click.Path(exists=True, file_okay=False, path_type=Path),
        help="The folder of the other side, for the umpire's sheet.",
    ),
)


def game_options(command: F) -> F:
    """The options that decide what is told to whom in a game."""
    for option in reversed(OF_A_GAME):
        command = option(command)
    return command


WRITTEN_DOWN = (
    click.option(
        "--played",
        is_flag=True,
        help="The game that was written down with play, the newest that goes on: it says what "
        "was taken, the reserve, the points and the grades.",
    ),
    click.option("--of", default="", metavar="ID", help="Another game that was written down."),
)


def written_down_options(command: F) -> F:
    """The options for a game that says all of it itself."""
    for option in reversed(WRITTEN_DOWN):
        command = option(command)
    return command


@click.command(epilog=EPILOG)
@folder_argument
@OUT
@click.option("--only", multiple=True, metavar="NAME", help="This paper only, or several.")
@layout_options
@click.option("--correct", is_flag=True, help="Draw the sheets so that --scale is made good.")
@raised_options
@GAME
@plan_option
@game_options
@written_down_options
@json_option
def command(
    folder: Path,
    *,
    out: Path,
    only: tuple[str, ...],
    correct: bool,
    plan: str,
    grades: tuple[str, ...],
    points: str,
    reserve: str,
    revealed: tuple[str, ...],
    other: Path | None,
    played: bool,
    of: str,
    as_json: bool,
    **typed: Unpack[SheetsTyped],
) -> None:
    """Print the papers of the force in FOLDER to exact size, as PDF files.

    Each page bears a line of 100 mm, to be measured once it is printed. The same force gives the
    same files on the same day. A paper that was made before is replaced, and kept.
    """
    from paradestate.journeys.paper.sheet_files import write_sheets
    from paradestate.journeys.paper.sheets import sheets

    choice, asked, slips = asked_of(typed)
    left, no_points = number_of(points, of="points")
    kept_back, no_reserve = want_of(reserve)
    of_grades, no_grades = grades_of(grades)
    stop_for((*slips, *no_points, *no_reserve, *no_grades))
    asked = replace(
        asked,
        only=only,
        plan=plan,
        is_corrected=correct,
        grades=of_grades,
        points=left,
        reserve=kept_back or {},
        revealed=revealed,
        other=other,
        of=of if played or of else None,
    )
    with at_work("Setting the papers"):
        answer = sheets(folder, today=today(), choice=choice, asked=asked)
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.sheets is None:
        finish(stopped=True)
    try:
        written = write_sheets(answer.sheets or (), out=out, at=now())
    except CannotWriteError as error:
        raise click.UsageError(str(error)) from None
    if as_json:
        checks = [{"words": tick.words, "holds": tick.holds} for tick in answer.ticks]
        print_json({"files": [_file(each) for each in written], "checks": checks})
    else:
        _print(written, ticks=answer.ticks)
    finish(stopped=not written)


def _print(written: "tuple[Written, ...]", *, ticks: tuple[Tick, ...]) -> None:
    for each in written:
        click.echo(f"Written: {each.path} ({several(each.sheet.printed.pages, 'page')})")
    for tick in ticks:
        click.echo(
            f"{capital(tick.words)}: {'as it should be' if tick.holds else 'NOT AS IT SHOULD BE'}."
        )
    if not written:
        click.echo("There is nothing to print.")


def _file(written: "Written") -> dict[str, object]:
    return {
        "path": str(written.path),
        "name": written.sheet.name,
        "pages": written.sheet.printed.pages,
        "sha256": written.sheet.sha256,
        "replaced": None if written.former is None else str(written.former),
    }
