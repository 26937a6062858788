"""The command `forces`."""

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
from paradestate.cli.output import at_work, print_json
from paradestate.journeys.choosing import TermsTyped, number_of, terms_asked

EPILOG = """\b
Examples:
  paradestate forces marenz --game "whole-day attack"
  paradestate forces marenz --game "whole-day attack" --points 5
  paradestate forces marenz --game "whole-day attack" --points 18 --from finished --json

\b
A force for a trial game; another number draws another one:
  paradestate forces marenz --game "whole-day attack" --points 18 --at-random 1
"""


@click.command(epilog=EPILOG)
@folder_argument
@terms_options
@points_option
@click.option(
    "--from",
    "of",
    type=click.Choice(("owned", "finished")),
    default="owned",
    help="What can be fielded: all that is owned, or what is finished.",
)
@click.option(
    "--at-random",
    "seed",
    default="",
    metavar="SEED",
    help="Also draws one legal force at random; the same number draws the same force again.",
)
@json_option
def command(
    folder: Path,
    *,
    of: str,
    seed: str,
    as_json: bool,
    **terms: Unpack[TermsTyped],
) -> None:
    """Count the legal forces of supporting troops for a game of the force in FOLDER.

    How many there are with each number of points, how many of them spend all, how many can be
    fielded, and which is the best by the worths of the folder. All are listed where they are few.
    """
    from paradestate.journeys.forces import ForcesAsked, forces

    typed, slips = terms_asked(**terms)
    start, no_seed = number_of(seed, of="Seed")
    stop_for((*slips, *no_seed))
    asked = ForcesAsked(points=typed.points, finished=of == "finished", seed=start)
    with at_work("Counting forces"):
        answer = forces(
            folder, today=today(), choice=typed.choice, grades=typed.grades, asked=asked
        )
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.found is not None and as_json:
        from paradestate.cli.forces_json import forces_json

        print_json(forces_json(answer.found))
    elif answer.found is not None:
        from paradestate.cli.forces_report import print_forces

        print_forces(answer.found, title=answer.checked.force.title)
    finish(stopped=answer.found is None)
