"""Goods against the lines of their source, in words."""

from fractions import Fraction

from paradestate.core.sentence.threshold import (
    at_other_goods,
    short_money,
    standing_words,
    threshold_words,
)
from paradestate.core.threshold import standing, thresholds
from tests.orders import GBP, source

SELLER = source("A", carriage={0: 500, 4000: 0}, discount={6000: Fraction(1, 10)}, least_order=1000)


def test_what_holds_from_each_line_on() -> None:
    assert [threshold_words(each, currency=GBP) for each in thresholds(SELLER)] == [
        "£10: sends from here",
        "£40: carriage free",
        "£60: 10% off",
    ]
    dearer = source("B", carriage={0: 0, 1050: 300})
    (only,) = thresholds(dearer)
    assert threshold_words(only, currency=GBP) == "£10.50: carriage £3.00"


def test_where_the_goods_stand() -> None:
    said = [
        standing_words(standing(SELLER, goods=goods), currency=GBP) for goods in (900, 4000, 6500)
    ]
    assert said == [
        "Goods £9.00, £1.00 below the line.",
        "Goods £40.00, on the line, £20.00 below the next.",
        "Goods £65.00, £5.00 above the line.",
    ]


def test_what_the_other_side_of_a_line_would_cost() -> None:
    assert list(at_other_goods(standing(SELLER, goods=4000), currency=GBP)) == [
        "At £39.99 of goods it would cost £44.99.",
        "With £20.00 more, at £60 of goods, it would cost £54.00.",
    ]
    assert list(at_other_goods(standing(source("C"), goods=4000), currency=GBP)) == []


def test_money_without_idle_noughts() -> None:
    assert [short_money(each, GBP) for each in (4000, 4050)] == ["£40", "£40.50"]
