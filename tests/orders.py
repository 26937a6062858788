"""Order problems that tests are made of: the example's, and small ones in a line or two."""

from collections.abc import Mapping
from fractions import Fraction

from paradestate.core.money import Currency, Minor
from paradestate.core.order import OrderProblem
from paradestate.core.source import Pack, Source
from tests.forces import marenz

GBP = Currency("GBP")
WANT = {"rifleman": 50, "mortar crew": 9, "officer": 4}


def marenz_problem(*names: str, want: Mapping[str, int] = WANT) -> OrderProblem:
    """A want from the example's sources, or from those named."""
    sources = marenz().sources
    chosen = {name: source for name, source in sources.items() if not names or name in names}
    return OrderProblem(want=want, sources=chosen, currency=GBP)


def pack(
    name: str,
    price: int,
    *,
    most: int | None = None,
    multibuy: Mapping[int, int] | None = None,
    **holds: int,
) -> Pack:
    """A pack; what it holds is given by name."""
    lots = {size: Minor(cost) for size, cost in (multibuy or {}).items()}
    return Pack(name=name, price=Minor(price), holds=holds, most=most, multibuy=lots)


def source(
    name: str,
    *packs: Pack,
    carriage: Mapping[int, int] | None = None,
    discount: Mapping[int, Fraction] | None = None,
    least_order: int = 0,
    currency: Currency = GBP,
    rate: Fraction | None = None,
) -> Source:
    """A source; carriage is free where none is given."""
    steps = {0: 0} if carriage is None else carriage
    return Source(
        name=name,
        currency=currency,
        rate=rate,
        carriage={Minor(value): Minor(charge) for value, charge in steps.items()},
        discount={Minor(value): share for value, share in (discount or {}).items()},
        least_order=Minor(least_order),
        packs={each.name: each for each in packs},
    )


def problem(*sources: Source, **want: int) -> OrderProblem:
    """A want from these sources, in pounds."""
    return OrderProblem(want=want, sources={each.name: each for each in sources}, currency=GBP)
