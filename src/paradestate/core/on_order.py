"""What is on order: figures that a source is to send, and when they are expected.

What comes from a source is taken off what is on order from it, the oldest order first. What was
ordered and came short stays on order, since the source owes it, until it is said that it won't
come.
"""

import datetime
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from paradestate.core.number import summed


@dataclass(frozen=True, slots=True, kw_only=True)
class OnOrder:
    """What hasn't come yet of one order."""

    entry: str
    """Id of the entry by which it was ordered."""
    source: str
    day: datetime.date
    """On which it was ordered."""
    expected: datetime.date | None
    """None where nobody says."""
    figures: Mapping[str, int]
    """Kind to figures, each at least one."""


def less_received(
    orders: Iterable[OnOrder], *, source: str, came: Mapping[str, int]
) -> Iterator[OnOrder]:
    """What is still on order after figures came from a source, or won't; orders oldest first.

    More than was ordered takes nothing else off.
    """
    left = dict(came)
    for order in orders:
        if order.source != source:
            yield order
            continue
        figures = {}
        for kind, number in order.figures.items():
            taken = min(number, left.get(kind, 0))
            left[kind] = left.get(kind, 0) - taken
            if number > taken:
                figures[kind] = number - taken
        if figures:
            yield replace(order, figures=figures)


def figures_on_order(orders: Iterable[OnOrder]) -> Mapping[str, int]:
    """Kind to figures of all orders together."""
    return summed(order.figures for order in orders)
