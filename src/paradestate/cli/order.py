"""The command `order`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import choice_options, finish, folder_argument, json_option, today
from paradestate.cli.order_json import order_json
from paradestate.cli.output import print_json
from paradestate.journeys.choosing import choice_of, names_of, want_of
from paradestate.journeys.order import order

EPILOG = """\b
Examples:
  paradestate order marenz
  paradestate order marenz --want "rifleman=50, mortar crew=9, officer=4"
  paradestate order marenz --sources North --json
"""


@click.command(epilog=EPILOG)
@folder_argument
@choice_options
@click.option(
    "--want", default="", metavar="KIND=N, ...", help="Order this instead of what is lacking."
)
@click.option("--sources", default="", metavar="NAMES", help="Buy from these sources only.")
@click.option(
    "--seconds",
    type=click.FloatRange(0.1, 3600),
    default=60.0,
    show_default=True,
    help="How long the search may take.",
)
@json_option
def command(
    folder: Path, *, want: str, sources: str, seconds: float, as_json: bool, **options: str
) -> None:
    """Find the cheapest order of whole packs for what the force in FOLDER is lacking.

    Carriage, discounts, multi-buys and rates are counted to the penny, and the answer says how
    sure it is that nothing is cheaper.
    """
    choice, findings = choice_of(**options)
    wanted, more = want_of(want)
    names, yet_more = names_of(sources)
    slips = (*findings, *more, *yet_more)
    if slips:
        print_findings(slips, {})
        finish(stopped=True)
    answer = order(
        folder, today=today(), choice=choice, want=wanted, sources=names, seconds=seconds
    )
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.answer is not None and as_json:
        print_json(order_json(answer))
    elif answer.answer is not None:
        from paradestate.cli.order_report import print_order

        print_order(answer, folder=folder)
    finish(stopped=answer.answer is None)
