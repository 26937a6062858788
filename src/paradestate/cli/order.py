"""The command `order`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.interruption import stopping_softly
from paradestate.cli.option import choice_options, finish, folder_argument, json_option, today
from paradestate.cli.order_json import order_json
from paradestate.cli.order_progress import shown_progress
from paradestate.cli.output import print_json
from paradestate.journeys.choosing import amount_of, choice_of, names_of, want_of
from paradestate.journeys.order import Request, Search, order

EPILOG = """\b
Examples:
  paradestate order marenz
  paradestate order marenz --want "rifleman=50, mortar crew=9, officer=4"
  paradestate order marenz --stand-ins --fewest-left-over
  paradestate order marenz --sources North --json
"""


@click.command(epilog=EPILOG)
@folder_argument
@choice_options
@click.option(
    "--want", default="", metavar="KIND=N, ...", help="Order this instead of what is lacking."
)
@click.option("--sources", default="", metavar="NAMES", help="Buy from these sources only.")
@click.option("--stand-ins", is_flag=True, help="Let bought figures stand in for other kinds too.")
@click.option(
    "--fewest-left-over", is_flag=True, help="Leave as little over as can be; then cheapest."
)
@click.option("--one-parcel", is_flag=True, help="Buy everything from one source.")
@click.option("--soonest", is_flag=True, help="Have it as soon as can be; then cheapest.")
@click.option(
    "--within",
    default="",
    metavar="MONEY",
    help="Stop at an order proved at most so much above the least: --within 5.",
)
@click.option(
    "--seconds",
    type=click.FloatRange(0.1, 3600),
    default=60.0,
    show_default=True,
    help="How long the search may take.",
)
@json_option
def command(
    folder: Path,
    *,
    want: str,
    sources: str,
    stand_ins: bool,
    fewest_left_over: bool,
    one_parcel: bool,
    soonest: bool,
    within: str,
    seconds: float,
    as_json: bool,
    **options: str,
) -> None:
    """Find the cheapest order of whole packs for what the force in FOLDER is lacking.

    Carriage, discounts, multi-buys and rates are counted to the penny, owned figures are used
    first, and the answer says how sure it is that nothing is cheaper. Ctrl-C keeps the best so far.
    """
    choice, findings = choice_of(**options)
    wanted, more = want_of(want)
    names, yet_more = names_of(sources)
    enough, last = amount_of(within)
    slips = (*findings, *more, *yet_more, *last)
    if slips:
        print_findings(slips, {})
        finish(stopped=True)
    request = Request(
        want=wanted,
        sources=names,
        stand_ins=stand_ins,
        fewest_left_over=fewest_left_over,
        one_parcel=one_parcel,
        soonest=soonest,
        within=enough,
    )
    with stopping_softly() as stop, shown_progress() as progress:
        search = Search(seconds=seconds, stop=stop, progress=progress)
        answer = order(folder, today=today(), choice=choice, request=request, search=search)
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.answer is not None and as_json:
        print_json(order_json(answer))
    elif answer.answer is not None:
        from paradestate.cli.order_report import print_order

        print_order(answer, folder=folder)
    finish(stopped=answer.answer is None)
