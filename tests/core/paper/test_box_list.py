"""What is in which box, and what it would cost new."""

from fractions import Fraction

from paradestate.core.money import Currency
from paradestate.core.paper.box_list import Box, BoxList, Prices, Whole, box_list
from paradestate.core.unit_price import unit_prices
from tests.orders import GBP, pack, source

SOURCES = {
    "A": source("A", pack("men", 1000, rifleman=3), pack("mixed", 500, rifleman=1, mule=1)),
    "B": source("B", pack("one", 400, officer=1), currency=Currency("EUR"), rate=Fraction(1, 2)),
}
KINDS = {"rifleman": 1, "officer": 1, "mule": 1}
PRICES = Prices(by_kind=unit_prices(KINDS, SOURCES, currency=GBP), sources=SOURCES, currency=GBP)
WHOLE = Whole(total="£30.00", sure="exact", unsold={"camel": 1})


def listed(*boxes: Box) -> BoxList:
    shown = box_list(boxes, prices=PRICES, whole=WHOLE).shown
    assert shown is not None
    return shown


def test_a_box_is_worth_its_figures_one_by_one_rounded_once() -> None:
    """3 men for £10: four are £13.333..., and an officer at €4.00 is £2.00."""
    (box,) = listed(Box(name="case 1", figures={"rifleman": 4, "officer": 1, "mule": 0})).boxes
    assert (box.name, box.number, box.worth) == ("Case 1", 5, "£15.33")
    assert box.holds == "4 riflemen and 1 officer"
    assert box.without_price == ""


def test_what_is_sold_only_mixed_has_no_price_and_says_so() -> None:
    shown = listed(
        Box(name="case", figures={"rifleman": 3, "mule": 2}), Box(name="rest", figures={"mule": 1})
    )
    assert [(box.worth, box.without_price) for box in shown.boxes] == [
        ("£10.00", "2 mules"),
        (None, "1 mule"),
    ]
    assert [(row.name, row.number, row.each, row.worth) for row in shown.kinds] == [
        ("Riflemen", 3, "£10.00 for 3, A men", "£10.00"),
        ("Mules", 3, "not sold alone", None),
    ]
    assert (shown.figures, shown.parts, shown.total) == (6, "£10.00", "£30.00")
    assert shown.unsold == "1 camel"


def test_a_pack_of_one_is_said_by_its_price_alone() -> None:
    (row,) = listed(Box(name="case", figures={"officer": 2})).kinds
    assert (row.each, row.worth) == ("€4.00, B one", "£4.00")


def test_empty_boxes_arent_listed_and_kinds_that_arent_owned_neither() -> None:
    shown = listed(
        Box(name="case", figures={"officer": 1, "mule": 0}), Box(name="empty", figures={"mule": 0})
    )
    assert [box.name for box in shown.boxes] == ["Case"]
    assert [row.name for row in shown.kinds] == ["Officers"]


def test_where_nothing_is_owned_there_is_no_list() -> None:
    assert box_list((Box(name="case", figures={}),), prices=PRICES, whole=WHOLE).shown is None
