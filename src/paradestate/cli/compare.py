"""The command `compare`."""

from dataclasses import replace
from pathlib import Path
from typing import Unpack

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import (
    FOLDER,
    finish,
    json_option,
    points_option,
    stop_for,
    terms_options,
    today,
)
from paradestate.cli.output import at_work, print_json
from paradestate.journeys.amending import Amending, ListAsked
from paradestate.journeys.check import Checked
from paradestate.journeys.choosing import TermsTyped, terms_asked

EPILOG = """\b
Two versions:
  paradestate compare marenz marenz-new
\b
What if a price were another? One folder is enough:
  paradestate compare marenz --game "whole-day attack" --price "anti-tank guns(1)=5"
  paradestate compare marenz --limit "bicycle troop=2" --worth "bicycle troop=4" --json
"""


@click.command(epilog=EPILOG)
@click.argument("old", type=FOLDER)
@click.argument("new", type=FOLDER, required=False)
@terms_options
@points_option
@click.option("--price", "prices", multiple=True, metavar="ENTRY(N)=POINTS", help="Another price.")
@click.option("--limit", "limits", multiple=True, metavar="ENTRY=N|any", help="Another limit.")
@click.option("--worth", "worths", multiple=True, metavar="ENTRY(N)=WORTH", help="Another worth.")
@json_option
def command(
    old: Path,
    new: Path | None,
    *,
    prices: tuple[str, ...],
    limits: tuple[str, ...],
    worths: tuple[str, ...],
    as_json: bool,
    **terms: Unpack[TermsTyped],
) -> None:
    """Compare two versions of a list: OLD and NEW, or OLD and what it would be with changes.

    Says what differs, how many legal forces are lost and gained with each number of points, and
    what becomes of the best forces. Without --game all games are looked at.
    """
    from paradestate.journeys.compare import comparison_of

    amending = Amending(prices=prices, limits=limits, worths=worths)
    if amending.is_anything is (new is not None):
        raise click.UsageError("Give a second folder, or changes with --price, --limit or --worth.")
    typed, slips = terms_asked(**terms)
    stop_for(slips)
    asked = ListAsked(
        choice=typed.choice, grades=typed.grades, points=typed.points, amending=amending
    )
    with at_work("Comparing"):
        answer = comparison_of(old, new, today=today(), asked=asked)
    for folder, checked in zip((old, new) if new else (None,), answer.checked, strict=True):
        _print_findings(checked, folder)
    if answer.found is not None and as_json:
        from paradestate.cli.compare_json import compare_json

        print_json(compare_json(answer.found))
    elif answer.found is not None:
        from paradestate.cli.compare_report import print_comparison

        print_comparison(answer.found, title=answer.checked[0].force.title)
    finish(stopped=answer.found is None)


def _print_findings(checked: Checked, folder: Path | None) -> None:
    """With the folder before each file where there are two, whose files have the same names."""
    if folder is None:
        print_findings(checked.findings, checked.texts)
        return
    texts = {str(folder / name): text for name, text in checked.texts.items()}
    findings = [
        replace(each, place=replace(each.place, file=str(folder / each.place.file)))
        if each.place.file in checked.texts
        else each
        for each in checked.findings
    ]
    print_findings(findings, texts)
