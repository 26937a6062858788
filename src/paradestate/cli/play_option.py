"""The options of `play`, each for one or more of its actions."""

from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

from paradestate.cli.option import GAME

F = TypeVar("F", bound=Callable[..., Any])

OPTIONS = (
    GAME,
    click.option("--opponent", default="", metavar="NAME", help="start: who the other side is."),
    click.option(
        "--posture", default="", metavar="WORD", help="start: attack, defence, as agreed."
    ),
    click.option(
        "--grade",
        "grades",
        multiple=True,
        metavar="SCALE=GRADE",
        help="start: a grade that isn't as usual.",
    ),
    click.option(
        "--set", "numbers", multiple=True, metavar="PART=N", help="start: the number of a part."
    ),
    click.option("--date", default="", metavar="DATE", help="start: the day of history."),
    click.option("--by", "roller", default="", metavar="NAME", help="roll: who rolled."),
    click.option("--witness", default="", metavar="NAME", help="roll: who saw it."),
    click.option(
        "--dice",
        default="",
        metavar="DICE",
        help="roll, bind: the dice of a roll that the files don't know.",
    ),
    click.option("--keep-secret", is_flag=True, help="word: tell the secret later, with reveal."),
    click.option("--turn", type=click.IntRange(min=0, max=999), help="mark: in which turn."),
    click.option("--because", default="", metavar="TEXT", help="strike: why."),
    click.option(
        "--out", type=click.Path(path_type=Path), metavar="FILE", help="carry: the file to write."
    ),
    click.option("--outcome", default="", metavar="TEXT", help="end: how it ended."),
    click.option(
        "--held",
        multiple=True,
        metavar="PLACE=SIDE",
        help="end: who held what; may be repeated.",
    ),
    click.option("--time", default="", metavar="HH:MM", help="end: the time of day."),
    click.option(
        "--about", default="", metavar="NAME", help="note: the stand or body that it concerns."
    ),
    click.option(
        "--of", default="", metavar="ID", help="Another game than the newest that is open."
    ),
    click.option(
        "--on", default="", metavar="DATE", help="The day of the evening, if it isn't today."
    ),
    click.option(
        "--entry",
        type=click.UUID,
        help="The line's own UUID, so that what is sent twice is written once.",
    ),
    click.option(
        "--device", default="", metavar="NAME", help="Which device tells it, if it isn't this one."
    ),
)


def play_options(command: F) -> F:
    """What may be said of a game."""
    for option in reversed(OPTIONS):
        command = option(command)
    return command
