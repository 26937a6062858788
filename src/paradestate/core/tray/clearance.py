"""Whether things lie as they may: inside their tray, clear of each other, under its lid.

Exact: distances of discs are compared by their squares. Whatever found an arrangement, or made it
by hand, it is looked at here before anyone sees it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from itertools import combinations

from paradestate.core.tray.thing import Case, Lying


class Rule(StrEnum):
    """What may forbid a place."""

    TOO_HIGH = "too high"
    OUTSIDE = "outside"
    TOO_NEAR = "too near"


@dataclass(frozen=True, slots=True, kw_only=True)
class Breach:
    """A thing that may not lie where it lies."""

    rule: Rule
    lying: Lying
    other: Lying | None = None
    """The one that it is too near to."""


def breaches(case: Case, lying: Sequence[Lying]) -> Iterator[Breach]:
    """Everything that is wrong in a tray; nothing where all is well."""
    for each in lying:
        if case.is_too_low_for(each.thing):
            yield Breach(rule=Rule.TOO_HIGH, lying=each)
        if not is_inside(case, each):
            yield Breach(rule=Rule.OUTSIDE, lying=each)
    for one, other in combinations(lying, 2):
        if not are_clear(one, other, gap=case.gap):
            yield Breach(rule=Rule.TOO_NEAR, lying=one, other=other)


def is_inside(case: Case, lying: Lying) -> bool:
    """Whether no part of it is beyond a side of the tray."""
    across = 0 <= lying.across <= case.inside.width - lying.width
    return across and 0 <= lying.deep <= case.inside.depth - lying.depth


def are_clear(one: Lying, other: Lying, *, gap: Fraction) -> bool:
    """Whether the two with half the gap around each of them don't overlap.

    That half is square around a rectangle and round about a disc.
    """
    if one.thing.is_round and other.thing.is_round:
        across = one.across - other.across + (one.width - other.width) / 2
        deep = one.deep - other.deep + (one.width - other.width) / 2
        return across**2 + deep**2 >= ((one.width + other.width) / 2 + gap) ** 2
    if other.thing.is_round:
        return are_clear(other, one, gap=gap)
    if one.thing.is_round:
        radius = one.width / 2
        across = _beyond(one.across + radius, start=other.across, length=other.width, gap=gap)
        deep = _beyond(one.deep + radius, start=other.deep, length=other.depth, gap=gap)
        return across**2 + deep**2 >= (radius + gap / 2) ** 2
    apart = (
        one.across + one.width + gap <= other.across,
        other.across + other.width + gap <= one.across,
        one.deep + one.depth + gap <= other.deep,
        other.deep + other.depth + gap <= one.deep,
    )
    return any(apart)


def _beyond(centre: Fraction, *, start: Fraction, length: Fraction, gap: Fraction) -> Fraction:
    """How far a centre is beyond a side that is longer by half a gap at either end."""
    return max(start - gap / 2 - centre, centre - start - length - gap / 2, Fraction(0))
