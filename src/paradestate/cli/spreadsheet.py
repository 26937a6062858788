"""The command `spreadsheet`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import finish, folder_argument, json_option, today
from paradestate.cli.output import print_json
from paradestate.journeys.spreadsheet import CannotWriteError, write_form, write_spreadsheet
from paradestate.text.spreadsheet.layout import LAYOUTS

EPILOG = """\b
Examples:
  paradestate spreadsheet marenz marenz.xlsx
  paradestate spreadsheet marenz packs.csv
  paradestate spreadsheet marenz prices.ods --only sources --only packs
  paradestate spreadsheet marenz list.xlsx --form      to type a list from your own book
"""


@click.command(epilog=EPILOG)
@folder_argument
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "--only", multiple=True, type=click.Choice(tuple(LAYOUTS)), help="Write these sheets only."
)
@click.option("--form", is_flag=True, help="Write an empty form for supporting troops instead.")
@json_option
def command(folder: Path, file: Path, *, only: tuple[str, ...], form: bool, as_json: bool) -> None:
    """Write stock, sources, packs and supporting troops of the force in FOLDER to FILE.

    FILE ends in .xlsx, .ods or .csv; a .csv file holds the one sheet that it is called after. Put
    the file into the folder, and take what it holds out of the YAML files, to read it from there.
    """
    try:
        if form:
            answer = write_form(folder, file, today=today())
        else:
            answer = write_spreadsheet(folder, file, today=today(), only=only)
    except CannotWriteError as error:
        raise click.UsageError(str(error)) from None
    print_findings(answer.checked.findings, answer.checked.texts)
    if as_json:
        print_json({"file": str(file), "sheets": list(answer.sheets)})
    elif answer.sheets:
        click.echo(f"Written: {file} ({', '.join(answer.sheets)})")
        click.echo(
            f"Fill in a row for each entry and move the file into {folder};\n"
            f"then: paradestate read-back {folder} --only 'supporting troops'"
            if form
            else f"To use it, move it into {folder} and take those sections out of the YAML "
            "files:\na name may stand in one place only."
        )
    finish(stopped=not answer.sheets)
