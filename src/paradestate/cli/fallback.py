"""The command `fallback`."""

from pathlib import Path
from typing import Unpack

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import (
    finish,
    folder_argument,
    json_option,
    points_option,
    stop_for,
    terms_options,
    today,
)
from paradestate.cli.output import print_json
from paradestate.journeys.choosing import TermsTyped, terms_asked

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
    taken: str,
    refused: str,
    as_json: bool,
    **terms: Unpack[TermsTyped],
) -> None:
    """Say what to ask for first in a game of FOLDER, and what then if the dice refuse.

    By the worths in the folder, your own opinion: the best play has the greatest mean worth.
    Without --points it is said for all that the allowance may come to.
    """
    from paradestate.journeys.fallback import SoFar, best_fallback

    typed, slips = terms_asked(**terms)
    stop_for(slips)
    answer = best_fallback(
        folder,
        today=today(),
        choice=typed.choice,
        grades=typed.grades,
        points=typed.points,
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
