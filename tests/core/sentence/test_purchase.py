"""Sentences about stock, sources and packs."""

from fractions import Fraction

from paradestate.core.money import Currency, Minor
from paradestate.core.sentence.purchase import pack_sentence, source_sentence, stock_sentence
from paradestate.core.source import Pack, Source
from paradestate.core.span import year
from tests.core.sentence.saying import unsaid
from tests.forces import marenz

POUND = Currency("GBP")

SOURCE = Source(
    name="East",
    currency=Currency("EUR"),
    rate=Fraction("0.86"),
    rate_date=year(2026),
    carriage={Minor(0): Minor(350)},
    discount={Minor(5000): Fraction(1, 10)},
    least_order=Minor(1000),
    noted=year(2025),
    by_hand="odd",
)
PACK = Pack(
    name="E1",
    title="riflemen",
    price=Minor(800),
    holds={"rifleman": 10},
    most=3,
    lead_days=14,
    multibuy={3: Minor(2000)},
    by_hand="odd",
)


def test_nothing_is_left_unsaid() -> None:
    assert unsaid(SOURCE, source_sentence, but=("packs",)) == []
    assert unsaid(PACK, lambda pack: pack_sentence(pack, currency=POUND)) == []


def test_sources_and_packs_of_the_example() -> None:
    south = marenz().sources["South"]
    assert source_sentence(south) == (
        "South sells in GBP; carriage £3.50 from goods of £0.00; 10% off goods from £50.00."
    )
    assert pack_sentence(south.packs["S1"], currency=POUND) == (
        "S1 (platoon set) holds 16 riflemen, 4 mortar crews and 2 officers and costs £14.00."
    )
    empty = Pack(name="E", price=Minor(1), holds={})
    assert pack_sentence(empty, currency=POUND) == "E holds nothing and costs £0.01."


def test_stock() -> None:
    assert stock_sentence("rifleman", {"painted": 10, "assembled": 6}) == (
        "Owned of riflemen: 10 painted and 6 assembled."
    )
    assert stock_sentence("rifleman", {}) == "Owned of riflemen: none."
