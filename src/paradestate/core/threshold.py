"""The values of goods from which a source charges otherwise, and where an order stands to them.

Carriage is by the step that goods reach before discount, and so is the discount; a step holds from
the value named (see `receipt`). Amounts in minor units of the source's own currency.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.receipt import Charge, charge
from paradestate.core.source import Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Threshold:
    """A value of goods, and what holds from there on."""

    at: int
    charge: Charge
    """For goods of just that value."""
    carriage: int | None = None
    """The charge from there on; None where it stays as it was below."""
    discount_rate: Fraction | None = None
    """The share taken off from there on; None where it stays as it was below."""
    sends: bool = False
    """Whether nothing is sent below."""


def thresholds(source: Source) -> tuple[Threshold, ...]:
    """Every value above nought at which what the source charges changes, lowest first."""
    values = sorted({*source.carriage, *source.discount, source.least_order})
    return tuple(_thresholds(source, [int(value) for value in values if value > 0]))


def _thresholds(source: Source, values: list[int]) -> Iterator[Threshold]:
    for value in values:
        below, there = charge(source, goods=value - 1), charge(source, goods=value)
        sends = value == source.least_order
        is_same = (there.carriage, there.discount_rate) == (below.carriage, below.discount_rate)
        if sends or not is_same:
            yield Threshold(
                at=value,
                charge=there,
                carriage=there.carriage if there.carriage != below.carriage else None,
                discount_rate=(
                    there.discount_rate if there.discount_rate != below.discount_rate else None
                ),
                sends=sends,
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """Where goods of some value stand to the thresholds of their source."""

    goods: int
    reached: Threshold | None
    """The highest that they reach."""
    following: Threshold | None
    """The lowest that they don't reach."""
    just_below: Charge | None
    """What goods one minor unit below the one reached would cost, if they would be sent."""

    @property
    def above(self) -> int | None:
        """How far they are above the threshold reached; None where there is none."""
        return None if self.reached is None else self.goods - self.reached.at

    @property
    def short(self) -> int | None:
        """How much more would reach the next; None where there is none."""
        return None if self.following is None else self.following.at - self.goods


def standing(source: Source, *, goods: int) -> Standing:
    """Where goods of that value stand."""
    every = thresholds(source)
    reached = [each for each in every if each.at <= goods]
    beyond = [each for each in every if each.at > goods]
    last = reached[-1] if reached else None
    return Standing(
        goods=goods,
        reached=last,
        following=beyond[0] if beyond else None,
        just_below=None if last is None or last.sends else charge(source, goods=last.at - 1),
    )
