"""What baskets of packs cost."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.advice.pack_prices import PackPrices
from paradestate.core.money import Currency, Minor
from paradestate.core.source import Pack, Source

GBP = Currency("GBP")


def pack(name: str, price: int, *, multibuy: dict[int, int] | None = None) -> Pack:
    many = {number: Minor(cost) for number, cost in (multibuy or {}).items()}
    return Pack(name=name, price=Minor(price), holds={name: 1}, multibuy=many)


def quay(*packs: Pack, carriage: Mapping[Minor, Minor] | None = None) -> Source:
    return Source(
        name="Quay",
        currency=GBP,
        carriage=carriage or {},
        packs={each.name: each for each in packs},
    )


def prices(*sources: Source) -> PackPrices:
    names = [(source.name, pack) for source in sources for pack in source.packs]
    return PackPrices(
        {source.name: source for source in sources}, names, currency=GBP, most=[3] * len(names)
    )


def test_free_carriage_makes_more_cheaper() -> None:
    found = prices(quay(pack("gun", 30), carriage={Minor(0): Minor(15), Minor(60): Minor(0)}))
    assert [found.cost((number,)) for number in range(4)] == [0, 45, 60, 90]
    assert [found.least((number,)) for number in range(4)] == [0, 29, 59, 89]
    assert found.most == (3,)


def test_multibuys_count_at_their_best() -> None:
    found = prices(quay(pack("gun", 20, multibuy={3: 35})))
    assert [found.cost((number,)) for number in (1, 2, 3)] == [20, 40, 35]
    assert found.least((2,)) <= 35


def test_too_little_is_not_sent() -> None:
    found = prices(replace(quay(pack("gun", 20)), least_order=Minor(40)))
    assert [found.can_be_had((number,)) for number in (0, 1, 2)] == [True, False, True]
    assert [found.cost((number,)) for number in (0, 1, 2)] == [0, 20, 40]


def test_each_source_charges_by_itself() -> None:
    one = quay(pack("gun", 20), carriage={Minor(0): Minor(3)})
    other = Source(
        name="Pier",
        currency=Currency("EUR"),
        rate=Fraction(1, 2),
        carriage={},
        packs={"tank": pack("tank", 40)},
    )
    assert prices(one, other).cost((1, 1)) == 43


AMOUNTS = st.integers(0, 60).map(Minor)


@st.composite
def sources(draw: st.DrawFn) -> Source:
    """A source of two packs with steps of carriage and discount, and a rate."""
    multibuy = draw(st.dictionaries(st.integers(2, 3), st.integers(1, 60), max_size=2))
    shares = st.fractions(0, 1, max_denominator=10)
    return replace(
        quay(
            pack("gun", draw(st.integers(0, 30)), multibuy=multibuy),
            pack("tank", draw(st.integers(0, 30))),
            carriage=draw(st.dictionaries(AMOUNTS, AMOUNTS, max_size=3)),
        ),
        discount=draw(st.dictionaries(AMOUNTS, shares, max_size=2)),
        rate=draw(st.sampled_from((None, Fraction(1, 3), Fraction(7, 5)))),
    )


@settings(max_examples=60, deadline=None)
@given(sources())
def test_no_larger_basket_costs_less_than_the_bound(source: Source) -> None:
    found = prices(source)
    every = list(product(range(4), repeat=2))
    for basket in every:
        larger = [each for each in every if all(map(int.__ge__, each, basket))]
        assert found.least(basket) <= min(map(found.cost, larger))
