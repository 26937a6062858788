"""The command `bench`."""

from pathlib import Path

import click

from paradestate.cli.bench_option import Shown, bench_options, refuse_calendar, written
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
  paradestate bench marenz --keep --calendar marenz.ics
  paradestate bench marenz --supplies --up-to "smallest legal force"
  paradestate bench marenz --cards
  paradestate bench marenz --json
"""


@click.command(epilog=EPILOG)
@folder_argument
@choice_options
@bench_options
@json_option
def command(
    folder: Path,
    *,
    by_kind: bool,
    supplies: bool,
    cards: bool,
    up_to: str,
    keep: bool,
    calendar: Path | None,
    as_json: bool,
    **options: str,
) -> None:
    """Say in which order to work on the stands of FOLDER, so that a force is playable soonest.

    The ladder has a rung for each batch, and a thick one where a milestone is reached: the
    smallest legal force, the whole one, games with numbers or a plan, and what you call playable.
    Each has three dates, from what was logged and from your own week.
    """
    from paradestate.journeys.bench.bench import order_of_work

    if keep and any(options.values()):
        raise click.UsageError(
            "--keep is for the force as the folder raises it; leave out what chooses another."
        )
    shown = Shown(by_kind=by_kind, supplies=supplies, cards=cards, up_to=up_to)
    shown.refuse_together(writes=keep or calendar is not None)
    choice, findings = choice_of(**options)
    stop_for(findings)
    refuse_calendar(calendar)
    if shown.is_paper:
        from paradestate.cli.bench_papers import show_papers

        finish(stopped=not show_papers(folder, choice, shown=shown, as_json=as_json))
        return
    day = today()
    with at_work("Looking for the best order of work"):
        answer = order_of_work(folder, today=day, choice=choice)
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.order is None:
        finish(stopped=True)
        return
    done = written(folder, answer, today=day, keep=keep, calendar=calendar)
    if as_json:
        from paradestate.cli.bench_json import bench_json

        print_json({**bench_json(answer.order, today=day), **done.document})
    else:
        from paradestate.cli.bench_report import print_bench

        print_bench(answer.order, title=answer.checked.force.title, is_by_kind=by_kind, today=day)
        for line in done.lines:
            click.echo(line)
    finish(stopped=done.is_refused)
