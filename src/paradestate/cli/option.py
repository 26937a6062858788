"""Options that several commands share."""

import datetime
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, TypeVar

import click

from paradestate.cli.finding_report import print_findings
from paradestate.core.finding import Finding

F = TypeVar("F", bound=Callable[..., Any])

FOLDER = click.Path(exists=True, file_okay=False, path_type=Path)

folder_argument = click.argument("folder", type=FOLDER)
json_option = click.option(
    "--json", "as_json", is_flag=True, help="Print one JSON document instead."
)


RAISED = (
    click.option(
        "--set",
        "numbers",
        multiple=True,
        metavar="PART=N",
        help="The number of a part that is a range: --set company=3.",
    ),
    click.option("--date", default="", metavar="DATE", help="1943, 1943-07 or 1943-07-10."),
    click.option("--theatre", default=None, metavar="NAME", help="The theatre raised for."),
    click.option(
        "--wished",
        default="",
        metavar="all|none|NAMES",
        help="Which wished items are wanted.",
    ),
)
"""What the section `raise` of a folder decides."""

GAME = click.option("--game", default="", metavar="NAME", help="A game of the force.")


grade_option = click.option(
    "--grade",
    "grades",
    multiple=True,
    metavar="SCALE=GRADE",
    help="A grade that isn't as usual: --grade training=recruits.",
)

TERMS = (grade_option, *RAISED)
"""What decides the terms of a game, beside the game itself."""

points_option = click.option(
    "--points",
    default="",
    metavar="N",
    help="Points left after formation cost and grades.",
)
plan_option = click.option(
    "--plan",
    default="",
    metavar="ENTRY=N,...",
    help="What is taken, a choice in round brackets: 'pioneers(flame)=1, light tanks=2'.",
)


def terms_options(command: F) -> F:
    """The options that decide the terms of a game."""
    for option in reversed(TERMS):
        command = option(command)
    return GAME(command)


def choice_options(command: F) -> F:
    """The options of a choice made for one sum only."""
    return raised_options(GAME(command))


def raised_options(command: F) -> F:
    """The options of a choice that may be written down."""
    for option in reversed(RAISED):
        command = option(command)
    return command


def today() -> datetime.date:
    """The day by the clock of this computer, the only clock there is."""
    return datetime.datetime.now(tz=datetime.UTC).astimezone().date()


def now() -> datetime.datetime:
    """The time by the same clock."""
    return datetime.datetime.now(tz=datetime.UTC)


def stop_for(slips: Sequence[Finding]) -> None:
    """Ends the command where something that was typed can't be read; all of it is said at once."""
    if slips:
        print_findings(slips, {})
        finish(stopped=True)


def finish(*, stopped: bool) -> None:
    """Ends the command with the status that says whether a stop prevented the answer."""
    sys.exit(1 if stopped else 0)
