"""The command `sweep`."""

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Unpack

import click
from rich.console import Console

from paradestate.cli.finding_report import print_findings
from paradestate.cli.interruption import stopping_softly
from paradestate.cli.option import (
    FOLDER,
    finish,
    json_option,
    points_option,
    stop_for,
    terms_options,
    today,
)
from paradestate.cli.output import print_json
from paradestate.journeys.amending import Amending, ListAsked
from paradestate.journeys.choosing import TermsTyped, terms_asked

EPILOG = """\b
Examples:
  paradestate sweep marenz --price "anti-tank guns(1)=3-6"
  paradestate sweep marenz --price "light tanks(2)=4-7" --limit "light tanks=1-2" --points 10
  paradestate sweep marenz kelmar --worth "observer=1-5" --workers 2 --json
  paradestate sweep marenz --price "pioneers=2-4" --on tcp://192.0.2.7:8786
"""


@click.command(epilog=EPILOG)
@click.argument("folders", type=FOLDER, nargs=-1, required=True, metavar="FOLDER...")
@terms_options
@points_option
@click.option(
    "--price", "prices", multiple=True, metavar="ENTRY(N)=A-B", help="Prices: one, or a range."
)
@click.option("--limit", "limits", multiple=True, metavar="ENTRY=A-B|any", help="Limits.")
@click.option("--worth", "worths", multiple=True, metavar="ENTRY(N)=A-B", help="Worths.")
@click.option(
    "--workers",
    type=click.IntRange(1, 64),
    help="Processes here that answer; one for each processor when left out.",
)
@click.option("--on", "address", metavar="ADDRESS", help="A Dask cluster that answers instead.")
@json_option
def command(
    folders: tuple[Path, ...],
    *,
    prices: tuple[str, ...],
    limits: tuple[str, ...],
    worths: tuple[str, ...],
    workers: int | None,
    address: str | None,
    as_json: bool,
    **terms: Unpack[TermsTyped],
) -> None:
    """Try every combination of prices, limits and worths in the lists of one FOLDER or several.

    Says for each how many legal forces are lost and gained, and what becomes of the best one.
    Ctrl-C ends it with the answers so far.
    """
    from paradestate.journeys.sweep import Labour, sweep

    amending = Amending(prices=prices, limits=limits, worths=worths)
    if not amending.is_anything:
        raise click.UsageError("Say what is varied with --price, --limit or --worth.")
    typed, slips = terms_asked(**terms)
    stop_for(slips)
    asked = ListAsked(
        choice=typed.choice, grades=typed.grades, points=typed.points, amending=amending
    )
    with stopping_softly() as stop, _shown() as told:
        labour = Labour(workers=workers, address=address, stop=stop, told=told)
        answer = sweep(folders, today=today(), asked=asked, labour=labour)
    for checked in answer.checked:
        print_findings(checked.findings, checked.texts)
    if answer.found is not None and as_json:
        from paradestate.cli.sweep_json import sweep_json

        print_json(sweep_json(answer.found))
    elif answer.found is not None:
        from paradestate.cli.sweep_report import print_sweep

        print_sweep(answer.found)
    finish(stopped=answer.found is None)


@contextmanager
def _shown() -> Iterator[Callable[[int, int], None]]:
    """Shows on a terminal how many questions are answered."""
    if not sys.stderr.isatty():
        yield lambda _done, _all: None
        return
    with Console(stderr=True, highlight=False).status("Sweeping") as status:
        yield lambda done, number: status.update(
            f"{done:,} of {number:,} answered (Ctrl-C keeps those)"
        )
