"""The command `trays`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import (
    choice_options,
    finish,
    folder_argument,
    json_option,
    plan_option,
    stop_for,
    today,
)
from paradestate.cli.output import print_json
from paradestate.journeys.choosing import choice_of

EPILOG = """\b
Examples:
  paradestate trays marenz
  paradestate trays marenz --set company=3 --finished
  paradestate trays marenz --game "whole-day attack" --plan "machine-gun platoon=2"
"""


@click.command(epilog=EPILOG)
@folder_argument
@choice_options
@plan_option
@click.option(
    "--finished", is_flag=True, help="Only stands that are finished, and what is printed."
)
@click.option(
    "--anew", is_flag=True, help="Lay all of it out anew, whatever arrangement is kept by hand."
)
@json_option
def command(
    folder: Path,
    *,
    numbers: tuple[str, ...],
    date: str,
    theatre: str | None,
    wished: str,
    game: str,
    plan: str,
    finished: bool,
    anew: bool,
    as_json: bool,
) -> None:
    """Lay every stand of FOLDER into its tray, and print the packing list in the same order.

    In the fewest trays, companies together, in rows that can be read. With a game the supporting
    troops of its plan too.
    """
    from paradestate.cli.trays_report import print_trays
    from paradestate.journeys.trays import AskedToPack, trays

    choice, slips = choice_of(numbers=numbers, date=date, theatre=theatre, wished=wished, game=game)
    stop_for(slips)
    asked = AskedToPack(choice=choice, plan=plan, only_finished=finished, anew=anew)
    answer = trays(folder, today=today(), asked=asked)
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.plan is not None and as_json:
        from paradestate.cli.trays_json import trays_json

        print_json(trays_json(answer))
    elif answer.plan is not None:
        print_trays(answer.plan, is_whole=answer.is_whole)
    finish(stopped=answer.plan is None or answer.is_barred)
