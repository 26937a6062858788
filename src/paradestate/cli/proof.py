"""The command `proof`."""

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
from paradestate.cli.output import at_work, print_json
from paradestate.journeys.choosing import choice_of, grades_of, number_of

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
    grades: tuple[str, ...],
    points: str,
    as_json: bool,
    **options: str,
) -> None:
    """Prove the list of supporting troops in FOLDER before others play by it.

    Says which prices contradict one another, which entries can never be taken, which are never or
    always in a best force, which another makes needless, and which points nobody can spend.
    Without --game all games of the folder are looked at.
    """
    from paradestate.journeys.proof import proof_of_list

    choice, findings = choice_of(**options)
    chosen, no_grades = grades_of(grades)
    left, no_points = number_of(points, of="Points")
    slips = (*findings, *no_grades, *no_points)
    if slips:
        print_findings(slips, {})
        finish(stopped=True)
    with at_work("Proving the list"):
        answer = proof_of_list(folder, today=today(), choice=choice, grades=chosen, points=left)
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.proof is not None and as_json:
        from paradestate.cli.proof_json import proof_json

        print_json(proof_json(answer.proof))
    elif answer.proof is not None:
        from paradestate.cli.proof_report import print_proof

        print_proof(answer.proof, title=answer.checked.force.title)
    finish(stopped=answer.proof is None)
