"""The command `odds`."""

from pathlib import Path
from typing import Unpack

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.odds_json import odds_json
from paradestate.cli.option import (
    finish,
    folder_argument,
    json_option,
    plan_option,
    points_option,
    stop_for,
    terms_options,
    today,
)
from paradestate.cli.output import print_json
from paradestate.journeys.choosing import TermsTyped, terms_asked
from paradestate.journeys.odds import odds

EPILOG = """\b
Examples:
  paradestate odds marenz --game "whole-day attack"
  paradestate odds marenz --game "whole-day attack" --plan "light tanks=2, field battery=1"
  paradestate odds marenz --game "whole-day attack" --plan "anti-tank guns=2" --points 18 --json
"""


@click.command(epilog=EPILOG)
@folder_argument
@terms_options
@points_option
@plan_option
@json_option
def command(
    folder: Path,
    *,
    plan: str,
    as_json: bool,
    **terms: Unpack[TermsTyped],
) -> None:
    """Say the odds of a plan of supporting troops in a game of FOLDER.

    How likely the points suffice, how likely all of it comes, what else may turn up, and in which
    order to ask. Without --plan it is the plan that the game has in the folder.
    """
    typed, slips = terms_asked(**terms)
    stop_for(slips)
    answer = odds(
        folder,
        today=today(),
        choice=typed.choice,
        grades=typed.grades,
        plan=plan,
        points=typed.points,
    )
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.odds is not None and as_json:
        print_json(odds_json(answer))
    elif answer.odds is not None:
        from paradestate.cli.odds_report import print_odds

        print_odds(answer)
    finish(stopped=answer.odds is None)
