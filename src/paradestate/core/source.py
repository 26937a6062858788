"""Where figures are bought: sources, their terms and their packs. Amounts in minor units."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from paradestate.core.money import Currency, Minor
from paradestate.core.span import DateSpan


@dataclass(frozen=True, slots=True, kw_only=True)
class Pack:
    """What is sold as one piece."""

    name: str
    """The key in the price list, such as `N1`."""
    title: str = ""
    """What it is called on the shelf."""
    price: Minor
    holds: Mapping[str, int]
    """Figure kind to number."""
    most: int | None = None
    """How many can be had."""
    lead_days: int | None = None
    multibuy: Mapping[int, Minor] = field(default_factory=dict)
    """Number of packs to what that many cost together."""
    by_hand: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A seller's terms and packs.

    Steps hold from the value named: `carriage` maps goods value to charge, `discount` maps goods
    value to the share taken off all goods.
    """

    name: str
    currency: Currency
    rate: Fraction | None = None
    """Units of the force's currency for one unit of this one; None where they are the same."""
    rate_date: DateSpan | None = None
    carriage: Mapping[Minor, Minor]
    discount: Mapping[Minor, Fraction] = field(default_factory=dict)
    least_order: Minor = Minor(0)
    noted: DateSpan | None = None
    """When the prices were noted."""
    packs: Mapping[str, Pack] = field(default_factory=dict)
    by_hand: str = ""


def force_currency(sources: Mapping[str, Source]) -> Currency | None:
    """The currency in which totals are given: that of the first source without a rate."""
    return next((source.currency for source in sources.values() if source.rate is None), None)


def sold_kinds(sources: Mapping[str, Source]) -> frozenset[str]:
    """The kinds that some pack holds."""
    return frozenset(
        kind
        for source in sources.values()
        for pack in source.packs.values()
        for kind, number in pack.holds.items()
        if number
    )
