"""Small order problems drawn by lot: steps that rise and fall, multi-buys, limits, rates, gifts."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import strategies as st

from paradestate.core.cover import Substitutes
from paradestate.core.figure import Match
from paradestate.core.money import Currency
from paradestate.core.order import OrderProblem
from paradestate.core.source import Pack, Source
from tests.orders import GBP, pack, problem, source

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


@st.composite
def problems_with_stand_ins(draw: st.DrawFn) -> OrderProblem:
    """A small want of which some is owned, with kinds that may stand in for others."""
    asked = draw(problems())
    grades = st.sampled_from(list(Match))
    pairs = st.dictionaries(st.sampled_from(KINDS), grades, max_size=2)
    return replace(
        asked,
        owned=draw(st.dictionaries(st.sampled_from(KINDS), st.integers(0, 4))),
        substitutes=Substitutes(
            may_stand_for=draw(st.dictionaries(st.sampled_from(KINDS), pairs)),
            bought_too=draw(st.booleans()),
        ),
        most_parcels=draw(st.sampled_from([None, None, 1])),
    )
