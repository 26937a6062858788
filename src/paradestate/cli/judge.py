"""The command `judge`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
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
from paradestate.journeys.choosing import choice_of, grades_of, number_of, results_of, want_of

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
    metavar="FORMATION=N",
    help="What is kept back: 'platoon=4'.",
)
@json_option
def command(
    folder: Path,
    *,
    grades: tuple[str, ...],
    points: str,
    plan: str,
    allowed: tuple[str, ...],
    reserve: str,
    as_json: bool,
    **options: str,
) -> None:
    """Judge a plan of supporting troops for a game of the force in FOLDER.

    Says whether it is legal; if not, which rules it breaks and which changes would put each of
    them right. Every change that is named was judged too.
    """
    from paradestate.journeys.judge import Asked, judge

    choice, findings = choice_of(**options)
    chosen, no_grades = grades_of(grades)
    left, no_points = number_of(points, of="Points")
    results, no_results = results_of(allowed)
    kept_back, no_reserve = want_of(reserve)
    slips = (*findings, *no_grades, *no_points, *no_results, *no_reserve)
    if slips:
        print_findings(slips, {})
        finish(stopped=True)
    asked = Asked(plan=plan, points=left, allowed=results, reserve=kept_back or {})
    answer = judge(folder, today=today(), choice=choice, grades=chosen, asked=asked)
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.judged is not None and as_json:
        from paradestate.cli.judge_json import judge_json

        print_json(judge_json(answer.judged, findings=answer.checked.findings))
    elif answer.judged is not None:
        from paradestate.cli.judge_report import print_judgement

        print_judgement(answer.judged)
    finish(stopped=answer.judged is None or not answer.judged.is_legal)
