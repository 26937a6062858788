"""Order problems that tests are made of: the example's, small ones in one line, drawn ones."""

from collections.abc import Mapping
from fractions import Fraction

from hypothesis import strategies as st

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


KINDS = ("officer", "rifleman", "signaller")
SHARES = st.sampled_from([Fraction(n, 1000) for n in (0, 50, 100, 125, 333, 500, 1000)])
RATES = st.sampled_from([Fraction(43, 50), Fraction(1, 3), Fraction(5, 4), Fraction(2)])
STEPS = st.integers(0, 24)


@st.composite
def packs(draw: st.DrawFn, name: str) -> Pack:
    """A pack of one or two kinds, some free, some few, some with multi-buys."""
    price = draw(st.sampled_from([0, 3, 4, 5, 7, 8, 11]))
    sizes = draw(st.lists(st.integers(2, 4), max_size=2, unique=True))
    lots = {size: draw(st.integers(size * 2, size * (price + 1) + size)) for size in sizes}
    holds = draw(st.dictionaries(st.sampled_from(KINDS), st.integers(1, 4), min_size=1, max_size=2))
    most = draw(st.one_of(st.none(), st.none(), st.integers(1, 3)))
    return pack(name, price, most=most, multibuy=lots, **holds)


@st.composite
def sources(draw: st.DrawFn, name: str) -> Source:
    """A source of one or two packs, with steps that rise and fall, at home or abroad."""
    number = draw(st.integers(1, 2))
    home = draw(st.booleans())
    return source(
        name,
        *(draw(packs(f"{name[0]}{count}")) for count in range(1, number + 1)),
        carriage=draw(st.dictionaries(STEPS, st.integers(0, 6), min_size=1, max_size=3)),
        discount=draw(st.dictionaries(STEPS, SHARES, max_size=2)),
        least_order=draw(st.sampled_from([0, 0, 0, 6, 15])),
        currency=GBP if home else draw(st.sampled_from([Currency("EUR"), Currency("KWD")])),
        rate=None if home else draw(RATES),
    )


@st.composite
def problems(draw: st.DrawFn) -> OrderProblem:
    """A small want from two sources."""
    want = draw(st.dictionaries(st.sampled_from(KINDS), st.integers(0, 6), min_size=1))
    return problem(draw(sources("North")), draw(sources("South")), **want)
