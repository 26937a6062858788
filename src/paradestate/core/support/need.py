"""Needs: what must be there beside purchases of an entry, and what of it is lacking."""

from collections.abc import Callable, Iterator
from typing import NamedTuple, TypeAlias

from paradestate.core.support.offer import Offer

Count: TypeAlias = Callable[[str], int]
"""Entry to the purchases of it that are there."""


class Lack(NamedTuple):
    """One need that isn't met."""

    code: str
    others: tuple[str, ...]
    """The entry that it asks for, or all of which one would do."""
    has: int
    """Of one that would do: nought, and `bound` says how many the nearest is short of."""
    bound: int


def lacks(offer: Offer, count: Count, *, times: int = 1) -> Iterator[Lack]:
    """Every need of `times` purchases of an entry that isn't met by what is there."""
    for other, number in offer.needs.items():
        has = count(other)
        if has < number:
            yield Lack(code="need-missing", others=(other,), has=has, bound=number)
    for other, each in offer.needs_for_each.items():
        has, number = count(other), each * times
        if has < number:
            yield Lack(code="need-for-each-missing", others=(other,), has=has, bound=number)
    if offer.needs_any_of:
        short = [number - count(other) for other, number in offer.needs_any_of.items()]
        if min(short) > 0:
            others = tuple(offer.needs_any_of)
            yield Lack(code="need-any-missing", others=others, has=0, bound=min(short))


def are_needs_met(offer: Offer, count: Count, *, times: int = 1) -> bool:
    """Whether all needs of `times` purchases of an entry are met by what is there."""
    if not (offer.needs or offer.needs_for_each or offer.needs_any_of):
        return True  # most entries need nothing, and this is asked often
    return next(lacks(offer, count, times=times), None) is None
