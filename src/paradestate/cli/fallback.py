"""The command `fallback`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import (
    finish,
    folder_argument,
    json_option,
    points_option,
    terms_options,
    today,
)
from paradestate.cli.output import print_json
from paradestate.journeys.choosing import choice_of, grades_of, number_of

EPILOG = """\b
Examples:
  paradestate fallback marenz --game "whole-day attack"
  paradestate fallback marenz --game "whole-day attack" --points 18

\b
What now, once the light tanks were refused:
  paradestate fallback marenz --game "whole-day attack" --points 18 --refused "light tanks=2"
"""


@click.command(epilog=EPILOG)
@folder_argument
@terms_options
@points_option
@click.option(
    "--taken",
    default="",
    metavar="ENTRY=N,...",
    help="What you have already; it is paid out of the points.",
)
@click.option(
    "--refused",
    default="",
    metavar="ENTRY=N,...",
    help="What you asked for in vain, and don't ask for again.",
)
@json_option
def command(
    folder: Path,
    *,
    points: str,
    taken: str,
    refused: str,
    grades: tuple[str, ...],
    as_json: bool,
    **options: str,
) -> None:
    """Say what to ask for first in a game of FOLDER, and what then if the dice refuse.

    By the worths in the folder, your own opinion: the best play has the greatest mean worth.
    Without --points it is said for all that the allowance may come to.
    """
    from paradestate.journeys.fallback import SoFar, best_fallback

    choice, findings = choice_of(**options)
    chosen, no_grades = grades_of(grades)
    left, no_points = number_of(points, of="Points")
    if slips := (*findings, *no_grades, *no_points):
        print_findings(slips, {})
        finish(stopped=True)
    answer = best_fallback(
        folder,
        today=today(),
        choice=choice,
        grades=chosen,
        points=left,
        so_far=SoFar(taken=taken, refused=refused),
    )
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.terms is not None and as_json:
        from paradestate.cli.fallback_json import fallback_json

        print_json(fallback_json(answer))
    elif answer.terms is not None:
        from paradestate.cli.fallback_report import print_fallback

        print_fallback(answer)
    finish(stopped=answer.terms is None)
