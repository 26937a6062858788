"""Options of the command `next`."""

from collections.abc import Callable
from typing import Any, TypeVar

import click

F = TypeVar("F", bound=Callable[..., Any])

OPTIONS = (
    click.option("--money", default="", metavar="AMOUNT", help="What may be spent on packs."),
    click.option("--hours", default="", metavar="N", help="Hours of work, instead of money."),
    click.option(
        "--aim",
        type=click.Choice(("worth", "share")),
        default=None,
        help="The mean worth of your best force, or the share of legal forces you can field.",
    ),
    click.option(
        "--by-weight",
        is_flag=True,
        help="Games count by the weights of the folder alone, whatever was played.",
    ),
    click.option(
        "--wish",
        default="",
        metavar="NAME=N,...",
        help="What you would like anyway: 'North/N1=1', or a stand with --hours.",
    ),
    click.option(
        "--seconds",
        type=click.FloatRange(0.1, 3600),
        default=60.0,
        show_default=True,
        help="How long the search may take.",
    ),
    click.option(
        "--seed",
        default="",
        metavar="N",
        help="The number that draws begin with, where outcomes have to be drawn.",
    ),
)


def next_options(command: F) -> F:
    """What there is to spend, and for what."""
    for option in reversed(OPTIONS):
        command = option(command)
    return command
