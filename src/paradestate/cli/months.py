"""The command `months`."""

from pathlib import Path
from typing import Any

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.interruption import stopping_softly
from paradestate.cli.months_json import months_json
from paradestate.cli.months_option import plan_options, terms_of
from paradestate.cli.option import choice_options, finish, folder_argument, json_option, today
from paradestate.cli.order_option import asked, order_options
from paradestate.cli.order_progress import shown_progress
from paradestate.cli.output import print_json
from paradestate.journeys.choosing import amounts_of
from paradestate.journeys.months import months_of_named, months_of_order
from paradestate.journeys.order import Search

EPILOG = """\b
Examples:
  paradestate months marenz --limit 30
  paradestate months marenz --limit 30 --carried 10 --needed South=2027-03
  paradestate months marenz --limit 30 --order main=48.50 --order lorries=24 --order scenery=18
  paradestate months marenz --limit 30 --sources North --json
  paradestate months marenz --limit 30 --bench
"""


@click.command(epilog=EPILOG)
@folder_argument
@plan_options
@choice_options
@order_options
@json_option
def command(
    folder: Path,
    *,
    orders: tuple[str, ...],
    seconds: float,
    as_json: bool,
    limit: str,
    carried: str,
    needed: tuple[str, ...],
    begins: str,
    band: str,
    at_bench: bool,
    **options: Any,  # noqa: ANN401 - each goes on by name to where it has its type
) -> None:
    """Say in which month each parcel of the cheapest order for FOLDER can be bought.

    What is spent so far is never above what was put aside so far; what is needed by a day is bought
    in time for it where that can be, and the rest so that figures are waited for as little as can
    be. The month's limit is --limit, or `a month` under `aim` in the folder. With --bench what each
    force to be played with lacks is ordered in turn, so that it can be played soonest and the bench
    has work.
    """
    if orders and any(options.values()):
        raise click.UsageError(
            "--order says what is bought; leave out the options that choose an order."
        )
    if at_bench and (orders or needed or band or options["want"] or options["stand_ins"]):
        raise click.UsageError(
            "--bench says what is bought, and when it is needed; leave out --order, --needed, "
            "--band, --want and --stand-ins."
        )
    terms, more = terms_of(limit=limit, carried=carried, needed=needed, begins=begins, band=band)
    named, yet_more = amounts_of(orders)
    choice, request, slips = asked(**options)
    if slips or more or yet_more:
        print_findings((*slips, *more, *yet_more), {})
        finish(stopped=True)
    if at_bench:
        from paradestate.cli.bench_months import show

        show(folder, choice=choice, request=request, seconds=seconds, terms=terms, as_json=as_json)
        return
    if orders:
        answer = months_of_named(folder, today=today(), orders=named, terms=terms)
    else:
        with stopping_softly() as stop, shown_progress() as progress:
            search = Search(seconds=seconds, stop=stop, progress=progress)
            answer = months_of_order(
                folder, today=today(), choice=choice, request=request, search=search, terms=terms
            )
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.plan is not None and as_json:
        print_json(months_json(answer))
    elif answer.plan is not None:
        from paradestate.cli.months_report import print_months

        print_months(answer, folder=folder)
    finish(stopped=answer.plan is None)
