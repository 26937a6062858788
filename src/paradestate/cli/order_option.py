"""The options that say what an order is to be like, for every command that makes one."""

from collections.abc import Callable
from typing import Any, TypeVar

import click

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.journeys.choosing import amount_of, choice_of, names_of, want_of
from paradestate.journeys.order import Request

F = TypeVar("F", bound=Callable[..., Any])

OPTIONS = (
    click.option(
        "--want", default="", metavar="KIND=N, ...", help="Order this instead of what is lacking."
    ),
    click.option("--sources", default="", metavar="NAMES", help="Buy from these sources only."),
    click.option(
        "--stand-ins", is_flag=True, help="Let bought figures stand in for other kinds too."
    ),
    click.option(
        "--fewest-left-over", is_flag=True, help="Leave as little over as can be; then cheapest."
    ),
    click.option("--one-parcel", is_flag=True, help="Buy everything from one source."),
    click.option("--soonest", is_flag=True, help="Have it as soon as can be; then cheapest."),
    click.option(
        "--within",
        default="",
        metavar="MONEY",
        help="Stop at an order proved at most so much above the least: --within 5.",
    ),
)
SECONDS = click.option(
    "--seconds",
    type=click.FloatRange(0.1, 3600),
    default=60.0,
    show_default=True,
    help="How long the search may take.",
)


def order_options(command: F) -> F:
    """What the order is to be like, and how long it may be looked for."""
    for option in reversed((*OPTIONS, SECONDS)):
        command = option(command)
    return command


def asked(
    *,
    want: str,
    sources: str,
    stand_ins: bool,
    fewest_left_over: bool,
    one_parcel: bool,
    soonest: bool,
    within: str,
    **options: str,
) -> tuple[Choice, Request, tuple[Finding, ...]]:
    """The choice and the order that were asked for, and a stop for each text with a slip."""
    choice, findings = choice_of(**options)
    wanted, more = want_of(want)
    names, yet_more = names_of(sources)
    enough, last = amount_of(within)
    request = Request(
        want=wanted,
        sources=names,
        stand_ins=stand_ins,
        fewest_left_over=fewest_left_over,
        one_parcel=one_parcel,
        soonest=soonest,
        within=enough,
    )
    return choice, request, (*findings, *more, *yet_more, *last)
