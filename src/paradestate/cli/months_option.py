"""The options that say what a plan of months has to keep to."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any, TypeVar

import click

from paradestate.cli.option import today
from paradestate.core.finding import Finding
from paradestate.journeys.choosing import beginning_of, dates_of, money_of, share_of
from paradestate.journeys.months import Terms

F = TypeVar("F", bound=Callable[..., Any])

OPTIONS = (
    click.option("--limit", default="", metavar="MONEY", help="What may be spent in a month."),
    click.option("--carried", default="", metavar="MONEY", help="What is there before that."),
    click.option(
        "--order",
        "orders",
        multiple=True,
        metavar="NAME=MONEY",
        help="Spread this instead of the cheapest order's parcels; may be repeated.",
    ),
    click.option(
        "--needed",
        multiple=True,
        metavar="NAME=DATE",
        help="When a parcel or order is needed; may be repeated.",
    ),
    click.option(
        "--from", "begins", default="", metavar="DATE", help="When it begins, if it isn't today."
    ),
    click.option(
        "--bench",
        "at_bench",
        is_flag=True,
        help="Order for each force to be played with in turn, so that the bench has work.",
    ),
    click.option("--band", default="", metavar="PERCENT", help="How far rates may move: --band 5."),
)


def plan_options(command: F) -> F:
    """What may be spent, on what, and by when it is needed."""
    for option in reversed(OPTIONS):
        command = option(command)
    return command


def terms_of(
    *, limit: str, carried: str, needed: tuple[str, ...], begins: str, band: str
) -> tuple[Terms, tuple[Finding, ...]]:
    """What the plan has to keep to, and a stop for each text with a slip."""
    a_month, findings = money_of(limit)
    there, more = money_of(carried)
    dates, yet_more = dates_of(needed)
    first, still_more = beginning_of(begins)
    share, last = share_of(band)
    terms = Terms(
        begins=first or today(),
        limit=a_month,
        carried=there or Fraction(0),
        needed=dates,
        band=share,
    )
    return terms, (*findings, *more, *yet_more, *still_more, *last)
