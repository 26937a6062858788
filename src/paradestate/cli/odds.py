"""The command `odds`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.odds_json import odds_json
from paradestate.cli.option import (
    finish,
    folder_argument,
    json_option,
    plan_option,
    points_option,
    terms_options,
    today,
)
from paradestate.cli.output import print_json
from paradestate.journeys.choosing import choice_of, grades_of, number_of
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
    points: str,
    plan: str,
    as_json: bool,
    grades: tuple[str, ...],
    **options: str,
) -> None:
    """Say the odds of a plan of supporting troops in a game of FOLDER.

    How likely the points suffice, how likely all of it comes, what else may turn up, and in which
    order to ask. Without --plan it is the plan that the game has in the folder.
    """
    choice, findings = choice_of(**options)
    chosen_grades, more = grades_of(grades)
    left, yet_more = number_of(points, of="points")
    if findings or more or yet_more:
        print_findings((*findings, *more, *yet_more), {})
        finish(stopped=True)
    answer = odds(
        folder, today=today(), choice=choice, grades=chosen_grades, plan=plan, points=left
    )
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.odds is not None and as_json:
        print_json(odds_json(answer))
    elif answer.odds is not None:
        from paradestate.cli.odds_report import print_odds

        print_odds(answer)
    finish(stopped=answer.odds is None)
