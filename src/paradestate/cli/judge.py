"""The command `judge`."""

from pathlib import Path
from typing import Unpack

import click

from paradestate.cli.finding_report import print_findings
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
from paradestate.journeys.choosing import TermsTyped, results_of, terms_asked, want_of

EPILOG = """\b
Examples:
  paradestate judge marenz --game "whole-day attack" --points 18 --plan "light tanks=2"
  paradestate judge marenz --game "whole-day attack" --plan "pioneers(flame)=1, light tanks=2"

\b
What goes with the tanks when the dice refuse them:
  paradestate judge marenz --game "whole-day attack" \\
      --plan "light tanks=2, tank squadron commander=1" --allowed "light tanks=0"
"""


@click.command(epilog=EPILOG)
@folder_argument
@terms_options
@points_option
@plan_option
@click.option(
    "--allowed",
    multiple=True,
    metavar="ENTRY=N,...",
    help="How many the dice allowed, roll after roll: 'light tanks=0'.",
)
@click.option(
    "--reserve",
    default="",
    metavar="NAME=N",
    help="What is kept back, of the force or of the plan: 'platoon=4'.",
)
@json_option
def command(
    folder: Path,
    *,
    plan: str,
    allowed: tuple[str, ...],
    reserve: str,
    as_json: bool,
    **terms: Unpack[TermsTyped],
) -> None:
    """Judge a plan of supporting troops for a game of the force in FOLDER.

    Says whether it is legal; if not, which rules it breaks and which changes would put each of
    them right. Every change that is named was judged too.
    """
    from paradestate.journeys.judge import Asked, judge

    typed, slips = terms_asked(**terms)
    results, no_results = results_of(allowed)
    kept_back, no_reserve = want_of(reserve)
    stop_for((*slips, *no_results, *no_reserve))
    asked = Asked(plan=plan, points=typed.points, allowed=results, reserve=kept_back or {})
    answer = judge(folder, today=today(), choice=typed.choice, grades=typed.grades, asked=asked)
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.judged is not None and as_json:
        from paradestate.cli.judge_json import judge_json

        print_json(judge_json(answer.judged, findings=answer.checked.findings))
    elif answer.judged is not None:
        from paradestate.cli.judge_report import print_judgement

        print_judgement(answer.judged, title=answer.checked.force.title)
    finish(stopped=answer.judged is None or not answer.judged.is_legal)
