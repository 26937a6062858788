"""The options of `book`, each for one or more of its actions."""

from collections.abc import Callable
from typing import Any, TypeVar

import click

F = TypeVar("F", bound=Callable[..., Any])

OPTIONS = (
    click.option("--from", "since", default="", metavar="DAY", help="show: from this day on."),
    click.option(
        "--hours", default="", metavar="HOURS", help="add, move: '2026-12-03 20:00-22:00'."
    ),
    click.option("--needs", default="", metavar="KIND=N,...", help="add: figures."),
    click.option("--stands", default="", metavar="STAND=N,...", help="add: whole stands."),
    click.option("--game", default="", metavar="NAME", help="add: all that this game needs."),
    click.option(
        "--force", default="", metavar="NAME", help="add: the force of the collection it is of."
    ),
    click.option(
        "--borrows", multiple=True, metavar="BOX", help="add: a box that goes whole to it."
    ),
    click.option("--holds", default="", metavar="KIND=N,...", help="box: figures."),
    click.option("--counted", is_flag=True, help="box: what it holds is among what is owned."),
    click.option(
        "--insured-for", default="", metavar="AMOUNT", help="box: in the force's currency."
    ),
    click.option(
        "--for", "whom", default="", metavar="NAME", help="add: for whom; kept on this machine."
    ),
    click.option(
        "--to", default="", metavar="NAME", help="lend, hand-over, box: who has it; kept here."
    ),
    click.option(
        "--role", default="", metavar="ROLE", help="In place of a name; it stands in the files."
    ),
    click.option(
        "--contact", default="", metavar="TEXT", help="With a name; kept on this machine."
    ),
    click.option("--on", default="", metavar="DAY", help="lend, hand-over: if it isn't today."),
    click.option("--until", default="", metavar="DAY", help="lend: the last day it is away."),
    click.option(
        "--seconds",
        type=click.FloatRange(min=0, min_open=True),
        default=10.0,
        show_default=True,
        help="value: longest search for each box.",
    ),
)


def book_options(command: F) -> F:
    """What may be said of bookings, boxes and loans."""
    for option in reversed(OPTIONS):
        command = option(command)
    return command
