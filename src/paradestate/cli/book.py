"""The command `book`."""

from pathlib import Path

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import finish, folder_argument, json_option, stop_for, today
from paradestate.cli.output import print_json

EPILOG = """\b
Examples:
  paradestate book marenz
  paradestate book marenz --from 2026-12-01
"""


@click.command(epilog=EPILOG)
@folder_argument
@click.option("--from", "since", default="", metavar="DAY", help="From this day on: 2026-12-01.")
@json_option
def command(folder: Path, *, since: str, as_json: bool) -> None:
    """Say whether all games booked in FOLDER can be played, what is short, and the remedies.

    Bookings stand in the section `club` of the folder. What is lent or in repair isn't given out.
    """
    from paradestate.cli.book_json import book_json
    from paradestate.cli.book_report import print_bookings
    from paradestate.journeys.book import bookings
    from paradestate.journeys.choosing import day_of

    day, slips = day_of(since)
    stop_for(slips)
    answer = bookings(folder, today=today(), since=day)
    print_findings(answer.findings, answer.texts)
    if answer.stock is not None and as_json:
        print_json(book_json(answer))
    elif answer.stock is not None:
        print_bookings(answer)
    finish(stopped=answer.stock is None)
