"""What a sweep varies, as it was typed: prices, limits and worths, each a number or a range."""

from collections.abc import Iterable, Sequence
from fractions import Fraction

from paradestate.core.finding import Finding
from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    PriceAmendment,
    WorthAmendment,
)
from paradestate.journeys.amending import ANY, Amending, read_each
from paradestate.text.number import GREATEST, RANGE, read_decimal, read_range, read_whole
from paradestate.text.slip import Slip

MOST_VALUES = 1_000
"""In one range."""


def varied_of(
    typed: Amending, *, entries: Sequence[str]
) -> tuple[tuple[tuple[Amendment, ...], ...], tuple[Finding, ...]]:
    """Each thing that is varied, as all its changes; and a stop for each text that can't be read.

    Values of the same thing that are typed apart are taken one after the other.
    """
    prices, no_prices = read_each(typed.prices, entries=entries, read=_prices)
    limits, no_limits = read_each(typed.limits, entries=entries, read=_limits)
    worths, no_worths = read_each(typed.worths, entries=entries, read=_worths)
    changes: list[Amendment] = [
        *typed.made,
        *(PriceAmendment(entry=e, number=n, points=each) for e, n, all_ in prices for each in all_),
        *(LimitAmendment(entry=e, most=each) for e, _, all_ in limits for each in all_),
        *(WorthAmendment(entry=e, number=n, worth=each) for e, n, all_ in worths for each in all_),
    ]
    return _by_thing(changes), (*no_prices, *no_limits, *no_worths)


def _by_thing(changes: Iterable[Amendment]) -> tuple[tuple[Amendment, ...], ...]:
    """The changes of each thing together, each once."""
    found: dict[tuple[type, str, int | None], dict[Amendment, None]] = {}
    for each in changes:
        number = None if isinstance(each, LimitAmendment) else each.number
        found.setdefault((type(each), each.entry, number), {})[each] = None
    return tuple(tuple(values) for values in found.values())


def _prices(text: str) -> tuple[int, ...] | Slip:
    if RANGE.fullmatch(text):
        return _span(text)
    points = read_whole(text, least=-GREATEST)
    return points if isinstance(points, Slip) else (points,)


def _limits(text: str) -> tuple[int | None, ...] | Slip:
    return (None,) if text == ANY else _span(text)


def _worths(text: str) -> tuple[Fraction, ...] | Slip:
    if RANGE.fullmatch(text):
        span = _span(text)
        return span if isinstance(span, Slip) else tuple(map(Fraction, span))
    worth = read_decimal(text, what="a worth")
    return worth if isinstance(worth, Slip) else (worth,)


def _span(text: str) -> tuple[int, ...] | Slip:
    found = read_range(text, least=0)
    if isinstance(found, Slip):
        return found
    values = range(found.least, found.most + 1)
    if len(values) > MOST_VALUES:
        return Slip(
            code="too-many-values",
            message=f"{text} has {len(values):,} values; at most {MOST_VALUES:,} are taken.",
            hint="Write a shorter range.",
        )
    return tuple(values)
