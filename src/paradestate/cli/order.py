"""The command `order`."""

from pathlib import Path
from typing import Any

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.interruption import stopping_softly
from paradestate.cli.option import choice_options, finish, folder_argument, json_option, today
from paradestate.cli.order_option import asked, order_options
from paradestate.cli.order_progress import shown_progress
from paradestate.cli.output import print_json
from paradestate.journeys.order import Search, order
from paradestate.journeys.order_document import order_document

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
@order_options
@json_option
def command(
    folder: Path,
    *,
    seconds: float,
    as_json: bool,
    **options: Any,  # noqa: ANN401 - each goes on by name to where it has its type
) -> None:
    """Find the cheapest order of whole packs for what the force in FOLDER is lacking.

    Carriage, discounts, multi-buys and rates are counted to the penny, owned figures are used
    first, and the answer says how sure it is that nothing is cheaper. Ctrl-C keeps the best so far.
    """
    choice, request, slips = asked(**options)
    if slips:
        print_findings(slips, {})
        finish(stopped=True)
    with stopping_softly() as stop, shown_progress() as progress:
        search = Search(seconds=seconds, stop=stop, progress=progress)
        answer = order(folder, today=today(), choice=choice, request=request, search=search)
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.answer is not None and as_json:
        print_json(order_document(answer))
    elif answer.answer is not None:
        from paradestate.cli.order_report import print_order

        print_order(answer, folder=folder)
    finish(stopped=answer.answer is None)
