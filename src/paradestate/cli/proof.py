"""The command `proof`."""

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
from paradestate.journeys.choosing import TermsTyped, terms_asked

EPILOG = """\b
Examples:
  paradestate proof marenz
  paradestate proof marenz --game "whole-day attack"
  paradestate proof marenz --game "whole-day attack" --points 18 --json
"""


@click.command(epilog=EPILOG)
@folder_argument
@terms_options
@points_option
@json_option
def command(
    folder: Path,
    *,
    as_json: bool,
    **terms: Unpack[TermsTyped],
) -> None:
    """Prove the list of supporting troops in FOLDER before others play by it.

    Says which prices contradict one another, which entries can never be taken, which are never or
    always in a best force, which another makes needless, and which points nobody can spend.
    Without --game all games of the folder are looked at.
    """
    from paradestate.journeys.proof import proof_of_list

    typed, slips = terms_asked(**terms)
    stop_for(slips)
    with at_work("Proving the list"):
        answer = proof_of_list(
            folder, today=today(), choice=typed.choice, grades=typed.grades, points=typed.points
        )
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.proof is not None and as_json:
        from paradestate.cli.proof_json import proof_json

        print_json(proof_json(answer.proof))
    elif answer.proof is not None:
        from paradestate.cli.proof_report import print_proof

        print_proof(answer.proof, title=answer.checked.force.title)
    finish(stopped=answer.proof is None)
