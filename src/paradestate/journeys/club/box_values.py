"""What it would cost to buy again what each box holds, for the insurance.

folder -> boxes -> kinds that are sold -> the cheapest order of each box -> against what is insured
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.club.booking import Box
from paradestate.core.club.booking_finding import insured_too_low
from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.money import Currency, decimal_places
from paradestate.core.order_outcome import OrderAnswer
from paradestate.core.source import force_currency, sold_kinds
from paradestate.journeys.check import Checked
from paradestate.journeys.count import CountAnswer, count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.order import Request, Search, order_of


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxValue:
    """One box and the cheapest order of what it holds, bought alone and new, carriage included."""

    box: Box
    keeper: str
    """Who keeps it today."""
    unsold: Mapping[str, int]
    """Kind to figures that nobody sells, which are in no value."""
    answer: OrderAnswer | None
    """None where nothing of it is sold, or no order was found in time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxValues:
    """All boxes; none with the stops in the way."""

    checked: Checked
    boxes: tuple[BoxValue, ...] = ()
    currency: Currency = Currency("GBP")
    is_stopped: bool = False

    @property
    def total(self) -> int:
        """In minor units, of our own boxes that have a value; each bought alone."""
        return sum(
            each.answer.order.total
            for each in self.boxes
            if each.box.is_counted and each.answer is not None
        )


def box_values(
    folder: Path, *, today: datetime.date, search: Search, memory: Memory = NOTHING
) -> BoxValues:
    """The value of each box by the prices of this force. Raises StoreError and FileError.

    Work isn't in it, and neither is the box. Nothing stands in for another kind.
    """
    counted = count(
        folder, today=today, choice=Choice(), lent_too=True, ordered_too=True, memory=memory
    )
    if counted.count is None:
        return BoxValues(checked=counted.checked, is_stopped=True)
    force = counted.checked.force
    currency = force_currency(force.sources) or Currency("GBP")
    boxes = tuple(
        _value(box, counted, today=today, search=search) for box in force.club.boxes.values()
    )
    findings = tuple(
        found for each in boxes if (found := _too_low(each, force, currency=currency)) is not None
    )
    return BoxValues(
        checked=counted.checked.with_findings(*findings), boxes=boxes, currency=currency
    )


def _value(box: Box, counted: CountAnswer, *, today: datetime.date, search: Search) -> BoxValue:
    sold = sold_kinds(counted.checked.force.sources)
    wanted = {kind: number for kind, number in box.holds.items() if kind in sold}
    value = BoxValue(
        box=box,
        keeper=box.keeper_on(today),
        unsold={kind: number for kind, number in box.holds.items() if kind not in sold},
        answer=None,
    )
    if not wanted:
        return value
    request = Request(want=wanted)
    journey = order_of(counted, request=request, search=replace(search, alternatives=False))
    return replace(value, answer=journey.answer)


def _too_low(value: BoxValue, force: Force, *, currency: Currency) -> Finding | None:
    box, answer = value.box, value.answer
    if box.insured_for is None or answer is None:
        return None
    insured = box.insured_for * Fraction(10) ** decimal_places(currency)
    if insured >= answer.order.total:
        return None
    return insured_too_low(box, answer.order.total, currency=currency, places=force.places)
