"""The command `sheets`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import (
    choice_options,
    finish,
    folder_argument,
    json_option,
    now,
    plan_option,
    stop_for,
    today,
)
from paradestate.cli.output import at_work, print_json
from paradestate.core.imposition.paper_size import Stock
from paradestate.core.sentence.wording import several
from paradestate.journeys.choosing import choice_of

EPILOG = """\b
Examples:
  paradestate sheets marenz --out papers
  paradestate sheets marenz --out papers --only labels --paper letter
  paradestate sheets marenz --out papers --scale 96.8             what to print at
  paradestate sheets marenz --out papers --scale 96.8,97.2 --correct
"""


@click.command(epilog=EPILOG)
@folder_argument
@click.option(
    "--out",
    required=True,
    type=click.Path(file_okay=False, path_type=Path),
    help="The folder for the papers.",
)
@click.option(
    "--paper",
    type=click.Choice([each.value for each in Stock]),
    default=Stock.A4.value,
    show_default=True,
    help="The paper in your printer.",
)
@click.option("--only", multiple=True, metavar="NAME", help="Print this paper only, or several.")
@click.option(
    "--scale",
    default="",
    metavar="ACROSS[,DOWN]",
    help="What the 100 mm lines measure on a page of yours: 96.8, or 96.8,97.2.",
)
@click.option("--correct", is_flag=True, help="Draw the sheets so that this is made good.")
@choice_options
@plan_option
@json_option
def command(
    folder: Path,
    *,
    out: Path,
    only: tuple[str, ...],
    correct: bool,
    plan: str,
    as_json: bool,
    paper: str,
    scale: str,
    **options: str,
) -> None:
    """Print the papers of the force in FOLDER to exact size, as PDF files.

    Each page bears a line of 100 mm across and one down, or one where nothing is cut out: measure
    them on a page that was printed. The same force gives the same files on the same day.
    """
    from paradestate.journeys.paper_kind import Asked
    from paradestate.journeys.sheet_layout import layout_of
    from paradestate.journeys.sheets import sheets, write_sheets
    from paradestate.journeys.spreadsheet import CannotWriteError

    choice, slips = choice_of(**options)
    layout, more = layout_of(paper=paper, scale=scale)
    stop_for((*slips, *more))
    asked = Asked(layout=layout, only=only, plan=plan, is_corrected=correct)
    with at_work("Setting the papers"):
        answer = sheets(folder, today=today(), choice=choice, asked=asked)
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.sheets is None:
        finish(stopped=True)
        return
    try:
        written = write_sheets(answer.sheets, out=out, at=now())
    except CannotWriteError as error:
        raise click.UsageError(str(error)) from None
    if as_json:
        print_json(
            {
                "files": [
                    {
                        "path": str(each.path),
                        "name": each.sheet.name,
                        "pages": each.sheet.printed.pages,
                        "sha256": each.sheet.sha256,
                    }
                    for each in written
                ]
            }
        )
    else:
        for each in written:
            click.echo(f"Written: {each.path} ({several(each.sheet.printed.pages, 'page')})")
    finish(stopped=not written)
