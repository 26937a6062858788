"""The command `bench`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import (
    choice_options,
    finish,
    folder_argument,
    json_option,
    stop_for,
    today,
)
from paradestate.cli.output import at_work, print_json
from paradestate.journeys.choosing import choice_of

EPILOG = """\b
Examples:
  paradestate bench marenz
  paradestate bench marenz --set company=3
  paradestate bench marenz --by-kind
  paradestate bench marenz --json
"""


@click.command(epilog=EPILOG)
@folder_argument
@choice_options
@click.option("--by-kind", is_flag=True, help="Show the same work kind by kind instead.")
@json_option
def command(folder: Path, *, by_kind: bool, as_json: bool, **options: str) -> None:
    """Say in which order to work on the stands of FOLDER, so that a force is playable soonest.

    The ladder has a rung for each batch, and a thick one where a milestone is reached: the
    smallest legal force, the whole one, games with numbers or a plan, and what you call playable.
    """
    from paradestate.journeys.bench import order_of_work

    choice, findings = choice_of(**options)
    stop_for(findings)
    with at_work("Looking for the best order of work"):
        answer = order_of_work(folder, today=today(), choice=choice)
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.order is not None and as_json:
        from paradestate.cli.bench_json import bench_json

        print_json(bench_json(answer.order))
    elif answer.order is not None:
        from paradestate.cli.bench_report import print_bench

        print_bench(answer.order, title=answer.checked.force.title, is_by_kind=by_kind)
    finish(stopped=answer.order is None)
