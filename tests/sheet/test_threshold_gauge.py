"""Goods of a source against the values from which it charges otherwise."""

from fractions import Fraction

from paradestate.core.source import Source
from paradestate.core.threshold import standing, thresholds
from paradestate.sheet.svg import Drawing
from paradestate.sheet.threshold_gauge import threshold_gauge
from tests.forces import marenz
from tests.orders import GBP, source
from tests.sheet.reading import root_of, texts_of

NORTH, SOUTH = marenz().sources["North"], marenz().sources["South"]


def drawn(seller: Source, *, goods: int) -> Drawing:
    made = threshold_gauge(standing(seller, goods=goods), thresholds(seller), currency=GBP)
    assert made is not None
    return made


def test_goods_above_the_line() -> None:
    made = drawn(NORTH, goods=5000)
    assert made.words == "Goods £50.00, £10.00 above the line."
    assert texts_of(made) == ["£40: carriage free"]


def test_goods_on_the_line() -> None:
    made = drawn(SOUTH, goods=5000)
    assert made.words == "Goods £50.00, on the line."
    assert texts_of(made) == ["£50: 10% off"]


def test_goods_below_the_line() -> None:
    assert drawn(NORTH, goods=3200).words == "Goods £32.00, £8.00 below the line."


def test_of_many_lines_the_one_reached_and_the_next_are_named() -> None:
    steps = {0: 500, 1000: 400, 2000: 300, 3000: 200, 4000: 0}
    seller = source("Seller", carriage=steps, discount={2000: Fraction(1, 20)}, least_order=1000)
    made = drawn(seller, goods=2500)
    assert texts_of(made) == ["£20: 5% off and carriage £3.00", "£30: carriage £2.00"]
    assert made.words == "Goods £25.00, £5.00 above the line, £5.00 below the next."
    assert len(list(root_of(made).iter("path"))) == 4
    below = drawn(seller, goods=100)
    assert texts_of(below) == ["£10: sends from here and carriage £4.00"]


def test_a_source_that_always_charges_the_same_has_no_gauge() -> None:
    seller = source("Seller", carriage={0: 300})
    assert threshold_gauge(standing(seller, goods=100), thresholds(seller), currency=GBP) is None
